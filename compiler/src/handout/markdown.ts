/** The handout as Markdown that a forge shows well: fences carried out as tables and lists, a list of contents with links, nothing raw. */
import type { BlockContent, Code, Heading, Html, Link, List, ListItem, Nodes, Parents, Root, RootContent } from 'mdast';
import { cardMdast } from '../card/markdown.ts';
import { markdownOf, strong, text } from '../card/mdast.ts';
import { comparisonMdast } from '../compare/index.ts';
import { timelineMdast } from '../timeline/index.ts';
import { weighOutMdast } from '../weigh-out/index.ts';
import type { Handout, Part } from './model.ts';
import { Anchors, type Entry, isContents, nested } from './outline.ts';
import { headingText, isPageBreak } from './parse.ts';
import { forClass } from './parts.ts';
import { harmlessText } from './raw-html.ts';

export function handoutMarkdown(handout: Handout): string {
  const titles = new Set<Nodes>();
  const tree: Root = { type: 'root', children: [] };
  let level = 1;
  const carriedOut = (node: Nodes, parent: Parents): Nodes[] => {
    if (node.type === 'heading') level = node.depth;
    if (node.type === 'html') return rawHtml(node, parent);
    if (node.type === 'definition') return isSafe(node.url) ? [node] : [];
    if (node.type === 'image') return isSafe(node.url) ? [node] : [text(node.alt ?? '')];
    const parts = node.type === 'code' ? handout.parts.get(node) : undefined;
    if (parts) return parts.flatMap((part) => partNodes(part, node as Code, level + 1, titles));
    if (!('children' in node)) return [node];
    if (node.type === 'link' && !isSafe(node.url)) return node.children.flatMap((child) => carriedOut(child, node));
    const children = (node.children as Nodes[]).flatMap((child) => carriedOut(child, node as Parents));
    return [{ ...node, children } as Nodes];
  };
  tree.children = handout.tree.children.flatMap((child) => carriedOut(child, handout.tree)) as RootContent[];
  const contents = contentsOf(tree, titles);
  if (contents.length > 0) {
    tree.children.splice(afterTitle(tree), 0, ...contents);
  }
  return markdownOf(tree);
}

/** The web, mail, and files beside this one; not what would run, however a browser would read it. */
function isSafe(url: string): boolean {
  try {
    return ['http:', 'https:', 'mailto:'].includes(new URL(url, 'https://example.org/').protocol);
  } catch {
    return false;
  }
}

function rawHtml(node: Html, parent: Parents): Nodes[] {
  if (isPageBreak(node)) return [node];
  const inline = !['root', 'blockquote', 'listItem', 'footnoteDefinition'].includes(parent.type);
  const clean = harmlessText(node, inline).trim();
  if (clean === '') return [];
  return inline ? [{ type: 'break' }] : [{ ...node, value: clean }];
}

/** `titles` gets the headings that the list of contents names. */
function partNodes(part: Part, code: Code, level: number, titles: Set<Nodes>): Nodes[] {
  if (part.is === 'source') return [code];
  if (part.is === 'fault')
    return [
      {
        type: 'blockquote',
        children: [{ type: 'paragraph', children: [strong(`Line ${part.fault.line}:`), text(` ${part.fault.message}`)] }],
      },
    ];
  const depth = Math.min(3, level) as 1 | 2 | 3;
  const { children } =
    part.is === 'card'
      ? cardMdast(forClass(part.card), depth)
      : part.is === 'weigh-out'
        ? weighOutMdast(part.list, depth)
        : part.is === 'timeline'
          ? timelineMdast(part.plan, depth)
          : comparisonMdast(part.comparison, depth);
  const title = children.find((node) => node.type === 'heading');
  if (title) titles.add(title);
  return children;
}

function contentsOf(tree: Root, titles: ReadonlySet<Nodes>): readonly RootContent[] {
  const anchors = new Anchors();
  const flat: Omit<Entry, 'children'>[] = [];
  let top: number | null = null;
  let titled = false;
  for (const node of tree.children) {
    if (node.type !== 'heading') continue;
    const words = headingText(node);
    const anchor = anchors.of(words);
    if (titles.has(node)) flat.push({ depth: top === null ? 0 : 1, text: words, anchor });
    else if (isContents(words)) return [];
    else if (node.depth === 1 && !titled) titled = true;
    else if (isAuthors(node)) {
      top ??= node.depth;
      if (node.depth <= top + 1) flat.push({ depth: node.depth <= top ? 0 : 1, text: words, anchor });
    }
  }
  const entries = nested(flat);
  if (entries.length < 2 && (entries[0]?.children.length ?? 0) < 2) return [];
  return [{ type: 'heading', depth: 2, children: [text('Contents')] }, listOf(entries)];
}

/** Below the title and the lines that belong to it: those of nothing but emphasis or pictures. */
function afterTitle({ children }: Root): number {
  const [title] = children;
  if (title?.type !== 'heading' || title.depth !== 1) return 0;
  const rest = children
    .slice(1)
    .findIndex((node) => node.type !== 'paragraph' || !node.children.every(({ type }) => titleMarks.has(type)));
  return rest < 0 ? children.length : rest + 1;
}

const titleMarks: ReadonlySet<string> = new Set(['emphasis', 'strong', 'image', 'break']);

/** Headings made for a card's inside have no place in the text. */
const isAuthors = (node: Heading): boolean => node.position !== undefined;

function listOf(entries: readonly Entry[]): List {
  return {
    type: 'list',
    ordered: false,
    spread: false,
    children: entries.map(({ text: words, anchor, children }): ListItem => {
      const link: Link = { type: 'link', url: `#${anchor}`, children: [text(words) as Link['children'][number]] };
      const inside: BlockContent[] = [{ type: 'paragraph', children: [link] }];
      return { type: 'listItem', spread: false, children: children.length > 0 ? [...inside, listOf(children)] : inside };
    }),
  };
}
