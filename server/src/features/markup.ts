/** Small pieces of Markdown that hovers and completions share; a cook's own words are text in it, never markup. */
import { type MarkupContent, MarkupKind } from 'vscode-languageserver';

/** Text as text. */
export const asText = (text: string): string => text.replace(/[\\`*_{}[\]()#+\-!|<>~&]/g, (mark) => `\\${mark}`);

export const code = (text: string): string => `\`${text.replaceAll('`', "'")}\``;

export const paragraphs = (...parts: readonly (string | null | undefined | false)[]): string =>
  parts.filter((part): part is string => typeof part === 'string' && part !== '').join('\n\n');

export const bullets = (items: readonly (string | null | false | undefined)[]): string =>
  items
    .filter((item): item is string => typeof item === 'string' && item !== '')
    .map((item) => `- ${item}`)
    .join('\n');

/** For a client that shows Markdown, or for one that does not. */
export const markup = (markdown: string, isMarkdown: boolean): MarkupContent =>
  isMarkdown ? { kind: MarkupKind.Markdown, value: markdown } : { kind: MarkupKind.PlainText, value: plainOf(markdown) };

/** The same without marks. */
export const plainOf = (markdown: string): string =>
  markdown
    .replace(/^#{1,6} /gm, '')
    .replace(/^```.*$/gm, '')
    .replace(/(?<!\\)(\*\*|`)/g, '')
    .replace(/\[([^[\]]*)\]\([^()]*\)/g, '$1')
    .replace(/\\([\\`*_{}[\]()#+\-!|<>~&])/g, '$1')
    .trim();
