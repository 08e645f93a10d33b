/** Raw HTML of a handout: read by a parser, and only what is harmless kept. */
import type { ElementContent, Root } from 'hast';
import { fromHtml } from 'hast-util-from-html';
import { toHtml } from 'hast-util-to-html';
import type { Html } from 'mdast';
import rehypeSanitize, { defaultSchema, type Options } from 'rehype-sanitize';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';

/**
 * What a handout's text may hold, from Markdown or HTML alike: no script, style, form or frame, no address but the web's and mail's,
 * nothing that fetches but a picture, which is looked at later. Ids are the program's own.
 */
export const schema: Options = {
  ...defaultSchema,
  tagNames: (defaultSchema.tagNames ?? []).filter((name) => !['picture', 'source'].includes(name)),
  strip: ['script', 'style', 'iframe', 'template', 'object', 'svg', 'math', 'noscript', 'textarea', 'title', 'xmp'],
  clobber: [],
  clobberPrefix: '',
  protocols: { ...defaultSchema.protocols, href: ['http', 'https', 'mailto'], cite: ['http', 'https'], src: ['http', 'https'] },
};

const sanitiser = unified().use(rehypeSanitize, schema);

/** A block of HTML as nodes. A lone tag within a line cannot be told from its partner: of those only line breaks are kept. */
export function harmless({ value }: Html, inline: boolean): readonly ElementContent[] {
  if (inline) {
    const isBreak = ['<br>', '<br/>', '<br />'].includes(value.trim().toLowerCase());
    return isBreak ? [{ type: 'element', tagName: 'br', properties: {}, children: [] }] : [];
  }
  const clean = sanitiser.runSync(fromHtml(value, { fragment: true })) as Root;
  visit(clean, 'element', (element) => {
    // Its place is one in the fragment, not in the handout.
    delete element.position;
    delete element.properties.id;
    delete element.properties.name;
  });
  return clean.children.filter((node): node is ElementContent => node.type !== 'doctype' && node.type !== 'comment');
}

/** The same as text, for Markdown. */
export const harmlessText = (node: Html, inline: boolean): string =>
  toHtml({ type: 'root', children: [...harmless(node, inline)] });
