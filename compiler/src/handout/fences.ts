/** The `nappe` fences of a Markdown file, as one text of notation whose lines and columns are those of the Markdown. */
import type { Nodes, Root } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';

/** Everything outside the fences is left empty, so that a place in the result is the same place in the handout. */
export function notationIn(markdown: string): string {
  if (!markdown.includes('nappe')) return '';
  const source = markdown.split(/\r?\n/);
  const lines = source.map(() => '');
  for (const fence of fencesOf(fromMarkdown(markdown))) {
    fence.lines.forEach((content, index) => {
      const at = fence.first + index;
      const line = source[at] ?? '';
      // What stands before it in a list or a quotation is only room.
      lines[at] = line.endsWith(content) ? ' '.repeat(line.length - content.length) + content : content;
    });
  }
  return lines.join('\n');
}

function fencesOf(tree: Root): { readonly first: number; readonly lines: readonly string[] }[] {
  const found: { first: number; lines: string[] }[] = [];
  const visit = (node: Nodes): void => {
    if (node.type === 'code' && node.lang === 'nappe' && node.position) {
      // `line` counts from 1 and is the fence itself: as an index it is the first line of its content.
      found.push({ first: node.position.start.line, lines: node.value.split(/\r?\n/) });
    }
    if ('children' in node) for (const child of node.children) visit(child);
  };
  visit(tree);
  return found;
}
