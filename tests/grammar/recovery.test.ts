/** What is wrong with a line costs one diagnostic, says how to write it, and leaves what can be read. */

import { format, parse, parseLine } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { bare, fixed, lineOf, problemsOf } from './helpers.ts';

/** A line, the first fix applied to it, and what is read of it although it is wrong. */
const slips: [string, string | null, object][] = [
  ['1,5 g salt', '1.5 g salt', { quantity: { base: { low: 1.5 } }, name: { key: 'salt' } }],
  ['1.500,25 g salt', '1500.25 g salt', { quantity: { base: { low: 1500.25 } } }],
  ['1 000 g flour', '1000 g flour', { quantity: { base: { low: 1000 } }, name: { key: 'flour' } }],
  ['1/0 g salt', null, { kind: 'ingredient', name: { key: 'salt' } }],
  ['35-30 g salt', '30-35 g salt', { quantity: { base: { low: 30, high: 35 } } }],
  ['240 g cream of tartar', '240 g "cream of tartar"', { name: { text: 'cream of tartar' } }],
  ['100 g 00 flour', '100 g "00 flour"', { name: { key: '00 flour' } }],
  ['240 g M&M', '240 g "M&M"', { name: { text: 'M&M' } }],
  ['240 g milk as base', '240 g milk, as base', { name: { key: 'milk' }, attributes: [{ kind: 'as', name: { key: 'base' } }] }],
  ['240 g milk at 4 °C', '240 g milk, 4 °C', { name: { key: 'milk' }, attributes: [{ kind: 'temperature' }] }],
  ['240 g milk 4 °C', '240 g milk, 4 °C', { name: { key: 'milk' }, attributes: [{ kind: 'temperature' }] }],
  ['240 g milk (whole)', '240 g milk, "whole"', { name: { key: 'milk' } }],
  ['160 g cream (tea 60 g)', '160 g (tea 60 g) cream', { name: { key: 'cream' } }],
  ['240 g milk, fatty, 4 °C', '240 g milk, "fatty", 4 °C', { name: { key: 'milk' }, attributes: [{ kind: 'temperature' }] }],
  ['240 g milk, cut in half when tea', '240 g milk, "cut in half" when tea', { name: { key: 'milk' }, guard: { word: 'when' } }],
  ['240 g milk, at 4 °C', '240 g milk, 4 °C', { name: { key: 'milk' } }],
  ['240 g milk, 35 %', '240 g milk, 35 % fat', { name: { key: 'milk' } }],
  ['240 g milk, 35', '240 g milk, 35 °C', { name: { key: 'milk' } }],
  ['5 g "cream of tartar', '5 g "cream of tartar"', { name: { text: 'cream of tartar' } }],
  ['- 240 g milk', '240 g milk', { kind: 'ingredient', name: { key: 'milk' } }],
  ['wisk egg as base', 'whisk egg as base', { verb: 'whisk', clauses: [{ word: 'as' }] }],
  ['simmer milk', 'cook milk', { verb: 'cook', operands: [{ name: { key: 'milk' } }] }],
  ['mkaes 12 glasses', 'makes 12 glasses', { word: 'makes', yield: { count: 12 } }],
  ['make 570 g', 'makes 570 g', { word: 'makes', yield: { quantity: { low: 570 } } }],
  ['yields 12 glasses', 'makes 12 glasses', { word: 'makes', yield: { count: 12 } }],
  ['keep 2 d at 0-4 °C', 'keeps 2 d at 0-4 °C', { word: 'keeps' }],
  ['keep custard at 60 °C for 5 min', 'hold custard at 60 °C for 5 min', { verb: 'hold' }],
  ['whisk in butter', 'add butter', { verb: 'add', operands: [{ name: { key: 'butter' } }] }],
  ['whisk in 60 g of butter', 'add 60 g of butter', { verb: 'add', operands: [{ part: { kind: 'quantity' } }] }],
  ['fold in cream', 'fold cream', { verb: 'fold', operands: [{ name: { key: 'cream' } }] }],
  ['fold cream in custard', 'fold cream into custard', { clauses: [{ word: 'into', target: { key: 'custard' } }] }],
  ['pour custard to glass', 'pour custard into glass', { clauses: [{ word: 'into', target: { key: 'glass' } }] }],
  ['whip to soft', 'whip to soft peak', { clauses: [{ word: 'to', target: { base: { low: 'soft' } } }] }],
  ['cook until 82 °C', 'cook to 82 °C', { clauses: [{ word: 'to', target: { base: { low: 82 } } }] }],
  ['heat milk to 80', 'heat milk to 80 °C', { operands: [{ name: { key: 'milk' } }] }],
  ['heat milk to 80 °', 'heat milk to 80 °C', { clauses: [{ word: 'to' }] }],
  ['heat milk 80 °C', 'heat milk to 80 °C', { clauses: [{ word: 'to', target: { base: { low: 80 } } }] }],
  ['bake for 20', 'bake for 20 min', { verb: 'bake' }],
  ['bake 20 min', 'bake for 20 min', { clauses: [{ word: 'for', target: { base: { low: 1200 } } }] }],
  ['cook to 82 °C to 84 °C', 'cook to 82 °C', { clauses: [{ word: 'to', target: { base: { low: 82 } } }] }],
  ['strain at 70 °C', 'strain', { verb: 'strain', clauses: [] }],
  ['add 60 g butter', 'add 60 g of butter', { operands: [{ name: { key: 'butter' } }] }],
  ['add butter, until smooth', 'add butter until smooth', { clauses: [{ word: 'until' }] }],
  ['cook until thick and set as x', 'cook until "thick and set" as x', { clauses: [{ word: 'until' }, { word: 'as' }] }],
  ['cook until nappe.', 'cook until nappe', { clauses: [{ word: 'until' }] }],
  ['mix sugar with flour', 'mix sugar, flour', { operands: [{ name: { key: 'sugar' } }] }],
  ['mix sugar with a whisk', 'mix sugar with whisk', { clauses: [{ word: 'with tool' }] }],
  ['soak sponge with syrup', null, { operands: [{ name: { key: 'sponge' } }] }],
  ['reduce to half', 'reduce losing 50 %', { clauses: [{ word: 'losing', percent: { base: { low: 50 } } }] }],
  ['do wash up', 'do "wash up"', { doing: { text: 'wash up' } }],
  ['cool at room temperature', 'cool at room', { clauses: [{ word: 'at room' }] }],
  [
    'whisk egg when tea until smooth',
    'whisk egg until smooth when tea',
    { guard: { word: 'when' }, clauses: [{ word: 'until' }] },
  ],
  ['whisk egg when tea or milk', 'whisk egg when tea, milk', { guard: { values: [{ key: 'tea' }, { key: 'milk' }] } }],
  ['heat milk (gently) as dairy', null, { operands: [{ name: { key: 'milk' } }], clauses: [{ word: 'as' }] }],
  ['heat milk to as dairy', null, { operands: [{ name: { key: 'milk' } }], clauses: [{ word: 'as' }] }],
  [
    'whisk egg, , sugar as x',
    null,
    { operands: [{ name: { key: 'egg' } }, { name: { key: 'sugar' } }], clauses: [{ word: 'as' }] },
  ],
  ['free from nut', 'free from nuts', { word: 'free' }],
  ['free from shellfish', 'free from crustacean', { word: 'free' }],
  ['loss 5', 'loss 5 %', { kind: 'bad' }],
  ['choice size: big when tea', null, { kind: 'header', word: 'choice', name: { key: 'size' } }],
  ['Custard:', 'component custard', { kind: 'bad' }],
  ['componnent custard', 'component custard', { kind: 'block', word: 'component', name: { key: 'custard' } }],
  ['asembly', 'assembly', { kind: 'block', word: 'assembly' }],
  ['take custard from bases.nappe', 'take custard from "bases.nappe"', { kind: 'take', items: [{ name: { key: 'custard' } }] }],
];

