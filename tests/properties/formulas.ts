/** Formulas for the properties: generated ones whose every name is there when it is used, and the written ones of samples and corpora. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { combinations, createWorkspace, type Formula, type Run, runFormula, type Selection, type Workspace } from 'nappe';
import { faulty, formulasIn, samples, wellMade, workspaceAt } from '../diagnostics/corpora.ts';

/** The same in every run, so that a clean tree stays clean; NAPPE_SEED=$RANDOM tries others. Printed, so that a failure can be run again. */
export const seed = Number(process.env.NAPPE_SEED ?? 20_261_125);
console.info(`fast-check seed ${seed}`);

/** A generated formula: its ingredient lines, its steps. */
export interface Generated {
  readonly lines: readonly Line[];
  readonly steps: readonly string[];
}

export interface Line {
  readonly name: string;
  readonly grams: number;
  readonly celsius: number;
  readonly attributes: string;
}

export const textOf = ({ lines, steps }: Generated): string =>
  ['formula Generated', ...lines.map(lineText), ...steps.map((step) => `  ${step}`), ''].join('\n');

export const lineText = ({ name, grams, celsius, attributes }: Line): string =>
  `  ${grams} g  ${name}${attributes}, ${celsius} °C`;

/** What a kitchen weighs, of every nature the models know. */
const kinds: readonly (readonly [name: string, attributes: string])[] = [
  ['whole milk', ''],
  ['cream', ', 35 % fat'],
  ['egg yolk', ''],
  ['egg white', ''],
  ['caster sugar', ''],
  ['glucose syrup', ''],
  ['water', ''],
  ['butter', ''],
  ['dark chocolate', ', 64 % cocoa'],
  ['raspberry purée', ', pasteurised'],
  ['corn starch', ''],
  ['gelatin', ', powder, 200 bloom'],
  ['almond flour', ''],
  ['dark rum', ''],
  ['tea leaf', ''],
];

const line = (index: number): fc.Arbitrary<Line> => {
  const [name, attributes] = kinds[index]!;
  return fc.record({
    name: fc.constant(name),
    attributes: fc.constant(attributes),
    grams: fc.integer({ min: 5, max: 800 }),
    celsius: fc.integer({ min: 2, max: 45 }),
  });
};

interface Kitchen {
  /** Names that can still be used, the current one last. */
  readonly alive: readonly string[];
  readonly steps: readonly string[];
  readonly made: number;
}

/** A choice in the making of a formula, as numbers; what they mean depends on what is there. */
interface Turn {
  readonly verb: number;
  readonly first: number;
  readonly second: number;
  readonly celsius: number;
  readonly count: number;
}

const turn: fc.Arbitrary<Turn> = fc.record({
  verb: fc.nat(25),
  first: fc.nat(100),
  second: fc.nat(100),
  celsius: fc.integer({ min: 4, max: 98 }),
  count: fc.integer({ min: 1, max: 5 }),
});

export const generated: fc.Arbitrary<Generated> = fc
  .record({
    chosen: fc.uniqueArray(fc.nat(kinds.length - 1), { minLength: 2, maxLength: 7 }),
    turns: fc.array(turn, { minLength: 1, maxLength: 9 }),
  })
  .chain(({ chosen, turns }) =>
    fc.tuple(...chosen.map(line)).map((lines): Generated => ({ lines, steps: stepsFrom(lines, turns) })),
  );

function stepsFrom(lines: readonly Line[], turns: readonly Turn[]): readonly string[] {
  const start: Kitchen = { alive: lines.map(({ name }) => name), steps: [], made: 0 };
  const end = turns.reduce(after, start);
  return end.alive.length > 1 ? [...end.steps, `combine ${end.alive.join(', ')}`] : [...end.steps, `stir ${end.alive[0]}`];
}

