/** Makes a handout: reads its Markdown and carries out every fence of notation in it, in order. */
import type { Code, Nodes, Root } from 'mdast';
import { Fences } from './fences.ts';
import type { Handout, HandoutInput, Part } from './model.ts';
import { headingText, parseHandout } from './parse.ts';

/** Null where the text nests deeper than anyone writes. The file must be readable: the workspace's `source` says so. */
export function handoutOf(input: HandoutInput): Handout | null {
  const source = input.workspace.source(input.path);
  const tree = parseHandout('refused' in source ? '' : source.text);
  if (tree === null) return null;
  const fences = new Fences(input);
  const parts = new Map<Code, readonly Part[]>();
  for (const node of codesIn(tree)) {
    const { position } = node;
    if (!position || node.lang?.toLowerCase() !== 'nappe') continue;
    // The opening fence is one line; the closing one may be missing at the end of the file.
    const first = position.start.line;
    const end = first + (node.value === '' ? 0 : node.value.split('\n').length);
    const made = fences.partsOf({ first, end, asText: node.meta?.split(/\s/u)[0]?.toLowerCase() === 'source' });
    if (made) parts.set(node, made);
  }
  return { title: titleOf(tree) ?? nameOf(input.path), path: input.path, tree, parts, faults: fences.faults };
}

function codesIn(root: Root): readonly Code[] {
  const found: Code[] = [];
  const visit = (node: Nodes): void => {
    if (node.type === 'code') found.push(node);
    else if ('children' in node) for (const child of node.children) visit(child as Nodes);
  };
  visit(root);
  return found;
}

function titleOf(root: Root): string | null {
  const heading = root.children.find((node) => node.type === 'heading' && node.depth === 1);
  const text = heading?.type === 'heading' ? headingText(heading) : '';
  return text === '' ? null : text;
}

const nameOf = (path: string): string => path.slice(path.lastIndexOf('/') + 1).replace(/\.[^.]+$/u, '');
