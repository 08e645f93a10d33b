/** Batches of taken components, draws on own ones, percentages and sizes. */
import { describe, expect, test } from 'vitest';
import { middle } from '../quantities/interval.ts';
import { contents, grams, ran } from './ran-text.ts';

const bases = `component sugar syrup base
  loss 10 %
  100 g  water
  100 g  caster sugar
  stir water, caster sugar
component custard
  200 g  whole milk
  100 g  cream, 35 % fat
  stir 50 g of whole milk into cream
  stir whole milk into cream
`;

describe('a taken component', () => {
  test('is a batch of its own, scaled so that its result, after written losses, weighs the line', () => {
    const { block, run } = ran(
      'take sugar syrup base from "bases.nappe"\nformula Test\n  450 g  sugar syrup base\n  100 g  rum\n  add rum into sugar syrup base\n',
      [],
      { 'bases.nappe': bases },
    );
    const batch = block('sugar syrup base');
    expect(grams(batch.result)).toBe(450);
    expect(grams(batch.leaves)).toBe(500);
    expect(batch.factor).toBeCloseTo(2.5, 9);
    expect(batch.lines.map((line) => grams(line.matter))).toEqual([250, 250]);
    expect(batch.batchOf?.label).toBe('sugar syrup base');
    expect(grams(run.result)).toBe(550);
  });

  test('what its steps take is scaled with it', () => {
    const { step, findings } = ran(
      'take custard from "bases.nappe"\nformula Test\n  900 g  custard\n  heat custard to 55 °C\n',
      [],
      { 'bases.nappe': bases },
    );
    expect(contents(step('stir 50').result)).toBe('cream 300, whole milk 150');
    expect(findings).toEqual([]);
  });

  test('taken twice in one formula it is made twice', () => {
    const { run } = ran(
      `take custard from "bases.nappe"
formula Test
component one
  300 g  custard
  heat custard to 55 °C
component two
  600 g  custard
  heat custard to 50 °C
assembly
  stir one into two
`,
      [],
      { 'bases.nappe': bases },
    );
    const batches = run.blocks.filter(({ batchOf }) => batchOf !== null);
    expect(batches.map(({ factor }) => factor)).toEqual([1, 2]);
    expect(new Set(run.records.map(({ id }) => id)).size).toBe(run.records.length);
    expect(grams(run.result)).toBe(900);
  });

  test('named in a step without being weighed, it is the whole as its own file has it', () => {
    const { step } = ran(
      'take custard from "bases.nappe"\nformula Test\n  100 g  raspberry\n  add raspberry into custard\n',
      [],
      {
        'bases.nappe': bases,
      },
    );
    expect(grams(step('add').result)).toBe(400);
  });

  test('its choices follow the taker’s choice of the same name, else their default', () => {
    const taken = `formula Cream
  choice flavour: vanilla, coffee
  choice size: large, small
  200 g (coffee 150 g)  whole milk
   40 g                 instant coffee   when coffee
  stir whole milk, instant coffee        when coffee
  heat whole milk to 55 °C               when vanilla
`;
    const taker = (flavours: string) =>
      `take Cream from "cream.nappe"\nformula Test\n  choice flavour: ${flavours}\n  380 g  Cream\n  heat Cream to 50 °C\n`;
    expect(contents(ran(taker('vanilla, coffee'), ['coffee'], { 'cream.nappe': taken }).run.result)).toBe(
      'whole milk 300, instant coffee 80',
    );
    expect(contents(ran(taker('rum, lemon'), ['lemon'], { 'cream.nappe': taken }).run.result)).toBe('whole milk 380');
  });

  test('its own faults of naming are told in its own file, not in every taker', () => {
    const faulty = 'component cream base\n  100 g  whole milk\n   50 g  honey\n  heat whole milk to 55 °C\n';
    const { findings } = ran(
      'take cream base from "b.nappe"\nformula Test\n  100 g  cream base\n  heat cream base to 50 °C\n',
      [],
      { 'b.nappe': faulty },
    );
    expect(findings).toEqual([]);
  });
});

describe('a component of the same formula', () => {
  const text = (line: string, more = ''): string => `formula Test
component custard
  300 g  whole milk
  100 g  caster sugar
  stir whole milk, caster sugar
assembly
  ${line}  custard
  100 g  raspberry
  stir raspberry into custard
${more}`;

  test('is not scaled: the line draws from it', () => {
    const { run, block } = ran(text('400 g'));
    expect(block('custard').factor).toBe(1);
    expect(contents(run.result)).toBe('whole milk 300, caster sugar 100, raspberry 100');
    expect(run.findings).toEqual([]);
  });

  test('what is not drawn is a leftover at the component', () => {
    const { findings, run } = ran(text('200 g'));
    expect(findings).toEqual(['leftover 2']);
    expect(grams(run.result)).toBe(300);
  });

  test('drawing more than it weighs is overdrawn at the line', () => {
    expect(ran(text('500 g')).findings).toEqual(['overdrawn 7']);
  });

  test('two draws share it', () => {
    const { findings, run } = ran(`formula Test
component custard
  300 g  whole milk
  heat whole milk to 55 °C
component one
  100 g  custard
   50 g  honey
  stir honey into custard
assembly
  200 g  custard
  stir one into custard
`);
    expect(findings).toEqual([]);
    expect(grams(run.result)).toBe(350);
  });
});

