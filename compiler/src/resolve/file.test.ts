/** One file resolved: lines, attributes, quantities, guards, notes, and every finding the resolver makes. */
import { describe, expect, test } from 'vitest';
import { combinations, holds, pick } from './choices.ts';
import { inMemory } from './in-memory.ts';
import type { Formula, RawFinding, SourceLine, Unit } from './model.ts';
import { percentFindings } from './percentages.ts';

const unitOf = (text: string): Unit => inMemory({ 'a.nappe': text }).workspace.unit('/work/a.nappe');

function formulaOf(text: string): Formula {
  const [formula] = unitOf(text).formulas;
  if (!formula) throw new Error('no formula');
  return formula;
}

/** The one ingredient line of a one-component formula. */
function lineOf(text: string, headers = ''): SourceLine {
  const line = formulaOf(`formula A\n${headers}${text}\n`).components[0]?.lines[0];
  if (!line) throw new Error(text);
  return line;
}

const all = (unit: Unit): readonly RawFinding[] => [...unit.findings, ...unit.formulas.flatMap(({ findings }) => findings)];
const findings = (text: string): readonly RawFinding[] => all(unitOf(text));
const codes = (text: string): string[] => findings(text).map(({ code, place }) => `${code} ${place.line}`);
const kindOf = (line: SourceLine) => {
  if (line.substance.is !== 'kind') throw new Error(line.name);
  return line.substance.kind;
};

describe('an ingredient line', () => {
  test('knows its kind by name and synonym, and what the steps call it', () => {
    expect(kindOf(lineOf('  100 g  Caster  Sugar')).name).toBe('caster sugar');
    const line = lineOf('  100 g  superfine sugar, as yolk sugar');
    expect([kindOf(line).name, line.name, line.key, line.label]).toEqual([
      'caster sugar',
      'yolk sugar',
      'yolk sugar',
      'superfine sugar',
    ]);
  });

  test('`is` names the kind', () => {
    expect(kindOf(lineOf('  100 g  the brown bag, is plain flour')).name).toBe('plain flour');
  });

  test('attributes', () => {
    const line = lineOf('  9 g  gelatin, sheet, 200-220 bloom, 39 °F, "cut up", "rinsed"');
    expect(line).toMatchObject({ phase: 'sheet', bloom: { low: 200, high: 220 }, preparation: 'cut up, rinsed' });
    expect(line.celsius?.low).toBeCloseTo(3.889, 3);
    expect(lineOf('  9 g  raspberry purée, pasteurised, pH 3.2').pH).toBe(3.2);
    expect(kindOf(lineOf('  9 g  raspberry, frozen'))).toMatchObject({ storage: 'frozen', phase: 'frozen' });
    expect(kindOf(lineOf('  9 g  egg yolk, pasteurised')).pasteurised).toBe(true);
    expect(kindOf(lineOf('  9 g  whole milk, raw')).pasteurised).toBe(false);
  });

  test('`% fat` moves everything else in proportion', () => {
    const composition = kindOf(lineOf('  100 g  cream, 40 % fat')).composition;
    expect(composition?.milkFat).toBeCloseTo(0.4, 6);
    expect(Object.values(composition ?? {}).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 2);
  });

  test('a figure that cannot be said of it is refused on that attribute alone', () => {
    const [finding, ...more] = findings('formula A\n  100 g  caster sugar, 35 % fat\n');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code: 'syntax', place: { line: 1, start: 23, end: 31 } });
    expect(lineOf('  100 g  caster sugar, 35 % fat').amount.base.value.low).toBe(100);
  });

  test('what no catalogue knows keeps its mass, with the nearest kinds as fixes', () => {
    const [finding, ...more] = findings('formula A\n  100 g  castor sugr\n');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({ code: 'unknown-ingredient', numbers: { name: 'castor sugr' } });
    expect(finding?.fixes?.[0]?.edits[0]?.text).toMatch(/^, is /);
    expect(lineOf('  100 g  castor sugr')).toMatchObject({
      substance: { known: false },
      amount: { base: { value: { low: 100 } } },
    });
  });
});

