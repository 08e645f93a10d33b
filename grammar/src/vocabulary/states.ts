/** Words for what matter is or looks like: phases, states, peaks and the usual signs, one row a word. */

import type { Attribute, Peak } from '../tree.ts';

export interface MeaningRow<Word extends string = string> {
  readonly word: Word;
  readonly meaning: string;
}

export const phases: readonly MeaningRow[] = [
  { word: 'liquid', meaning: 'Flows.' },
  { word: 'powder', meaning: 'Fine dry grains.' },
  { word: 'crystal', meaning: 'Coarse dry grains.' },
  { word: 'solid', meaning: 'Keeps its form.' },
  { word: 'sheet', meaning: 'Thin flat sheets, as of gelatin.' },
  { word: 'paste', meaning: 'Thick, spreads.' },
  { word: 'foam', meaning: 'Full of air.' },
  { word: 'gel', meaning: 'Set, trembles.' },
  { word: 'dough', meaning: 'Flour and liquid that is kneaded or rolled.' },
  { word: 'batter', meaning: 'Flour and liquid that is poured.' },
  { word: 'frozen', meaning: 'Frozen hard.' },
];

export type State = Extract<Attribute, { kind: 'state' }>['state'];

export const states: readonly MeaningRow<State>[] = [
  { word: 'raw', meaning: 'Not heated.' },
  { word: 'fresh', meaning: 'Not heated, not preserved.' },
  { word: 'canned', meaning: 'Heated in its can.' },
  { word: 'pasteurised', meaning: 'Heated by the maker.' },
];

/** Softest first; two joined by `-` make a range. */
export const peaks: readonly MeaningRow<Peak>[] = [
  { word: 'very soft', meaning: 'The whisk leaves a trace that closes again.' },
  { word: 'soft', meaning: 'The tip bends right over.' },
  { word: 'medium', meaning: 'The tip curls.' },
  { word: 'stiff', meaning: 'The tip stands.' },
];

/** Usual words after `until`; any other is kept as written. */
export const signs: readonly MeaningRow[] = [
  { word: 'nappe', meaning: 'Coats the back of a spoon; a finger drawn across leaves a clean track.' },
  { word: 'ribbon', meaning: 'Falls from the whisk in a band that stays on the surface.' },
  { word: 'dissolved', meaning: 'No grains are felt any more.' },
  { word: 'melted', meaning: 'No solid is left.' },
  { word: 'smooth', meaning: 'No lumps are left.' },
  { word: 'boiling', meaning: 'Bubbles break all over.' },
  { word: 'thick', meaning: 'Falls in heavy drops.' },
  { word: 'golden', meaning: 'Evenly light brown.' },
  { word: 'set', meaning: 'Does not move when tilted.' },
  { word: 'just set', meaning: 'Trembles in the middle only.' },
  { word: 'sandy', meaning: 'Looks like damp sand.' },
  { word: 'glossy', meaning: 'Shines.' },
  { word: 'frothy', meaning: 'Coarse bubbles on top.' },
  { word: 'amber', meaning: 'Sugar of a clear brown.' },
  { word: 'pale', meaning: 'Lighter in colour and volume.' },
  { word: 'doubled', meaning: 'Twice the size.' },
  { word: 'browned', meaning: 'Brown and smelling of nuts.' },
  { word: 'foamy', meaning: 'Full of fine bubbles.' },
];

/** The heat or speed after `on`. */
export const levels = ['low', 'medium', 'high'] as const;

/** What `N %` on an ingredient line can be a share of. */
export const shares = ['fat', 'cocoa', 'sugar', 'solids', 'alcohol'] as const;
