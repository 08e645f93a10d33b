/** Files that take from each other, what goes wrong on the way, and what stays the identical object over edits. */
import { describe, expect, test } from 'vitest';
import { inMemory } from './in-memory.ts';
import type { Formula, RawFinding, Unit } from './model.ts';

const bases = `component custard
  500 g  whole milk
  120 g  egg yolk
  heat whole milk to 80 °C

ingredient harbour praline
  like hazelnut paste

equipment
  saucepan 3 l, 20 cm wide
  fridge 3 °C

prices EUR
  1.15 per l whole milk

formula Cream pots
  choice serving: glass, cut
  400 g  cream
  whip cream

formula Layered cake
component crumb
  100 g  plain flour
component syrup
  50 g  caster sugar
assembly
  brush crumb with syrup
`;

const codes = (findings: readonly RawFinding[]): string[] => findings.map(({ code, place }) => `${code} ${place.line}`);
const everything = (unit: Unit): string[] => codes([...unit.findings, ...unit.formulas.flatMap(({ findings }) => findings)]);
const first = (unit: Unit): Formula => {
  const [formula] = unit.formulas;
  if (!formula) throw new Error('no formula');
  return formula;
};

function main(text: string, more: Record<string, string> = {}): Unit {
  return inMemory({ 'bases.nappe': bases, 'main.nappe': text, ...more }).workspace.unit('/work/main.nappe');
}

describe('take', () => {
  const take = (text: string): string[] => everything(main(text));

  test('a component, a house ingredient, a one-component formula and the kitchen', () => {
    const unit = main(`take custard, harbour praline as praline, Cream pots, equipment, prices from "bases.nappe"

formula A
  300 g  custard
   20 g  praline
  100 g  Cream pots
`);
    expect(everything(unit)).toEqual([]);
    const formula = first(unit);
    expect(formula.components[0]?.lines.map(({ substance }) => substance.is)).toEqual(['batch', 'kind', 'batch']);
    expect(formula.settings.vessels.map(({ name }) => name)).toEqual(['saucepan']);
    expect(formula.settings.fridge).toEqual({ low: 3, high: 3 });
    expect(formula.prices.map(({ name, currency }) => `${name} ${currency}`)).toEqual(['whole milk EUR']);
    expect(unit.imports).toEqual(['/work/bases.nappe']);
  });

  test('`#` picks a formula', () => {
    expect(take('take crumb from "bases.nappe#Layered cake"\n')).toEqual([]);
    expect(take('take crumb from "bases.nappe#Cream pots"\n')).toEqual(['import-missing 0']);
    expect(take('take crumb from "bases.nappe#Layered cakes"\n')).toEqual(['import-missing 0']);
  });

  test('what is not there is one finding a name, with the nearest', () => {
    const unit = main('take custrad, custard, Layered cake from "bases.nappe"\n');
    expect(everything(unit)).toEqual(['import-missing 0', 'import-missing 0']);
    expect(unit.findings[0]?.fixes?.[0]?.title).toBe('Change to custard');
    expect(unit.findings[1]?.numbers).toMatchObject({ what: 'several components', known: 'crumb, syrup' });
  });

  test('a missing file costs one finding, not one for every use', () => {
    expect(take('take custard from "gone.nappe"\n\nformula A\n  300 g  custard\n')).toEqual(['import-missing 0']);
  });

  test('what a file took itself is not passed on', () => {
    const unit = inMemory({
      'bases.nappe': bases,
      'middle.nappe': 'take custard from "bases.nappe"\n\ncomponent sauce\n  100 g  custard\n',
      'main.nappe': 'take sauce from "middle.nappe"\ntake custard from "middle.nappe"\n',
    }).workspace.unit('/work/main.nappe');
    expect(everything(unit)).toEqual(['import-missing 1']);
  });

  test('out of the workspace', () => {
    expect(take('take custard from "../bases.nappe"\n')).toEqual(['outside-workspace 0']);
  });

  test('taken twice, or taken and declared, is one name for two things', () => {
    expect(take('take custard from "bases.nappe"\ntake custard from "bases.nappe"\n')).toEqual(['duplicate-name 1']);
    expect(take('take custard from "bases.nappe"\nformula A\ncomponent custard\n  10 g  caster sugar\n')).toEqual([
      'duplicate-name 0',
    ]);
  });
});

