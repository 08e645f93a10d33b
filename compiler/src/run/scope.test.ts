/** The notation's paragraph “Scope”, what the words after `into`, `over` and `in` mean, and names under choices. */
import { describe, expect, test } from 'vitest';
import { checkUnit } from '../diagnostics/check.ts';
import { createWorkspace } from '../resolve/workspace.ts';
import { contents, grams, layersOf, ran } from './ran-text.ts';

describe('names of ingredient lines and of `as` hold in their block', () => {
  test('a line of one component is no name in another', () => {
    const { findings } = ran(`formula Test
component one
  100 g  whole milk
  heat whole milk to 55 °C
component two
  100 g  cream, 35 % fat
  stir whole milk into cream
assembly
  stir one into two
`);
    expect(findings).toEqual(['unknown-name 7']);
  });

  test('nor is what `as` names', () => {
    const { findings } = ran(`formula Test
component one
  100 g  whole milk
  heat whole milk to 55 °C as warm milk
assembly
  100 g  cream, 35 % fat
  stir warm milk into cream
`);
    expect(findings).toContain('unknown-name 7');
  });

  test('two blocks may use the same names', () => {
    const { findings, step } = ran(`formula Test
component one
  100 g  whole milk
  heat whole milk to 55 °C as base
component two
  200 g  whole milk
  heat whole milk to 50 °C as base
assembly
  stir one into two
`);
    expect(findings).toEqual([]);
    expect(grams(step('stir').result)).toBe(300);
  });
});

describe('component names hold in the formula, in whatever order they are written', () => {
  const text = (order: readonly string[]): string =>
    `formula Test\n${order.join('')}assembly\n  100 g  raspberry\n  stir raspberry into cake cream\n`;
  const syrup = 'component syrup\n  100 g  water\n   80 g  caster sugar\n  stir water, caster sugar\n';
  const cream = 'component cake cream\n  200 g  mascarpone\n  stir syrup into mascarpone\n';

  test.each([
    ['before', [syrup, cream]],
    ['after', [cream, syrup]],
  ])('made %s it is used', (_, order) => {
    const { findings, run } = ran(text(order));
    expect(findings).toEqual([]);
    expect(contents(run.result)).toBe('mascarpone 200, water 100, caster sugar 80, raspberry 100');
    // Components run in order of need.
    expect(run.blocks.map(({ component }) => component.name)).toEqual(['syrup', 'cake cream', 'assembly']);
  });

  test('two that need each other are told, and nothing hangs', () => {
    const { findings } = ran(`formula Test
component one
  100 g  whole milk
  stir two into whole milk
component two
  100 g  cream, 35 % fat
  stir one into cream
assembly
  serve one
`);
    expect(findings.length).toBeGreaterThan(0);
  });

  test('a component no one uses is an unused ingredient', () => {
    expect(
      ran(
        `formula Test\n${syrup}${cream}component sauce\n  50 g  honey\nassembly\n  100 g  raspberry\n  stir raspberry into cake cream\n`,
      ).findings,
    ).toEqual(['unused-ingredient 9']);
  });
});

describe('steps run top to bottom', () => {
  test('what a later step makes is used before it is made', () => {
    expect(
      ran(
        'formula Test\n  100 g  whole milk\n  100 g  cream, 35 % fat\n  stir dairy into cream\n  heat whole milk to 55 °C as dairy\n',
      ).findings,
    ).toContain('used-before-made 4');
  });

  test('a name nothing declares proposes the nearest', () => {
    const { findings, fixes } = ran(
      'formula Test\n  100 g  whole milk\n   50 g  caster sugar\n  stir whole mlik, caster sugar\n',
    );
    expect(findings[0]).toBe('unknown-name 4');
    expect(fixes).toEqual(['Change to whole milk']);
  });
});

test('the same ingredient twice in a block needs a name of its own', () => {
  const check = (lines: string): readonly string[] => {
    const text = `formula Test\n${lines}`;
    const files = { root: '/f', read: () => ({ text }) };
    return checkUnit(createWorkspace(files), '/f/a.nappe')
      .diagnostics.filter(({ severity }) => severity !== 'notice')
      .map(({ code, line }) => `${code} ${line}`);
  };
  const twice = '  100 g  caster sugar\n   50 g  caster sugar\n  200 g  whole milk\n  stir caster sugar into whole milk\n';
  expect(check(twice)).toContain('duplicate-name 3');
  expect(
    check(
      '  100 g  caster sugar\n   50 g  caster sugar, as more sugar\n  200 g  whole milk\n  stir caster sugar, more sugar into whole milk\n',
    ),
  ).toEqual([]);
});

