/** The vocabulary: tables that agree with each other, with the grammar and with published definitions of units. */

import {
  allergenWords,
  blocks,
  clauses,
  connectives,
  cooksWords,
  distance,
  facts,
  headers,
  isVesselNoun,
  mediumOf,
  nameKey,
  nearest,
  parse,
  parseLine,
  peakOf,
  plainTemplate,
  shapeOf,
  singularNoun,
  snippetOf,
  toolOf,
  unitOf,
  units,
  usesOf,
  verbMeant,
  verbOf,
  verbs,
} from 'nappe-grammar';
import { describe, expect, test } from 'vitest';

test('block words, header words and verbs are disjoint, and none is a connective', () => {
  const words = [...blocks.map((row) => row.word), ...headers.map((row) => row.word), ...verbs.map((row) => row.word)];
  expect(words).toHaveLength(new Set(words).size);
  // `by` opens a header and joins inside a line; the two places cannot be mistaken.
  expect(words.filter((word) => connectives.some((each) => each === word))).toEqual(['by']);
});

test("cooks' words are no words of the notation, and each stands for one verb", () => {
  const known = new Set<string>([
    ...blocks.map((row) => row.word),
    ...headers.map((row) => row.word),
    ...verbs.map((row) => row.word),
  ]);
  const all = Object.entries(cooksWords).flatMap(([verb, words]) => words.map((word) => [verb, word] as const));
  for (const [verb, word] of all) {
    expect(verbOf(verb)?.word).toBe(verb);
    expect(known.has(word)).toBe(false);
    expect(verbMeant(word)?.word).toBe(verb);
  }
});

test('every example and template reads without a problem', () => {
  for (const row of blocks) {
    expect(parseLine(row.example, 'formula').problems).toEqual([]);
    expect(parseLine(plainTemplate(row.template), 'formula').problems).toEqual([]);
  }
  for (const row of headers) {
    expect([row.example, plainTemplate(row.template)].flatMap((text) => parseLine(text, 'formula').problems)).toEqual([]);
  }
  for (const row of facts) {
    expect([row.example, plainTemplate(row.template)].flatMap((text) => parseLine(text, 'ingredient').problems)).toEqual([]);
  }
  for (const row of verbs)
    expect(parseLine(plainTemplate(row.template), 'formula')).toMatchObject({ verb: row.word, problems: [] });
});

test('a verb takes exactly the clauses its row says', () => {
  for (const verb of verbs) {
    for (const clause of clauses) {
      const text = [verb.word, ...needed(verb.word, clause.use), clause.example].join(' ');
      const taken = parseLine(text, 'formula').problems.every((problem) => problem.code !== 'wrong-clause');
      expect([text, taken]).toEqual([text, usesOf(verb).includes(clause.use)]);
    }
  }
});

/** What a verb needs before a clause of another kind is tried on it. */
function needed(verb: string, use: string): string[] {
  if (verb === 'do') return ['"x"'];
  if (verb === 'check') return ['84 °C'];
  const operand = use.startsWith('in') && verbOf(verb)?.takes.includes('in name') !== true;
  return operand || ['add', 'fold', 'reserve', 'discard'].includes(verb) ? ['x'] : [];
}

test('snippets', () => {
  expect(snippetOf('heat <names> to <80> °C')).toBe(['heat $', '{1:names} to $', '{2:80} °C'].join(''));
  expect(snippetOf('on <low|high>')).toBe(['on $', '{1|low,high|}'].join(''));
});

describe('nearest', () => {
  test('swapped neighbours are one slip', () => {
    expect(distance('hte', 'the')).toBe(1);
    expect(distance('', 'abc')).toBe(3);
    expect(distance('abcdef', 'uvwxyz', 2)).toBe(3);
    // Published examples: kitten/sitting = 3 (Levenshtein), ca/abc = 3 (optimal string alignment).
    expect(distance('kitten', 'sitting')).toBe(3);
    expect(distance('ca', 'abc')).toBe(3);
  });

  test('a third of the length, at least one', () => {
    expect(nearest('wisk', ['whip', 'whisk'])).toBe('whisk');
    expect(nearest('foo', ['bar'])).toBeNull();
    expect(nearest('componnnt', ['component'])).toBe('component');
    expect(nearest('x'.repeat(5000), ['y'])).toBeNull();
  });
});

test('names are compared after folding', () => {
  expect(nameKey('  Crème   FRAÎCHE ')).toBe('crème fraîche');
  expect(nameKey('cre\u0300me')).toBe(nameKey('CRÈME'));
  expect(nameKey('Süßrahm')).toBe(nameKey('SÜSSRAHM'));
  expect(nameKey('baker\u2019s')).toBe("baker's");
  expect(nameKey('a\u00a0b')).toBe('a b');
  expect(nameKey('')).toBe('');
});

test('nouns', () => {
  expect(
    ['glasses', 'Dishes', 'boxes', 'half-spheres', 'tart rings', 'molds', 'macarons', 'glass', 'pieces'].map(singularNoun),
  ).toEqual(['glass', 'dish', 'box', 'half-sphere', 'tart ring', 'mould', 'macarons', 'glass', 'piece']);
  expect(shapeOf('tart rings')?.word).toBe('ring');
  expect(shapeOf('glass')).toBeUndefined();
  expect(['mixer bowl', 'saucepans', 'bar'].every(isVesselNoun)).toBe(true);
  expect(isVesselNoun('butter')).toBe(false);
});

test('peaks, media and tools', () => {
  expect(peakOf('Soft-Medium')).toEqual({ low: 'soft', high: 'medium' });
  expect(peakOf('medium - very soft')).toEqual({ low: 'very soft', high: 'medium' });
  expect(peakOf('hard')).toBeUndefined();
  expect(mediumOf('bain-marie')?.word).toBe('water bath');
  expect(toolOf('Stick Blender')?.word).toBe('immersion blender');
});

describe('units', () => {
  test('every spelling is one unit', () => {
    const words = units.flatMap((row) => [row.word.toLowerCase(), ...row.spellings]);
    expect(words).toHaveLength(new Set(words).size);
    for (const row of units) for (const word of row.spellings) expect(unitOf(word.toUpperCase())).toBe(row);
  });

  /**
   * Pound: 0.45359237 kg exactly, 16 ounces (International Yard and Pound Agreement, 1959).
   * US gallon: 231 cubic inches of 2.54 cm; 1 gallon = 16 cups = 128 fluid ounces = 256 tablespoons = 768 teaspoons
   * (NIST Handbook 44, Appendix C).
   */
  test('customary units by their definitions', () => {
    const gallon = 231 * 2.54 ** 3;
    const factor = (word: string): number => unitOf(word)!.factor;
    expect(factor('lb')).toBe(453.59237);
    expect(factor('oz')).toBeCloseTo(453.59237 / 16, 12);
    expect(factor('cup')).toBeCloseTo(gallon / 16, 9);
    expect(factor('floz')).toBeCloseTo(gallon / 128, 9);
    expect(factor('tbsp')).toBeCloseTo(gallon / 256, 9);
    expect(factor('tsp')).toBeCloseTo(gallon / 768, 9);
  });
});

test('allergens: every known word is accepted, one by one and together', () => {
  expect(parseLine(`free from ${allergenWords.join(', ')}`, 'formula').problems).toEqual([]);
  expect(parse(allergenWords.map((word) => `free from ${word}`).join('\n')).lines.flatMap((line) => line.problems)).toEqual([]);
});
