/** Markdown trees: the nodes that cards, lists and timelines are put together from, and their printing. */
import type { BlockContent, Heading, ListItem, PhrasingContent, Root, Table, TableCell } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkStringify from 'remark-stringify';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { plain } from './text.ts';

export function markdownOf(tree: Root): string {
  // The printer writes an address that begins with `<` as it is, and a reader then takes it for HTML.
  visit(tree, (node) => {
    if ('url' in node) node.url = node.url.replaceAll('<', '%3C').replaceAll('>', '%3E');
  });
  return printer.stringify(tree);
}

const printer = unified().use(remarkGfm).use(remarkStringify, { bullet: '-', rule: '-', emphasis: '_' });

export const text = (value: string): PhrasingContent => ({ type: 'text', value: plain(value) });

export const strong = (value: string): PhrasingContent => ({ type: 'strong', children: [text(value)] });

export const paragraph = (...children: PhrasingContent[]): BlockContent => ({ type: 'paragraph', children });

export const bullets = (items: readonly PhrasingContent[][]): BlockContent => ({
  type: 'list',
  ordered: false,
  spread: false,
  children: items.map((children): ListItem => ({ type: 'listItem', spread: false, children: [paragraph(...children)] })),
});

/** Levels below the sixth are the sixth. */
export const headingAt = (level: number, value: string): Heading => ({
  type: 'heading',
  depth: Math.min(6, level) as Heading['depth'],
  children: [text(value)],
});

export function table(
  head: readonly string[],
  rows: readonly (readonly PhrasingContent[][])[],
  align: NonNullable<Table['align']>,
): Table {
  const cells = (row: readonly PhrasingContent[][]): TableCell[] => row.map((children) => ({ type: 'tableCell', children }));
  return {
    type: 'table',
    align,
    children: [
      { type: 'tableRow', children: cells(head.map((title) => [text(title)])) },
      ...rows.map((row) => ({ type: 'tableRow' as const, children: cells(row) })),
    ],
  };
}
