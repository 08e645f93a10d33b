/** One self-contained HTML page around an article: no script to run, nothing to fetch. */
import type { Element, ElementContent, Root } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { cardStyle, pageStyle } from './style.ts';
import { plain } from './text.ts';

export interface Page {
  readonly language: string;
  readonly title: string;
  readonly main: readonly ElementContent[];
  /** Added to the look of a card. */
  readonly style?: string;
  /** After the style, in the head. */
  readonly head?: readonly Element[];
}

export function pageHtml({ language, title, main, style = '', head = [] }: Page): string {
  const page: Root = {
    type: 'root',
    children: [
      { type: 'doctype' },
      h('html', { lang: language }, [
        h('head', [
          h('meta', { charSet: 'utf-8' }),
          h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
          h('title', shortened(plain(title))),
          h('style', `${pageStyle}${cardStyle}${style}`),
          ...head,
        ]),
        h('body', [h('main', [...main])]),
      ]),
    ],
  };
  return `${toHtml(page)}\n`;
}

/** Titles of browsers and print jobs are cut anyway; a name of ten thousand characters need not stand there whole. */
const shortened = (title: string): string => ([...title].length > 120 ? `${[...title].slice(0, 119).join('')}…` : title);
