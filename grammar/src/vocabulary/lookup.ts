/** Look-ups by word, made from the tables the first time one is asked for. */

import type { BlockWord, Peak } from '../tree.ts';
import { blocks } from './blocks.ts';
import { type HeaderRow, headers } from './headers.ts';
import { nameKey, singularNoun } from './names.ts';
import { media, type ShapeRow, shapes, tools, vessels, type WordRow } from './places.ts';
import { peaks } from './states.ts';
import { type UnitRow, units } from './units.ts';
import { cooksWords, type VerbRow, verbs } from './verbs.ts';

export const verbOf = lookup<VerbRow>(() => verbs.map((row) => [row.word, row]));
export const headerOf = lookup<HeaderRow>(() => headers.map((row) => [row.word, row]));
export const blockOf = lookup<BlockWord>(() => blocks.map((row) => [row.word, row.word]));
/** The verb to propose for a word cooks use that is none here (`simmer` for `cook`). */
export const verbMeant = lookup<VerbRow>(() =>
  verbs.flatMap((row) => (cooksWords[row.word] ?? []).map((word): [string, VerbRow] => [word, row])),
);
export const mediumOf = lookup<WordRow>(() => withSynonyms(media));
export const toolOf = lookup<WordRow>(() => withSynonyms(tools));
export const unitOf = lookup<UnitRow>(() =>
  units.flatMap((row) => [row.word.toLowerCase(), ...row.spellings].map((word): [string, UnitRow] => [word, row])),
);

const vesselWords = lookup<WordRow>(() => withSynonyms(vessels));
const shapeWords = lookup<ShapeRow>(() => shapes.map((row) => [row.word, row]));

/** The shape a noun of `makes` is: by its whole, else by its last word (`tart ring` is a ring). */
export function shapeOf(noun: string): ShapeRow | undefined {
  const key = singularNoun(noun);
  return shapeWords(key) ?? shapeWords(lastWord(key));
}

/** Whether a noun is a vessel wherever it stands: by its whole, else by its last word (`mixer bowl`). */
export function isVesselNoun(noun: string): boolean {
  const key = singularNoun(noun);
  return [key, lastWord(key)].some((word) => vesselWords(word) !== undefined || shapeWords(word) !== undefined);
}

/** `soft`, `soft-medium`, `very soft-soft`: the two ends, softest first; undefined where it is no peak. */
export function peakOf(text: string): { readonly low: Peak; readonly high: Peak } | undefined {
  const key = nameKey(text);
  for (const [low, lowRow] of peaks.entries()) {
    if (key === lowRow.word) return { low: lowRow.word, high: lowRow.word };
    for (const [high, highRow] of peaks.entries()) {
      if (key !== `${lowRow.word}-${highRow.word}` && key !== `${lowRow.word} - ${highRow.word}`) continue;
      return low <= high ? { low: lowRow.word, high: highRow.word } : { low: highRow.word, high: lowRow.word };
    }
  }
  return undefined;
}

function lastWord(key: string): string {
  return key.slice(key.lastIndexOf(' ') + 1);
}

function withSynonyms(rows: readonly WordRow[]): [string, WordRow][] {
  return rows.flatMap((row) => [row.word, ...row.also].map((word): [string, WordRow] => [word, row]));
}

/** A table by lower-case word, built on first use so that importing the vocabulary costs nothing. */
function lookup<Row>(entries: () => [string, Row][]): (word: string) => Row | undefined {
  let table: Map<string, Row> | undefined;
  return (word) => {
    table ??= new Map(entries());
    return table.get(word) ?? (isLower(word) ? undefined : table.get(word.toLowerCase()));
  };
}

function isLower(word: string): boolean {
  for (let at = 0; at < word.length; at++) {
    const code = word.charCodeAt(at);
    if (code > 127 || (code >= 65 && code <= 90)) return false;
  }
  return true;
}