describe('amounts', () => {
  test('volumes and pieces become grams', () => {
    const milk = lineOf('  2 dl  whole milk').amount.base;
    expect(milk).toMatchObject({ measure: 'grams', written: '2 dl', unit: 'dl' });
    expect(milk.value.low).toBeCloseTo(206, 0);
    expect(lineOf('  3  egg').amount.base).toMatchObject({
      measure: 'grams',
      value: { low: 150, high: 150 },
      written: '3 pc',
      gramsPerUnit: 50,
    });
  });

  test('overrides may use other units; 0 is no line', () => {
    const { amount } = lineOf('  40 g (cut 1 kg, mould 0 pc)  caster sugar', '  choice serving: glass, cut, mould\n');
    const formula = formulaOf('formula A\n  choice serving: glass, cut, mould\n');
    expect(combinations(formula.choices).map((selection) => pick(amount, selection).value.high)).toEqual([40, 1000, 0]);
  });

  test('ranges, percentages, `some`, `each`', () => {
    expect(lineOf('  30-40 g  caster sugar').amount.base.value).toEqual({ low: 30, high: 40 });
    expect(lineOf('  12 %  caster sugar').amount.base).toMatchObject({
      measure: 'percent',
      value: { low: 12 },
      gramsPerUnit: null,
    });
    expect(lineOf('  some  caster sugar').amount.base).toMatchObject({ measure: 'some' });
    expect(lineOf('  2 pc each  egg', '  makes 4 glasses\n').amount.base).toMatchObject({ each: true, written: '2 pc' });
  });

  test('without density or piece mass: an error at the line, once, and only where that amount holds', () => {
    const house = 'ingredient crumb\n  like plain flour\n  phase powder\n\n';
    expect(codes(`formula A\n  3 pc  plain flour\n`)).toEqual(['needs-piece-mass 1']);
    expect(codes(`ingredient crumb\n  sucrose 100 %\n  phase powder\n\nformula A\n  3 tbsp  crumb\n`)).toEqual([
      'needs-density 1',
    ]);
    const text = `${house}formula A\n  choice serving: glass, cut\n  40 g (cut 3 pc)  crumb\n`;
    const [finding] = findings(text);
    const { choices } = formulaOf(text);
    expect(finding?.code).toBe('needs-piece-mass');
    const holding = combinations(choices).filter((selection) =>
      (finding?.conditions ?? []).every((condition) => holds(condition, selection)),
    );
    expect(holding).toEqual([{ serving: 'cut' }]);
  });

  test('a density or piece mass of the house', () => {
    const line = formulaOf(
      'ingredient crumb\n  like plain flour\n  density 0.5 g/ml\n  each 7 g\n\nformula A\n  2 pc  crumb\n  1 l  crumb, as more\n',
    ).components[0]?.lines;
    expect(line?.map(({ amount }) => amount.base.value.low)).toEqual([14, 500]);
  });
});

describe('a word that may be a unit', () => {
  test('is part of the name where the whole is known', () => {
    expect(codes('formula A\n  2 vanilla pod\n')).toEqual([]);
  });
  test('is part of the name where nothing is known', () => {
    expect(codes('formula A\n  2 quay flumps\n')).toEqual(['unknown-ingredient 1', 'needs-piece-mass 1']);
  });
  test('is an unknown unit before a known name, with the nearest unit and a place behind the name', () => {
    const [finding, ...more] = findings('formula A\n  20 grms caster sugar\n');
    expect(more).toEqual([]);
    expect(finding).toMatchObject({
      code: 'unknown-unit',
      place: { start: 5, end: 9 },
      numbers: { word: 'grms', name: 'caster sugar', nearest: 'g' },
    });
    expect(finding?.fixes?.[1]?.edits[0]).toMatchObject({ start: 5, end: 22, text: 'caster sugar, "grms"' });
    expect(lineOf('  3 knobs butter')).toMatchObject({ key: 'butter', amount: { base: { measure: 'unknown' } } });
  });
  test('also before a name of the formula', () => {
    expect(codes('formula A\ncomponent dough\n  1 kg  plain flour\nassembly\n  2 balls dough\n')).toEqual(['unknown-unit 1']);
  });
  test('and in a step', () => {
    expect(codes('formula A\n  100 g  butter\n  melt 2 knobs of butter\n')).toEqual(['unknown-unit 2']);
  });
});