describe('files that take in a circle', () => {
  const files = {
    'a.nappe': 'take b from "b.nappe"\n\ncomponent a\n  10 g  b\n',
    'b.nappe': 'take c from "c.nappe"\n\ncomponent b\n  10 g  c\n',
    'c.nappe': 'take a from "a.nappe"\n\ncomponent c\n  10 g  a\n',
    'd.nappe': 'take a from "a.nappe"\n\ncomponent d\n  10 g  a\n',
    'self.nappe': 'take self as other from "self.nappe"\n\ncomponent self\n  10 g  other\n',
  };
  for (const name of ['a', 'b', 'c', 'self']) {
    test(`${name} says so at its take, whichever was asked first`, () => {
      for (const before of ['a', 'b', 'c', name]) {
        const { workspace } = inMemory(files);
        workspace.unit(`/work/${before}.nappe`);
        expect(everything(workspace.unit(`/work/${name}.nappe`))).toEqual(['import-cycle 0']);
      }
    });
  }

  test('a file that takes from the circle from outside is no part of it', () => {
    expect(everything(inMemory(files).workspace.unit('/work/d.nappe'))).toEqual([]);
  });

  test('once the circle is broken all of them are well', () => {
    const { workspace, write } = inMemory(files);
    workspace.unit('/work/a.nappe');
    write('c.nappe', 'component c\n  10 g  caster sugar\n');
    for (const name of ['a', 'b', 'c']) expect(everything(workspace.unit(`/work/${name}.nappe`))).toEqual([]);
  });
});

test('a long chain of files is followed, an endless one refused where it begins', () => {
  const chain = (length: number): Record<string, string> =>
    Object.fromEntries(
      Array.from({ length }, (_, i) => [
        `${i}.nappe`,
        `take p${i + 1} from "${i + 1}.nappe"\n\ncomponent p${i}\n  10 g  p${i + 1}\n`,
      ]),
    );
  const short = { ...chain(40), '40.nappe': 'component p40\n  10 g  caster sugar\n' };
  expect(everything(inMemory(short).workspace.unit('/work/0.nappe'))).toEqual([]);
  const long = inMemory({ ...chain(4000), '4000.nappe': 'component p4000\n  10 g  caster sugar\n' }).workspace;
  expect(everything(long.unit('/work/0.nappe'))).toEqual(['import-missing 0']);
  expect(long.unit('/work/0.nappe').imports).toEqual([]);
});

describe('requests', () => {
  test('are held against the files they name', () => {
    const unit = main(
      'card "bases.nappe#Cream pots" for 400 g with cut\ncard "gone.nappe"\ncard "bases.nappe" with plate\ncard\nweigh-out "../x.nappe"\n',
    );
    expect(everything(unit)).toEqual(['import-missing 1', 'unknown-choice 2', 'import-missing 3', 'outside-workspace 4']);
  });

  test('two handouts may ask for each other', () => {
    const { workspace } = inMemory({ 'a.md': '```nappe\ncard "b.md"\n```\n', 'b.md': '```nappe\ncard "a.md"\n```\n' });
    expect(everything(workspace.unit('/work/a.md'))).toEqual([]);
  });

  test('in a handout `card` asks for the formula above', () => {
    const { workspace } = inMemory({
      'a.md': '# Week 1\n\n```nappe\nformula A\n  10 g  caster sugar\n```\n\n```nappe\ncard\n```\n',
    });
    const unit = workspace.unit('/work/a.md');
    expect(everything(unit)).toEqual([]);
    expect(unit.requests[0]?.above).toBe(unit.formulas[0]);
  });
});

