/** What the parts of a card's page share: the card, its language and units, and the nodes they are all made of. */
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import type { Card } from './model.ts';
import { noteHtml } from './notes.ts';
import { plain } from './text.ts';

/** What the parts of the article are drawn with. */
export interface Sheet {
  readonly card: Card;
  readonly language: Language;
  readonly measures: Measures;
  readonly level: number;
  readonly prefix: string;
  readonly full: boolean;
}

/** A heading so many levels below the card's own. */
export const heading = (
  sheet: Sheet,
  below: number,
  properties: Record<string, string | string[]>,
  ...children: (string | ElementContent)[]
): Element => h(`h${Math.min(6, sheet.level + below)}`, properties, children);

export const notesOf = (notes: readonly string[]): ElementContent[] =>
  notes.length === 0
    ? []
    : [
        h(
          'div',
          { className: ['note'] },
          notes.flatMap((note) => noteHtml(note).children as ElementContent[]),
        ),
      ];

/** A name as written: isolated, so that its own direction of writing stays its own. */
export const named = (text: string): Element => h('bdi', /\S{25}/u.test(text) ? { className: ['long'] } : {}, plain(text));