describe('percentages', () => {
  test('of the total, beside grams: total = Σg / (1 − Σ%/100)', () => {
    const { run } = ran(
      'formula Test\n  500 g  whole milk\n   15 %  caster sugar\n    5 %  honey\n  stir whole milk, caster sugar, honey\n',
    );
    expect(contents(run.result)).toBe('whole milk 500, caster sugar 93.8, honey 31.3');
    expect(grams(run.result)).toBe(625);
  });

  test('of a line that is 100 %', () => {
    const { run } = ran(
      'formula Test\n  basis plain flour\n  500 g  plain flour\n   60 %  water\n    2 %  fine salt\n  knead plain flour, water, fine salt\n',
    );
    expect(contents(run.result)).toBe('plain flour 500, water 300, fine salt 10');
  });

  test('alone, they are sized by `makes`, after written losses', () => {
    const { run } = ran(
      'formula Test\n  makes 1.8 kg\n  loss 10 %\n  70 %  whole milk\n  30 %  caster sugar\n  stir whole milk, caster sugar\n',
    );
    expect(grams(run.result)).toBe(1800);
    expect(run.blocks[0]?.lines.map((line) => grams(line.matter))).toEqual([1400, 600]);
  });

  test('or by the line that uses the component', () => {
    const { block, findings } = ran(`formula Test
component cream base
  70 %  whole milk
  30 %  caster sugar
  stir whole milk, caster sugar
assembly
  500 g  cream base
  100 g  raspberry
  stir raspberry into cream base
`);
    expect(grams(block('cream base').result)).toBe(500);
    expect(findings).toEqual([]);
  });

  test('or as a batch', () => {
    const { block } = ran('take cream base from "b.nappe"\nformula Test\n  500 g  cream base\n  heat cream base to 50 °C\n', [], {
      'b.nappe': 'component cream base\n  loss 20 %\n  70 %  whole milk\n  30 %  caster sugar\n  stir whole milk, caster sugar\n',
    });
    expect(grams(block('cream base').result)).toBe(500);
    expect(grams(block('cream base').leaves)).toBe(625);
  });

  test('by a count of shapes with lengths: the volume they hold, at the mixture’s density', () => {
    // π · 8² · 3 cm = 603.2 ml a ring; the mixture is a little denser than water.
    const { run } = ran('formula Test\n  makes 2 rings of 16 x 3 cm\n  100 %  whole milk\n  pour into ring\n');
    expect(grams(run.result)).toBeGreaterThan(1206 * 1.01);
    expect(grams(run.result)).toBeLessThan(1206 * 1.06);
  });
});

describe('sizes', () => {
  const text = `formula Test
  makes 12 glasses of 50 g
  400 g  whole milk
  100 g  caster sugar
    2 pc each  raspberry
  stir 100 g of whole milk, caster sugar as sweet milk
  stir whole milk into sweet milk
  portion 30 g into glass
  garnish with raspberry
`;
  const assembled = text.replace('formula Test\n', 'formula Test\n').replace('  400 g', 'assembly\n  400 g');

  test('`each` counts the pieces', () => {
    const { block } = ran(assembled);
    const raspberries = block('assembly').lines.find(({ line }) => line.name === 'raspberry')!;
    const { amount } = raspberries.line;
    expect(middle(raspberries.grams)).toBeCloseTo(24 * (amount.base.gramsPerUnit ?? 0), 6);
  });

  test.each([0.5, 1, 3, 10])('made %s times as large, everything weighs so many times as much', (factor) => {
    const once = ran(assembled);
    const scaled = ran(assembled, [], {}, factor);
    expect(scaled.findings).toEqual(once.findings);
    scaled.run.records.forEach((record, i) => {
      const own = once.run.records[i]!;
      expect(record.step).toBe(own.step === record.step ? own.step : record.step);
      expect(middle(record.result.grams)).toBeCloseTo(factor * middle(own.result.grams), 6);
    });
    expect(middle(scaled.run.result!.grams)).toBeCloseTo(factor * middle(once.run.result!.grams), 6);
  });
});