describe('after `into`, `over` and `in`', () => {
  test('a name in scope is matter, even where it is also a vessel’s', () => {
    const { step } = ran('formula Test\n  100 g  sponge cake, as ring\n   50 g  sugar syrup\n  pour sugar syrup over ring\n');
    expect(grams(step('pour').result)).toBe(150);
    expect(step('pour').mould).toBeNull();
  });

  test('otherwise an item of equipment, a noun of `makes` or of the vessel table is a vessel', () => {
    const { step, findings } = ran(`equipment
  copper kettle 3 l
formula Test
  makes 12 bombes of 80 g
  500 g  whole milk
  pour whole milk into copper kettle
  pour into bowl
  portion 80 g into bombe
`);
    expect(findings).toEqual([]);
    expect(step('pour whole milk').vessel?.name).toBe('copper kettle');
    expect(step('pour into bowl').mould).toBe('bowl');
    expect(step('portion').mould).toBe('bombe');
  });

  test('otherwise it is unknown', () => {
    expect(ran('formula Test\n  500 g  whole milk\n  pour into wobbler\n').findings).toEqual(['unknown-name 3']);
  });
});

describe('what is poured into a vessel that already holds matter of the block', () => {
  const lines =
    'formula Test\n  makes 4 glasses of 100 g\n  300 g  raspberry purée, as jelly\n  100 g  cream, 35 % fat, as top\n';

  test('lies on top of it, and the result is both', () => {
    const { step, run, findings } = ran(
      `${lines}  pour jelly into glass\n  chill to 4 °C for 2 h\n  pour top into glass\n  chill to 4 °C for 1 h\n`,
    );
    expect(findings).toEqual([]);
    expect(layersOf(step('pour top').result)).toEqual(['jelly 300', 'top 100']);
    expect(layersOf(run.result)).toEqual(['jelly 300', 'top 100']);
  });

  test('but not what goes through a piping bag', () => {
    const { step } = ran(`${lines}  pour jelly into piping bag\n  pour top into piping bag\n  stir jelly, top\n`);
    expect(layersOf(step('pour top').result)).toEqual(['top 100']);
  });

  test('nor what goes into another vessel, or after it was turned out', () => {
    expect(layersOf(ran(`${lines}  pour jelly into mould\n  pour top into glass\n`).step('pour top').result)).toEqual([
      'top 100',
    ]);
    expect(layersOf(ran(`${lines}  pour jelly into mould\n  unmould\n  pour top into mould\n`).step('pour top').result)).toEqual([
      'top 100',
    ]);
  });

  test('whatever component it was made in, once this block put it there; not where its own block did', () => {
    const text = (first: string, second: string): string => `formula Test
  makes 4 glasses of 100 g
component jelly
  300 g  raspberry purée
  heat raspberry purée to 55 °C
${first}assembly
  100 g  cream, 35 % fat, as top
${second}  pour top into glass
`;
    const here = ran(text('', '  pour jelly into glass\n'));
    expect(here.findings).toEqual([]);
    expect(layersOf(here.run.result).length).toBe(2);
    const there = ran(text('  pour into glass\n', ''));
    expect(there.findings).toEqual(['unused-ingredient 3']);
    expect(grams(there.run.result)).toBe(100);
  });

  test('a part in a first glass, the rest on something else', () => {
    const { run } = ran(`${lines}  pour half of jelly into glass\n  pour top into glass\n  pour rest of jelly into glass\n`);
    expect(layersOf(run.result)).toEqual(['jelly 150', 'top 100', 'jelly 150']);
  });
});

describe('choices', () => {
  const text = `formula Test
  choice flavour: vanilla, coffee
  200 g                  whole milk
    2 pc                 vanilla pod      when vanilla
   10 g                  instant coffee   when coffee
   50 g (coffee 0 g)     honey
  heat whole milk to 55 °C
  infuse vanilla pod in whole milk for 5 min   when vanilla
  strain whole milk                            when vanilla
  add instant coffee                           when coffee
  add honey
`;

  test('a line and a step are there only under their value; `0 g` means the line is not there', () => {
    const vanilla = ran(text, ['vanilla']);
    const coffee = ran(text, ['coffee']);
    expect([vanilla.findings, coffee.findings]).toEqual([[], []]);
    expect(contents(coffee.run.result)).toBe('whole milk 200, instant coffee 10');
    expect(contents(vanilla.run.result)).toContain('honey 50');
    expect(coffee.run.blocks[0]?.lines.map(({ line }) => line.name)).toEqual(['whole milk', 'instant coffee']);
  });

  test('a use is checked in every combination that has its line', () => {
    const { findings, run } = ran(
      'formula Test\n  choice flavour: vanilla, coffee\n  200 g  whole milk\n   10 g  instant coffee   when coffee\n  heat whole milk to 55 °C\n  add instant coffee\n',
    );
    expect(findings).toEqual(['unknown-name 6']);
    expect(run.findings[0]?.related?.[0]?.message).toBe('weighed only in other choices');
  });

  test('a name may be declared twice where no combination has both', () => {
    const both = `formula Test
  choice kind: dark, milk
  200 g  dark chocolate, 64 % cocoa, as chocolate   when dark
  250 g  milk chocolate, 40 % cocoa, as chocolate   when milk
  melt chocolate to 45 °C
`;
    expect(grams(ran(both, ['dark']).run.result)).toBe(200);
    expect(grams(ran(both, ['milk']).run.result)).toBe(250);
  });
});
