/** Every language knows every word of the vocabulary, and its sentences read as a cook would say them. */
import { media, peaks, shapes, signs, states, tools, verbs, vessels } from 'nappe-grammar';
import { describe, expect, it } from 'vitest';
import { allKinds } from '../../catalogue/index.ts';
import { measuresFor } from '../measures.ts';
import { textOf } from '../sentence.ts';
import { languageFor, languages } from './index.ts';
import type { Language, StepWords, Term } from './language.ts';

const nothing: StepWords = {
  verb: 'mix',
  operands: [],
  each: null,
  check: null,
  doing: null,
  into: null,
  over: null,
  inside: null,
  pieces: null,
  additions: null,
  turns: null,
  medium: null,
  atRoom: false,
  with: [],
  tool: null,
  to: null,
  at: null,
  for: null,
  until: null,
  whileWhipping: false,
  level: null,
  using: null,
  losing: null,
  as: null,
};
const thing = (text: string, amount: string | null = null): Term => ({ text, amount, part: null, vessel: null });
const says = (language: Language, words: Partial<StepWords>): string => textOf(language.step({ ...nothing, ...words }));
const [english, french, german] = ['en', 'fr', 'de'].map((code) => languageFor(code)!) as [Language, Language, Language];

describe.each(languages.map((language) => [language.name, language] as const))('%s', (_name, language) => {
  const foreign = language.code !== 'en';

  it('has a word for every verb, sign, medium, tool, peak and noun', () => {
    for (const { word } of verbs.filter(({ word: verb }) => verb !== 'do')) {
      const said = says(language, { verb: word, operands: [thing('X')], check: word === 'check' ? '84 °C' : null });
      expect(said, word).toMatch(/^\p{Lu}.*\.$/u);
      if (foreign) expect(said, word).not.toMatch(new RegExp(`\\b${word}\\b`, 'iu'));
    }
    for (const { word } of signs)
      expect(says(language, { until: word }), word).not.toMatch(foreign ? new RegExp(`[«„]\\s?${word}`, 'u') : /“/u);
    for (const { word } of media)
      expect(says(language, { medium: word }), word).not.toMatch(foreign ? new RegExp(word, 'u') : /undefined/u);
    for (const { word } of peaks)
      expect(says(language, { to: { kind: 'peak', peaks: [word] } }), word).not.toMatch(
        foreign ? new RegExp(`\\b${word}\\b`, 'u') : /undefined/u,
      );
    if (foreign) for (const { word } of tools) expect(language.tool(word), word).not.toBeNull();
    for (const { word } of [...vessels, ...shapes])
      for (const count of [1, 2]) expect(language.noun(word, count), word).not.toBeNull();
  });

  it('names everything in the catalogue', () => {
    const unnamed = foreign ? allKinds().filter((kind) => !language.kind(kind)) : [];
    expect(unnamed.map(({ name }) => name)).toEqual([]);
  });

  it('speaks of every phase and state an ingredient line may have', () => {
    for (const { word } of states) expect(language.attribute({ kind: 'state', state: word })).not.toBe('');
    for (const of of ['fat', 'cocoa', 'sugar', 'solids', 'alcohol'] as const)
      expect(language.attribute({ kind: 'share', of, percent: '35 %' })).toContain('35 %');
  });

  it('has no empty label, and says every reason and caution in whole sentences', () => {
    const words = (value: unknown): string[] =>
      typeof value === 'string'
        ? [value]
        : typeof value === 'object' && value !== null
          ? Object.values(value).flatMap(words)
          : [];
    expect(words(language.labels).filter((word) => word.trim() === '')).toEqual([]);
    const { degrees } = measuresFor(language, 'metric');
    for (const say of [...Object.values(language.reasons), ...Object.values(language.cautions)])
      expect(say(degrees)).toMatch(/^\p{Lu}.*\.$/u);
  });
});

describe('steps', () => {
  const cook: Partial<StepWords> = { verb: 'cook', to: { kind: 'temperature', text: '82–84 °C' }, until: 'nappe' };
  const heat: Partial<StepWords> = {
    verb: 'heat',
    operands: [thing('whole milk', '480 g'), thing('cream', '320 g')],
    to: { kind: 'temperature', text: '80–85 °C' },
    as: 'dairy',
  };
  const fold: Partial<StepWords> = {
    verb: 'fold',
    operands: [thing('whipped cream')],
    into: thing('custard'),
    additions: { count: '4', single: false, tools: ['whisk', 'whisk', 'spatula'] },
  };
  const portion: Partial<StepWords> = {
    verb: 'portion',
    each: '100 ml',
    into: { text: 'glass', amount: null, part: null, vessel: 'one' },
  };

  it('read in English', () => {
    expect(says(english, cook)).toBe('Cook to 82–84 °C until nappe.');
    expect(says(english, heat)).toBe('Heat whole milk (480 g) and cream (320 g) to 80–85 °C: “dairy”.');
    expect(says(english, fold)).toBe('Fold whipped cream into custard in 4 additions: whisk, whisk, then spatula.');
    expect(says(english, portion)).toBe('Portion 100 ml into each glass.');
    expect(
      says(english, { verb: 'whip', to: { kind: 'peak', peaks: ['soft', 'medium'] }, level: 'high', using: 'mixer bowl' }),
    ).toBe('Whip to soft–medium peaks on high speed using the mixer bowl.');
    expect(
      says(english, { verb: 'reserve', operands: [{ ...thing('cream', '40 g'), part: 'quantity' }], as: 'rest cream' }),
    ).toBe('Reserve 40 g of cream: “rest cream”.');
    expect(
      says(english, {
        verb: 'layer',
        operands: [{ ...thing('mousse'), part: { fraction: 0.5 } }, thing('insert')],
        into: { text: 'rings', amount: null, part: null, vessel: 'many' },
      }),
    ).toBe('Layer half of mousse and insert into the rings.');
    expect(says(english, { verb: 'check', check: '84 °C' })).toBe('Check that it reads 84 °C.');
    expect(says(english, { verb: 'do', doing: 'preheat the oven' })).toBe('Preheat the oven.');
    expect(says(english, { verb: 'mix', tool: 'hands' })).toBe('Mix by hand.');
  });

  it('read in French', () => {
    expect(says(french, cook)).toBe('Cuire à 82–84 °C jusqu’à la nappe.');
    expect(says(french, heat)).toBe('Chauffer whole milk (480 g) et cream (320 g) à 80–85 °C : « dairy ».');
    expect(says(french, fold)).toBe('Incorporer délicatement whipped cream à custard en 4 fois : fouet, fouet, puis maryse.');
    expect(says(french, { ...portion, into: { ...portion.into!, text: 'verrine' } })).toBe('Répartir 100 ml par verrine.');
  });

  it('read in German, the verb at the end', () => {
    expect(says(german, cook)).toBe('Auf 82–84 °C garen, bis es zur Rose abzieht.');
    expect(says(german, heat)).toBe('Whole milk (480 g) und cream (320 g) auf 80–85 °C erhitzen: „dairy“.');
    expect(says(german, { ...portion, into: { ...portion.into!, text: 'Glas' } })).toBe('100 ml je Glas portionieren.');
  });
});
