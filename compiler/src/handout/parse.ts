/** Reads a handout's Markdown: CommonMark with tables, footnotes, task lists and strikethrough (GFM). */
import type { Heading, Nodes, Root } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import { unified } from 'unified';
import { nesting } from '../card/notes.ts';
import { plain } from '../card/text.ts';

/** The tree, or null where it nests deeper than the libraries, which recurse, can follow. */
export function parseHandout(markdown: string): Root | null {
  return nesting(markdown) > deepest ? null : parser.parse(markdown);
}

const parser = unified().use(remarkParse).use(remarkGfm);

/** Deeper than any text a person writes. */
const deepest = 400;

/** `<!-- page break -->` alone in a block: what follows starts a page when printed, and a forge shows nothing. */
export const isPageBreak = (node: Nodes): boolean =>
  node.type === 'html' && ['page break', 'page-break', 'pagebreak'].includes(commentOf(node.value));

function commentOf(html: string): string {
  const text = html.trim();
  return text.startsWith('<!--') && text.endsWith('-->') ? text.slice(4, -3).trim().toLowerCase() : '';
}

/** A heading's words, without marks. */
export const headingText = (heading: Heading): string => plain(wordsOf(heading)).trim();

function wordsOf(node: Nodes): string {
  if (node.type === 'footnoteReference' || node.type === 'html') return '';
  if ('value' in node) return node.value;
  if (node.type === 'image') return node.alt ?? '';
  return 'children' in node ? node.children.map((child) => wordsOf(child as Nodes)).join('') : '';
}
