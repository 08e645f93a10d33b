/** Notes of a formula: Markdown as written, made harmless. Markup in a note stays the text it is; only Markdown becomes structure. */
import type { Root as HastRoot } from 'hast';
import type { BlockContent, Link, List, Nodes, Paragraph, Parents, PhrasingContent, Root } from 'mdast';
import rehypeSanitize, { defaultSchema, type Options } from 'rehype-sanitize';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { plainLines } from './text.ts';

/** A note as a Markdown tree: no HTML, no images, no headings, no footnotes, links only to the web and to mail. */
export function noteTree(markdown: string): Root {
  const text = plainLines(markdown);
  if (nesting(text) > deepest)
    return { type: 'root', children: [{ type: 'paragraph', children: [{ type: 'text', value: text }] }] };
  const tree = parser.parse(text);
  tidy(tree);
  return tree;
}

/** The same as HTML nodes, sanitised once more. */
export function noteHtml(markdown: string): HastRoot {
  return toHtml.runSync(noteTree(markdown)) as HastRoot;
}

const parser = unified().use(remarkParse).use(remarkGfm);

const schema: Options = {
  ...defaultSchema,
  tagNames: [
    'p',
    'em',
    'strong',
    'del',
    'code',
    'pre',
    'blockquote',
    'ul',
    'ol',
    'li',
    'a',
    'br',
    'table',
    'thead',
    'tbody',
    'tr',
    'th',
    'td',
  ],
  attributes: { a: ['href'], ol: ['start'] },
  protocols: { href: ['http', 'https', 'mailto'] },
};

const toHtml = unified().use(remarkRehype).use(rehypeSanitize, schema);

/** Deeper than any note a person writes; the libraries recurse and would exhaust the stack. */
const deepest = 40;

/** An upper bound of how deep the text can nest: the most marks that open something, in one line or by indentation. */
export function nesting(text: string): number {
  let most = 0;
  for (const line of text.split('\n')) {
    let opens = 0;
    for (const character of line)
      if (character === '>' || character === '[' || character === '*' || character === '_' || character === '~') opens++;
    const [indent = ''] = /^[ \t]*(?:[-+*>0-9.)][ \t]*)*/u.exec(line) ?? [];
    most = Math.max(most, indent.length / 2, opens / 2);
  }
  return most;
}

function tidy(parent: Parents): void {
  const children = parent.children as Nodes[];
  parent.children = children.flatMap((child) => replaced(child, parent)) as typeof parent.children;
  for (const child of parent.children as Nodes[]) if ('children' in child) tidy(child as Parents);
}

function replaced(node: Nodes, parent: Parents): Nodes[] {
  switch (node.type) {
    case 'html':
      return inline(parent) ? [textNode(node.value)] : [paragraph([textNode(node.value)])];
    case 'heading':
      return [paragraph([{ type: 'strong', children: node.children }])];
    case 'image':
    case 'imageReference':
      return [textNode(node.alt ?? '')];
    case 'footnoteReference':
      return [textNode(`[^${node.label ?? node.identifier}]`)];
    case 'footnoteDefinition':
      return [paragraph([textNode(`[^${node.label ?? node.identifier}]:`)]), ...hoisted(node, parent)];
    case 'thematicBreak':
      return [];
    case 'link':
      return isSafe(node.url) ? [node] : hoisted(node, parent);
    case 'linkReference':
      return hoisted(node, parent);
    case 'definition':
      return [];
    case 'list':
      return [withoutBoxes(node)];
    default:
      return [node];
  }
}

/** What stands inside comes up into the parent, as what may stand there. */
const hoisted = (node: Parents, parent: Parents): Nodes[] =>
  (node.children as Nodes[]).flatMap((child) => replaced(child, parent));

/** Task boxes become signs: a form field on paper cannot be ticked, and would want a label. */
function withoutBoxes(list: List): List {
  return {
    ...list,
    children: list.children.map((item) => {
      if (typeof item.checked !== 'boolean') return item;
      const [first, ...rest] = item.children as BlockContent[];
      const box = textNode(item.checked ? '☑ ' : '☐ ');
      const children: BlockContent[] =
        first?.type === 'paragraph'
          ? [paragraph([box, ...first.children]), ...rest]
          : [paragraph([box]), ...(first ? [first] : []), ...rest];
      return { ...item, checked: null, children };
    }),
  };
}

function isSafe(url: Link['url']): boolean {
  try {
    return ['http:', 'https:', 'mailto:'].includes(new URL(url).protocol);
  } catch {
    return false;
  }
}

const inline = (parent: Parents): boolean => !['root', 'blockquote', 'listItem', 'footnoteDefinition'].includes(parent.type);

const textNode = (value: string): PhrasingContent & { type: 'text' } => ({ type: 'text', value });

const paragraph = (children: PhrasingContent[]): Paragraph => ({ type: 'paragraph', children });