describe('names', () => {
  test('twice in a block, unless no combination has both', () => {
    expect(codes('formula A\n  10 g  butter\n  20 g  Butter\n')).toEqual(['duplicate-name 2']);
    expect(codes('formula A\n  choice c: x, y\n  10 g  butter   when x\n  20 g  butter   when y\n')).toEqual([]);
    expect(codes('formula A\n  choice c: x, y\n  10 g  butter\n  20 g  butter   when y\n')).toEqual(['duplicate-name 3']);
  });

  test('`as` declares, except of the thing that has the name already', () => {
    const two = '  10 g  butter\n  20 g  caster sugar\n';
    expect(codes(`formula A\n${two}  mix butter, caster sugar as butter\n`)).toEqual([]);
    expect(codes(`formula A\n${two}  melt butter as fat\n  mix caster sugar into fat as fat\n`)).toEqual([]);
    expect(codes(`formula A\n${two}  melt butter as fat\n  strain as fat\n`)).toEqual([]);
    expect(codes(`formula A\n${two}  melt butter as fat\n  heat caster sugar as fat\n`)).toEqual(['duplicate-name 4']);
    expect(codes(`formula A\n${two}  heat caster sugar as butter\n`)).toEqual(['duplicate-name 3']);
  });

  test('components, formulas, house ingredients, equipment, choice values, assemblies', () => {
    expect(codes('formula A\ncomponent x\n  1 g  salt\ncomponent X\n  1 g  salt\n')).toEqual(['duplicate-name 0']);
    expect(codes('formula A\n  choice c: x, y\ncomponent z when x\n  1 g  salt\ncomponent z when y\n  1 g  salt\n')).toEqual([]);
    expect(codes('formula A\nformula a\n')).toEqual(['duplicate-name 0']);
    expect(codes('ingredient x\n  like salt\ningredient x\n  like salt\n')).toEqual(['duplicate-name 0']);
    expect(codes('equipment\n  tray 3 cm deep\n  tray 5 cm deep\n')).toEqual(['duplicate-name 2']);
    expect(codes('formula A\n  choice a: x, y\n  choice b: y, z\n')).toEqual(['duplicate-name 2']);
    expect(codes('formula A\nassembly\nassembly\n')).toEqual(['duplicate-name 0']);
  });

  test('a line that names a component of the formula draws from it; one from elsewhere is a batch', () => {
    const formulas = unitOf(
      'component glaze\n  10 g  water\n\nformula Sablé\n  100 g  plain flour\n\nformula A\ncomponent base\n  10 g  water\nassembly\n  5 g  base\n  5 g  glaze\n  5 g  sablé\n',
    ).formulas;
    const lines = formulas[1]?.assembly?.lines ?? [];
    expect(lines.map(({ substance }) => substance.is)).toEqual(['own component', 'batch', 'batch']);
    const last = lines[2]?.substance;
    expect(last?.is === 'batch' && last.taken.formula).toBe(formulas[0]);
  });

  test('a component named for what it is made of weighs out the ingredient', () => {
    expect(codes('formula A\ncomponent caster sugar\n  10 g  caster sugar\n')).toEqual([]);
  });

  test('components that draw on each other in a circle', () => {
    expect(codes('formula A\ncomponent x\n  1 g  y\ncomponent y\n  1 g  x\n')).toEqual(['used-before-made 1']);
    expect(codes('formula X\n  1 g  Y\nformula Y\n  1 g  X\n')).toEqual(['import-cycle 1']);
  });

  test('a basis nothing has', () => {
    expect(codes('formula A\n  basis flour\n  100 %  plain flour\n')).toEqual(['unknown-name 1']);
    expect(codes('formula A\n  basis plain flower\ncomponent x\n  100 %  plain flour\n')).toEqual(['unknown-name 1']);
    expect(codes('formula A\n  basis plain flour\ncomponent x\n  1 kg  plain flour\n  2 %  salt\n')).toEqual([]);
  });
});