/** One more step; a turn that cannot be taken is passed over. */
function after(kitchen: Kitchen, { verb, first, second, celsius, count }: Turn): Kitchen {
  const { alive, steps, made } = kitchen;
  const a = alive[first % alive.length]!;
  const others = alive.filter((name) => name !== a);
  const b = others[second % Math.max(1, others.length)];
  const act = (step: string, gone: readonly string[] = [], born: readonly string[] = []): Kitchen => ({
    alive: [...alive.filter((name) => !gone.includes(name)), ...born],
    steps: [...steps, step],
    made: made + born.length,
  });
  const fresh = `mix ${made + 1}`.replace(/\d+/, (n) => 'abcdefghijklmnop'[Number(n) % 16]!);
  if (verb < 6) return act(alone(verb, a, celsius, count));
  if (b === undefined) return act(`stir ${a}`);
  switch (verb) {
    case 6:
      return act(`whisk ${a}, ${b} as ${fresh}`, [a, b], [fresh]);
    case 7:
      return act(`stir ${a} into ${b}`, [a]);
    case 8:
      return act(`fold ${a} into ${b} in ${count} additions: spatula`, [a]);
    case 9:
      return act(`pour ${a} over ${b}`, [a]);
    case 10:
      return act(`layer ${a}, ${b} into ring as ${fresh}`, [a, b], [fresh]);
    case 11:
      return act(`stir half of ${a} into ${b}`);
    case 12:
      return act(`soak ${a} in ${b}`, [b]);
    case 13:
      return act(`reserve 1/3 of ${a} as ${fresh}`, [], [fresh]);
    case 14:
      return act(`temper ${a} into ${b}`, [a]);
    case 15:
      return act(`stir 1/4 of ${a}, ${b} as ${fresh}`, [b], [fresh]);
    default:
      return act(alone(verb - 10, a, celsius, count));
  }
}

function alone(verb: number, name: string, celsius: number, count: number): string {
  switch (verb) {
    case 0:
      return `heat ${name} to ${celsius}-${celsius + count} °C`;
    case 1:
      return `cool ${name} for ${count * 10} min`;
    case 2:
      return `whip ${name} to soft-medium peak`;
    case 3:
      return `blend ${name} until smooth`;
    case 4:
      return `chill ${name} for ${count} h`;
    case 5:
      return `boil ${name} for ${count} min`;
    case 6:
      return `strain ${name}`;
    case 7:
      return `freeze ${name} for ${count} h`;
    case 8:
      return `bake ${name} at ${100 + celsius} °C for ${count * 10} min until golden`;
    case 9:
      return `melt ${name} to ${Math.max(30, celsius)} °C`;
    case 10:
      return `rest ${name} for ${count * 10} min`;
    case 11:
      return `hold ${name} at ${celsius} °C for ${count} min`;
    case 12:
      return `heat ${name}`;
    case 13:
      return `cook ${name} until thick`;
    case 14:
      return `caramelise ${name}`;
    default:
      return `check ${celsius} °C`;
  }
}

/** The one formula of a text under its one combination. */
export function runOf(text: string): Run {
  const { formula } = resolved(text);
  return runFormula(formula, {});
}

export function resolved(text: string): { readonly workspace: Workspace; readonly formula: Formula } {
  const path = '/formulas/generated.nappe';
  const workspace = createWorkspace({
    root: '/formulas',
    read: (asked) => (asked === path ? { text } : { refused: 'missing', why: 'there is no such file' }),
  });
  const [formula] = workspace.unit(path).formulas;
  if (!formula) throw new Error(`no formula in\n${text}`);
  return { workspace, formula };
}

export interface Written {
  readonly path: string;
  readonly text: string;
  readonly root: string;
}

/** Every written formula of samples and corpora. */
export const written: readonly Written[] = (
  [
    [samples, samples],
    [samples, join(samples, 'course')],
    [samples, join(samples, 'faulty')],
    [wellMade, wellMade],
    [faulty, faulty],
  ] as const
).flatMap(([root, folder]) => formulasIn(folder).map((path) => ({ root, path, text: readFileSync(path, 'utf8') })));

/** Runs of a file's formulas under every combination. */
export function runsOf({ root, path }: Written): readonly Run[] {
  return workspaceAt(root)
    .unit(path)
    .formulas.flatMap((formula) => combinations(formula.choices).map((selection: Selection) => runFormula(formula, selection)));
}