describe('one problem a line', () => {
  test.each(slips)('%s', (text, repaired, read) => {
    const line = parseLine(text, 'formula');
    expect(line.problems).toHaveLength(1);
    const [problem] = line.problems;
    expect(problem!.message).toMatch(/^[`A-Z0-9].*[.:`?]$|^`/u);
    expect(problem!.start).toBeGreaterThanOrEqual(0);
    expect(problem!.end).toBeGreaterThanOrEqual(problem!.start);
    expect(problem!.end).toBeLessThanOrEqual(text.length);
    expect(bare(line)).toMatchObject(read);
    if (repaired === null) return;
    expect(fixed(text, problem!.fixes[0]!).trim()).toBe(repaired);
    expect(parseLine(repaired, 'formula').problems).toEqual([]);
  });

  test('before exactly three digits both readings are offered', () => {
    const [problem] = parseLine('1,500 g cream', 'formula').problems;
    expect(problem!.fixes.map((fix) => fixed('1,500 g cream', fix))).toEqual(['1.500 g cream', '1500 g cream']);
  });

  test('codes', () => {
    expect(parseLine('whisk in butter', 'formula').problems[0]?.code).toBe('wrong-clause');
    expect(parseLine('strain at 70 °C', 'formula').problems[0]?.code).toBe('wrong-clause');
    expect(parseLine('cook to 85-80 °C', 'formula').problems[0]?.code).toBe('range-reversed');
    expect(parseLine('pour custard to glass', 'formula').problems[0]?.code).toBe('syntax');
  });

  test('cold ranges are written from either end', () => {
    expect(parseLine('freeze for 6 h at -18..-20 °C', 'formula').problems).toEqual([]);
    expect(parseLine('freeze for 6 h at -18--20 °C', 'formula').problems).toEqual([]);
  });

  test('verbs say what they need', () => {
    for (const text of [
      'bloom gelatin',
      'hold at 60 °C',
      'hold for 4 min',
      'reduce',
      'add',
      'check',
      'do',
      'fold',
      'reserve',
      'discard',
    ]) {
      expect(parseLine(text, 'formula').problems.map((problem) => problem.code)).toEqual(['syntax']);
    }
  });
});

test('verbs and headers win over a block word that is no nearer', () => {
  expect(parseLine('bakke at 160 °C', 'formula')).toMatchObject({ kind: 'step', verb: 'bake' });
  expect(parseLine('glazze with x', 'formula')).toMatchObject({ kind: 'step', verb: 'glaze' });
  expect(parseLine('tkae custard from "a.nappe"', 'formula')).toMatchObject({ kind: 'take' });
  expect(parseLine('The custard is good', 'formula')).toMatchObject({ kind: 'bad' });
});

test('lines that cannot be read are one diagnostic as long as they stand together', () => {
  const text = 'formula X\nThe custard is good.\nSo they say\n\nAnd again\n  240 g milk\nx y z\n';
  expect(problemsOf(text).map((problem) => Number.parseInt(problem, 10))).toEqual([2, 5, 7]);
});

test('a bad block word opens its block all the same', () => {
  const text = 'equipmnt\n  fridge 3 °C\ncomponet custard\n  240 g milk\n';
  expect(problemsOf(text).map((problem) => Number.parseInt(problem, 10))).toEqual([1, 3]);
  expect(parse(text).lines.map((line) => line.kind)).toEqual(['block', 'equipment', 'block', 'ingredient', 'blank']);
});

test('a line with a problem keeps its layout', () => {
  const text = 'component x\n240 g milk\n   240   g  cream of tartar   // mine\n';
  expect(format(parse(text))).toBe('component x\n  240 g  milk\n   240   g  cream of tartar   // mine\n');
});

describe('limits', () => {
  test('a long line, a long name, a long number and a long note are refused where they stand', () => {
    const long = 'x'.repeat(25_000);
    for (const text of [
      `5 g ${long}`,
      `5 g ${'x'.repeat(201)}`,
      `${'1'.repeat(13)} g x`,
      `| ${'x'.repeat(10_001)}`,
      `formula ${'x'.repeat(201)}`,
    ]) {
      const [problem, ...others] = parseLine(text, 'formula').problems;
      expect(problem?.message).toMatch(/at most|more than/);
      expect(problem!.message.length).toBeLessThan(200);
      expect(others).toEqual([]);
    }
  });

  test('a file of too many lines is read as far as the limit', () => {
    const file = parse('\n'.repeat(200_005));
    expect(file.lines).toHaveLength(200_001);
    expect(file.lines.at(-1)?.problems[0]?.message).toMatch(/at most 200000 lines/);
  });
});

test('an error among the words of a step loses only itself', () => {
  const line = lineOf('step', 'whisk egg, sugar to to as liaison when tea');
  expect(bare(line)).toMatchObject({
    operands: [{ name: { key: 'egg' } }, { name: { key: 'sugar' } }],
    clauses: [{ word: 'as', name: { key: 'liaison' } }],
    guard: { values: [{ key: 'tea' }] },
  });
});