describe('choices', () => {
  test('a value nobody declares, with the nearest', () => {
    const [finding, ...more] = findings(
      'formula A\n  choice serving: glass, cut\n  10 g (cutt 5 g)  salt\n  chill to 4 °C for 4 h (bowl 6 h)   when glas\n',
    );
    expect(finding?.fixes?.[0]?.edits[0]).toMatchObject({ line: 2, text: 'cut' });
    expect([finding, ...more].map((one) => `${one?.code} ${one?.place.line}:${one?.place.start}`)).toEqual([
      'unknown-choice 2:8',
      'unknown-choice 3:25',
      'unknown-choice 3:42',
    ]);
  });

  test('parentheses hold values of one choice', () => {
    const [finding] = findings('formula A\n  choice a: x, y\n  choice b: p, q\n  10 g (y 5 g, q 6 g)  salt\n');
    expect(finding).toMatchObject({ code: 'unknown-choice', numbers: { value: 'q', choice: 'b', expected: 'a' } });
  });

  test('a block knows the choices it uses', () => {
    const formula = formulaOf(
      'formula A\n  choice a: x, y\n  choice b: p, q\n  choice c: m, n\ncomponent k when m\n  10 g (y 5 g)  salt\n  stir salt for 1 min (q 2 min)\n',
    );
    expect([...(formula.components[0]?.choicesUsed ?? [])].sort()).toEqual(['a', 'b', 'c']);
  });
});

describe('headers', () => {
  test('become the formula', () => {
    const formula = formulaOf(`formula A
  by Harbour Road evening school
  version 4
  makes 12 glasses of 100 ml
  served at 4-6 °C
  keeps 2 d at 0-4 °C
  free from nuts, gluten
  gelatin by strength
  tagged children
  loss 5 %
  | A note.
  | Its second line.

  | The same text.
  10 g  salt
`);
    expect(formula).toMatchObject({
      by: 'Harbour Road evening school',
      version: '4',
      makes: [{ value: { count: 12, size: { low: 100, unit: 'ml' } }, condition: null }],
      served: [{ value: { low: 4, high: 6 } }],
      keeps: [{ value: { seconds: { low: 172_800 }, celsius: { low: 0, high: 4 } } }],
      freeFrom: [{ allergen: 'nuts' }, { allergen: 'gluten' }],
      settings: { gelatinLaw: 'strength', tags: ['children'], thermometer: 1 },
      notes: ['A note.\nIts second line.\n\nThe same text.'],
      components: [{ name: 'A', losses: [{ value: { low: 0.05, high: 0.05 } }] }],
      unreadable: false,
    });
  });

  test('stand in the formula; only `basis` and `loss` in a component', () => {
    expect(codes('formula A\ncomponent x\n  basis total\n  loss 3 %\n  makes 1 kg\n  10 g  salt\n')).toEqual(['syntax 3']);
  });
});

test('notes belong to the line above them', () => {
  const [component] = formulaOf(
    'formula A\ncomponent x\n  | Of the block.\n  10 g  salt\n    | Of the salt.\n  // aside\n  stir salt\n    | Of the step.\n\n    | Still.\n',
  ).components;
  expect([component?.notes, component?.lines[0]?.notes, component?.steps[0]?.notes]).toEqual([
    ['Of the block.'],
    ['Of the salt.'],
    ['Of the step.\n\nStill.'],
  ]);
});