describe('over edits', () => {
  const text = `take custard from "bases.nappe"

formula A
  version 1

component base
  300 g  custard
  chill to 4 °C

component cream
  200 g  cream
  whip cream

assembly
  fold cream into base

formula B
  100 g  caster sugar
`;

  function edited(change: (write: (name: string, text: string) => void) => void): { before: Unit; after: Unit } {
    const { workspace, write } = inMemory({ 'bases.nappe': bases, 'main.nappe': text });
    const before = workspace.unit('/work/main.nappe');
    change(write);
    return { before, after: workspace.unit('/work/main.nappe') };
  }
  const components = (unit: Unit) =>
    Object.fromEntries(
      unit.formulas
        .flatMap(({ components: all, assembly }) => [...all, ...(assembly ? [assembly] : [])])
        .map((one) => [one.name, one]),
    );

  test('nothing changed: the identical unit', () => {
    const { before, after } = edited((write) => write('main.nappe', text));
    expect(after).toBe(before);
  });

  test('a step changed: its block and its formula are new, the rest identical', () => {
    const { before, after } = edited((write) => write('main.nappe', text.replace('whip cream', 'whip cream to soft peak')));
    const [was, is] = [components(before), components(after)];
    expect(is.cream).not.toBe(was.cream);
    expect(is.base).toBe(was.base);
    expect(is.assembly).toBe(was.assembly);
    expect(after.formulas[0]).not.toBe(before.formulas[0]);
    expect(after.formulas[1]).toBe(before.formulas[1]);
  });

  test('lines put in above change nothing below but where blocks start', () => {
    const { before, after } = edited((write) => write('main.nappe', `// a comment\n\n${text}`));
    expect(after.formulas[0]).toBe(before.formulas[0]);
    expect(after.formulas[1]).toBe(before.formulas[1]);
    const id = before.formulas[1]?.id ?? '';
    expect(after.blockLines.get(id)).toBe((before.blockLines.get(id) ?? 0) + 2);
  });

  test('a header changed: the formula is new, its components are not', () => {
    const { before, after } = edited((write) => write('main.nappe', text.replace('version 1', 'version 2')));
    expect(after.formulas[0]).not.toBe(before.formulas[0]);
    expect(components(after)).toEqual(components(before));
    expect(components(after).base).toBe(components(before).base);
  });

  test('a taken component changed: what takes it is new', () => {
    const { before, after } = edited((write) => write('bases.nappe', bases.replace('120 g', '130 g')));
    expect(components(after).base).not.toBe(components(before).base);
    expect(components(after).cream).toBe(components(before).cream);
    expect(after.formulas[1]).toBe(before.formulas[1]);
  });

  test('something else in the taken file changed: nothing is new', () => {
    const { before, after } = edited((write) => write('bases.nappe', bases.replace('like hazelnut paste', 'like almond paste')));
    expect(after.formulas).toEqual(before.formulas);
    expect(after.formulas[0]).toBe(before.formulas[0]);
  });

  test('a component gets another name: who named it is new', () => {
    const { before, after } = edited((write) => write('main.nappe', text.replace('component cream', 'component whipped')));
    expect(components(after).assembly).not.toBe(components(before).assembly);
    expect(after.formulas[1]).toBe(before.formulas[1]);
  });

  test('a finding that points at a choice follows it', () => {
    const text = (above: string): string =>
      `formula A\n${above}  choice serving: glass, cut\n\ncomponent x\n  10 g  caster sugar   when cute\n`;
    const { workspace, write } = inMemory({ 'main.nappe': text('') });
    const line = (): unknown => workspace.unit('/work/main.nappe').formulas[0]?.findings[0]?.related?.[0]?.place.line;
    expect(line()).toBe(1);
    write('main.nappe', text('  version 2\n'));
    expect(line()).toBe(2);
  });

  test('a choice that appears reaches guards that had no value', () => {
    const { workspace, write } = inMemory({ 'main.nappe': 'formula A\n  10 g  caster sugar   when cut\n' });
    expect(everything(workspace.unit('/work/main.nappe'))).toEqual(['unknown-choice 1']);
    write('main.nappe', 'formula A\n  choice serving: glass, cut\n  10 g  caster sugar   when cut\n');
    expect(everything(workspace.unit('/work/main.nappe'))).toEqual([]);
  });
});

test('files that cannot be had', () => {
  const { workspace } = inMemory({ 'big.nappe': '\n'.repeat(8_000_001) });
  expect(workspace.source('/work/gone.nappe')).toHaveProperty('refused', 'missing');
  expect(workspace.source('/work/big.nappe')).toHaveProperty('refused', 'unreadable');
  expect(workspace.unit('/work/gone.nappe').formulas).toEqual([]);
});
