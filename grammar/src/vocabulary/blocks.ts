/** The words that open a block or ask for something, one row a word. */

import type { BlockWord } from '../tree.ts';

export interface BlockRow {
  readonly word: BlockWord;
  /** Opens a block, or stands alone on one line (`take` and the requests). */
  readonly opens: boolean;
  readonly meaning: string;
  /** One written example. */
  readonly example: string;
  /** Completion text; what to fill in stands in `<…>` (see `snippetOf`). */
  readonly template: string;
}

export const blocks: readonly BlockRow[] = [
  row(
    'formula',
    true,
    'A formula: its headers, notes, components and assembly follow.',
    'formula Hojicha bavarois',
    'formula <name>',
  ),
  row(
    'component',
    true,
    'A part of the formula with its own ingredients and steps; its result carries its name.',
    'component custard',
    'component <name>',
  ),
  row('assembly', true, 'The steps that bring the components together, and what is weighed only there.', 'assembly', 'assembly'),
  row(
    'ingredient',
    true,
    'A house ingredient: what it is like and what it is made of.',
    'ingredient house praline',
    'ingredient <name>',
  ),
  row('equipment', true, 'The vessels, fridges and ovens this kitchen has.', 'equipment', 'equipment'),
  row('prices', true, 'What ingredients cost, in the currency named.', 'prices EUR', 'prices <EUR>'),
  row(
    'take',
    false,
    'Brings in a component, a formula or an ingredient from another file.',
    'take custard from "bases.nappe"',
    'take <name> from "<file.nappe>"',
  ),
  row(
    'card',
    false,
    'Asks for the card of a formula.',
    'card "bavarois.nappe" for 24 glasses with glass',
    'card "<file.nappe>" for <24 glasses>',
  ),
  row(
    'weigh-out',
    false,
    'Asks for one list of what to weigh for several formulas.',
    'weigh-out "bavarois.nappe" for 24 glasses',
    'weigh-out "<file.nappe>" for <24 glasses>',
  ),
  row(
    'timeline',
    false,
    'Asks for the steps laid out in time.',
    'timeline "bavarois.nappe" ready 18:30',
    'timeline "<file.nappe>" for <24 glasses> ready <18:30>',
  ),
  row(
    'compare',
    false,
    'Asks what changed in meaning between two files.',
    'compare "old.nappe" with "new.nappe"',
    'compare "<old.nappe>" with "<new.nappe>"',
  ),
];

function row(word: BlockWord, opens: boolean, meaning: string, example: string, template: string): BlockRow {
  return { word, opens, meaning, example, template };
}
