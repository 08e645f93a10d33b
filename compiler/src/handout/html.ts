/** The handout as one self-contained page that prints as a booklet: cover, contents, numbered pages, one card a page. */
import type { Element, ElementContent, Root as HastRoot } from 'hast';
import { h } from 'hastscript';
import type { Code, Html, Nodes, Root } from 'mdast';
import type { Handlers, State } from 'mdast-util-to-hast';
import rehypeSanitize from 'rehype-sanitize';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { SKIP, visit } from 'unist-util-visit';
import { pageHtml } from '../card/page.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { timelineStyle } from '../timeline/index.ts';
import { weighOutStyle } from '../weigh-out/index.ts';
import { inlined } from './images.ts';
import type { Fault, Handout, Picture } from './model.ts';
import { Anchors, type Entry, isContents, nested } from './outline.ts';
import { isPageBreak } from './parse.ts';
import { drawn } from './parts.ts';
import { harmless, schema } from './raw-html.ts';
import { bookletStyle } from './style.ts';

export interface Booklet {
  readonly html: string;
  /** Pictures that are not there. */
  readonly faults: readonly Fault[];
}

export function handoutHtml(handout: Handout, workspace: Workspace, picture: (path: string) => Picture): Booklet {
  const slots = slotsOf(handout.tree);
  const tree = harmlessTree(handout.tree);
  const faults = inlined(tree, handout.path, workspace.files.root, picture);
  const source = workspace.source(handout.path);
  const lines = 'refused' in source ? [] : source.file.lines;
  const anchors = new Anchors();
  const contents: Omit<Entry, 'children'>[] = [];
  let level = 1;
  let top: number | null = null;
  let count = 0;
  let titled = false;
  const enter = (depth: number, text: string, anchor: string): void => {
    contents.push({ depth, text, anchor });
  };
  visit(tree, 'element', (element, index, parent) => {
    const depth = /^h[1-6]$/u.test(element.tagName) ? Number(element.tagName[1]) : null;
    if (depth !== null && element.properties.id === undefined) {
      const text = wordsOf(element);
      element.properties.id = anchors.of(text);
      level = depth;
      if (depth === 1 && !titled) titled = true;
      else if (!isContents(text)) {
        top ??= depth;
        if (depth <= top + 1) enter(depth <= top ? 0 : 1, text, String(element.properties.id));
      }
      return undefined;
    }
    if (element.tagName === 'input' && parent && index !== undefined) {
      // A form field on paper cannot be ticked, and would want a label.
      parent.children[index] = { type: 'text', value: element.properties.checked === true ? '☑' : '☐' };
      return undefined;
    }
    const slot = slots.get(element.position?.start.offset ?? -1);
    if (!slot || !parent || index === undefined) return undefined;
    if (slot === 'page break') {
      if (element.tagName !== 'hr') return undefined;
      parent.children[index] = h('div', { className: ['page-break'] });
      return SKIP;
    }
    const parts = element.tagName === 'pre' ? handout.parts.get(slot) : undefined;
    if (!parts) return undefined;
    const made = parts.map((part) => {
      const { element: node, entry } = drawn(part, `part-${++count}`, level + 1, lines);
      if (entry) enter(top === null ? 0 : 1, entry.text, entry.anchor);
      return node;
    });
    parent.children.splice(index, 1, ...made);
    return [SKIP, index + made.length];
  });
  const { cover, rest } = parted(tree);
  const main = [...cover, ...contentsOf(nested(contents)), ...rest];
  return {
    html: pageHtml({
      language: 'en',
      title: handout.title,
      main: [h('div', { className: ['handout'] }, main)],
      style: `${weighOutStyle}${timelineStyle}${bookletStyle(handout.title)}`,
    }),
    faults,
  };
}

/** Where fences and page breaks stand in the text. */
function slotsOf(root: Root): ReadonlyMap<number, Code | 'page break'> {
  const slots = new Map<number, Code | 'page break'>();
  visit(root, (node) => {
    const at = node.position?.start.offset;
    if (at === undefined) return;
    if (node.type === 'code') slots.set(at, node);
    else if (isPageBreak(node)) slots.set(at, 'page break');
  });
  return slots;
}

function harmlessTree(root: Root): HastRoot {
  const handlers: Handlers = {
    html: (_state: State, node: Html, parent: Nodes | undefined): ElementContent[] => {
      if (isPageBreak(node)) return [{ type: 'element', tagName: 'hr', properties: {}, children: [], position: node.position! }];
      const nodes = [...harmless(node, parent !== undefined && inline(parent))];
      visit({ type: 'root', children: nodes } as HastRoot, 'element', (element) => {
        if (element.tagName === 'img' && node.position) element.position = node.position;
      });
      return nodes;
    },
  };
  const pipeline = unified().use(remarkRehype, { handlers, clobberPrefix: 'note-' }).use(rehypeSanitize, schema);
  return pipeline.runSync(structuredClone(root)) as HastRoot;
}

const inline = ({ type }: Nodes): boolean => !['root', 'blockquote', 'listItem', 'footnoteDefinition'].includes(type);

const wordsOf = (node: Element | ElementContent): string =>
  node.type === 'text'
    ? node.value
    : node.type === 'element' && node.properties.dataFootnoteRef === undefined
      ? node.children.map(wordsOf).join('')
      : '';

/** The title and what belongs to it: the lines below it that are nothing but emphasis or pictures. */
function parted(tree: HastRoot): { readonly cover: readonly Element[]; readonly rest: readonly ElementContent[] } {
  const all = tree.children.filter((node): node is ElementContent => node.type !== 'doctype' && node.type !== 'comment');
  const start = all.findIndex((node) => node.type !== 'text' || node.value.trim() !== '');
  const title = all[start];
  if (title?.type !== 'element' || title.tagName !== 'h1') return { cover: [], rest: all };
  let end = start + 1;
  while (end < all.length && belongsToTitle(all[end]!)) end++;
  return { cover: [h('header', { className: ['cover'] }, all.slice(start, end))], rest: all.slice(end) };
}

function belongsToTitle(node: ElementContent): boolean {
  if (node.type === 'text') return node.value.trim() === '';
  if (node.type !== 'element' || node.tagName !== 'p') return false;
  return node.children.every((child) =>
    child.type === 'text'
      ? child.value.trim() === ''
      : child.type === 'element' && ['em', 'strong', 'img', 'br'].includes(child.tagName),
  );
}

function contentsOf(entries: readonly Entry[]): readonly Element[] {
  if (entries.length < 2 && (entries[0]?.children.length ?? 0) < 2) return [];
  return [
    h('nav', { className: ['contents'], ariaLabelledBy: 'contents-of-this-handout' }, [
      h('h2', { id: 'contents-of-this-handout' }, 'Contents'),
      listOf(entries),
    ]),
  ];
}

const listOf = (entries: readonly Entry[]): Element =>
  h(
    'ol',
    entries.map(({ text, anchor, children }) =>
      h('li', [h('a', { href: `#${anchor}` }, text), ...(children.length > 0 ? [listOf(children)] : [])]),
    ),
  );