describe('house ingredients', () => {
  test('stand for themselves, or like another', () => {
    const { houseKinds } = unitOf(
      'ingredient mill flour\n  like plain flour\n  protein 12 %\n\ningredient fine mill flour\n  like mill flour\n',
    );
    expect(houseKinds.get('fine mill flour')?.composition?.protein).toBeCloseTo(0.12, 6);
    expect(houseKinds.get('fine mill flour')?.allergens).toContain('gluten');
  });

  test('like nothing known, like each other, figures that cannot be', () => {
    expect(codes('ingredient x\n  like plain flower power\n')).toEqual(['unknown-ingredient 1']);
    expect(codes('ingredient x\n  like y\ningredient y\n  like x\n')).toEqual(['unknown-ingredient 1']);
    expect(codes('ingredient x\n  water 80 %\n  sucrose 40 %\n')).toEqual(['syntax 0']);
  });
});

describe('lines out of place', () => {
  test('before any block', () => {
    expect(codes('  10 g  salt\n  stir salt\n')).toEqual(['syntax 0']);
    expect(codes('assembly\n  stir\n')).toEqual(['syntax 0']);
  });
  test('`each` in a component, or without a count', () => {
    expect(codes('formula A\n  makes 4 glasses\ncomponent x\n  1 pc each  egg\n')).toEqual(['syntax 1']);
    expect(codes('formula A\n  makes 1 kg\nassembly\n  1 pc each  egg\n')).toEqual(['needs-mass 1']);
  });
});

describe('percentages', () => {
  const at = (text: string): string[][] => {
    const formula = formulaOf(text);
    return combinations(formula.choices).map((selection) => percentFindings(formula, selection).map(({ code }) => code));
  };
  test('add up to 100, or to less beside grams', () => {
    expect(at('formula A\n  makes 1 kg\n  60 %  plain flour\n  40 %  butter\n')).toEqual([[]]);
    expect(at('formula A\n  makes 1 kg\n  60 %  plain flour\n  33 %  butter\n')).toEqual([['percent-total']]);
    expect(at('formula A\n  20 g  salt\n  60 %  plain flour\n  38 %  butter\n')).toEqual([[]]);
    expect(at('formula A\n  20 g  salt\n  60 %  plain flour\n  40 %  butter\n')).toEqual([['percent-total']]);
    expect(at('formula A\n  choice c: x, y\n  makes 1 kg\n  60 % (y 70 %)  plain flour\n  40 %  butter\n')).toEqual([
      [],
      ['percent-total'],
    ]);
    expect(at('formula A\n  basis plain flour\n  500 g  plain flour\n  70 %  water\n  2 %  salt\n')).toEqual([[]]);
  });
  test('need something that sets the size', () => {
    expect(at('formula A\n  60 %  plain flour\n  40 %  butter\n')).toEqual([['needs-mass']]);
    expect(at('formula A\n  makes 40 biscuits\n  60 %  plain flour\n  40 %  butter\n')).toEqual([['needs-mass']]);
    expect(at('formula A\n  makes 2 rings of 16 x 3 cm\n  60 %  plain flour\n  40 %  butter\n')).toEqual([[]]);
    expect(at('formula A\ncomponent x\n  60 %  plain flour\n  40 %  butter\nassembly\n  200 g  x\n')).toEqual([[]]);
    expect(at('formula A\n  basis plain flour\n  100 %  plain flour\n  70 %  water\n')).toEqual([['needs-mass']]);
  });
});

test('`allow` holds for the next line that says something', () => {
  const { allows } = unitOf(
    'formula A\n  // allow raw-egg, leftover: pasteurised at the school\n\n  // aside\n    | note\n  10 g  salt\n// allow raw-egg\n\ncomponent x\n',
  );
  expect(allows).toMatchObject([
    { codes: [{ code: 'raw-egg' }, { code: 'leftover' }], reason: 'pasteurised at the school', hidesLine: 5 },
    { codes: [{ code: 'raw-egg' }], reason: null, hidesLine: 8 },
  ]);
});

test('a value that has two amounts in one pair of parentheses is said at the second', () => {
  expect(codes('formula A\n  choice s: p, q\n  100 g (q 120 g, q 130 g)  water\n  mix water\n')).toEqual(['duplicate-name 2']);
});
