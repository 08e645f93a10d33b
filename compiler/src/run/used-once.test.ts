/** The notation's paragraph “Matter is used once”, sentence by sentence. */
import { describe, expect, test } from 'vitest';
import { contents, grams, layersOf, ran } from './ran-text.ts';

const formula = (lines: string, steps: string): string => `formula Test\n${lines}${steps}`;
const dairy = `  200 g  whole milk
  100 g  cream, 35 % fat
   50 g  caster sugar
`;

describe('an ingredient line provides its grams; each use takes from them', () => {
  test('parts add up', () => {
    const { step, findings, run } = ran(
      formula(dairy, '  stir 150 g of whole milk, caster sugar as sweet milk\n  stir whole milk, cream into sweet milk\n'),
    );
    expect(findings).toEqual([]);
    expect(contents(step('stir 150').result)).toBe('whole milk 150, caster sugar 50');
    expect(grams(run.result)).toBe(350);
  });

  test('taking more than is left is overdrawn, and what is left is taken', () => {
    const { step, findings, run } = ran(
      formula(
        dairy,
        '  stir 150 g of whole milk, caster sugar as sweet milk\n  stir 80 g of whole milk, cream into sweet milk\n',
      ),
    );
    expect(findings).toEqual(['overdrawn 6']);
    expect(grams(step('stir 80').result)).toBe(350);
    const figures = run.findings[0]?.numbers;
    expect(figures).toMatchObject({ name: 'whole milk', weighed: 200, taken: 230, over: 30, left: 50, asked: 80 });
  });

  test('a remainder at the end is a leftover, at its line; under 2 g or 2 % it is not', () => {
    const steps = (taken: string): string =>
      `  stir ${taken} of whole milk, caster sugar, cream as sweet milk\n  heat sweet milk to 55 °C\n`;
    expect(ran(formula(dairy, steps('150 g'))).findings).toEqual(['leftover 2']);
    expect(ran(formula(dairy, steps('197 g'))).findings).toEqual([]);
  });

  test('a line no step uses is an unused ingredient, however small', () => {
    expect(ran(formula(`${dairy}    1 g  fine salt\n`, '  stir whole milk, cream, caster sugar\n')).findings).toEqual([
      'unused-ingredient 5',
    ]);
  });

  test('what was made and never used is a leftover where it was made', () => {
    expect(ran(formula(dairy, '  stir whole milk, cream as dairy\n  heat caster sugar to 30 °C\n')).findings).toEqual([
      'leftover 5',
    ]);
  });
});

describe('a name lives on', () => {
  test('as the target of `into`, `over` and `in`', () => {
    const { findings, step } = ran(
      formula(
        `${dairy}    8 g  tea leaf\n   90 g  dark chocolate, 64 % cocoa\n`,
        '  stir caster sugar into whole milk\n  infuse tea leaf in whole milk for 5 min\n  strain whole milk\n  heat whole milk to 55 °C\n  pour whole milk over dark chocolate\n  stir cream into dark chocolate\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('stir cream').result)).toContain('cream 100');
  });

  test('when it is acted on alone: after `strain dairy`, dairy is the strained dairy', () => {
    const { findings, step } = ran(
      formula(
        `${dairy}    8 g  tea leaf\n`,
        '  stir whole milk, cream as dairy\n  infuse tea leaf in dairy for 5 min\n  strain dairy\n  stir caster sugar into dairy\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('stir caster').result)).not.toContain('tea leaf');
  });

  test('after `bloom` and `soak`, as the operand that took the other up', () => {
    const { findings, step } = ran(
      formula(
        `${dairy}    5 g  gelatin, sheet, 200 bloom\n   30 g  cold water\n`,
        '  bloom gelatin in cold water for 5 min\n  heat whole milk, cream, caster sugar to 55 °C as dairy\n  stir gelatin into dairy\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(step('bloom').names).toEqual(['gelatin']);
    expect(step('bloom').result.gelatin).toBe('bloomed');
    expect(contents(step('stir').result)).toBe('whole milk 200, cream 100, caster sugar 50, gelatin 5, cold water 30');
  });

  test('bloomed, the water is no name any more', () => {
    const { findings } = ran(
      formula(
        '    5 g  gelatin, sheet, 200 bloom\n   30 g  cold water\n  100 g  whole milk\n',
        '  bloom gelatin in cold water for 5 min\n  heat whole milk to 55 °C\n  add gelatin\n  add cold water\n',
      ),
    );
    expect(findings).toEqual(['used-up 8']);
  });
});

describe('what gelatin takes up', () => {
  const bloomed = (gelatin: string, water: string) =>
    ran(
      formula(
        `  ${gelatin}\n  ${water}  cold water\n  200 g  whole milk\n`,
        '  bloom gelatin in cold water for 5 min\n  heat whole milk to 55 °C\n  add gelatin\n',
      ),
    );

  test('powder: all the water given', () => {
    const { step, findings } = bloomed('5 g  gelatin, powder, 200 bloom', '80 g');
    expect(grams(step('bloom').result)).toBe(85);
    expect(findings).toEqual([]);
  });

  test('sheets: at most six times their mass; the rest is drained and no leftover', () => {
    const { step, findings } = bloomed('5 g  gelatin, sheet, 200 bloom', '500 g');
    expect(grams(step('bloom').result)).toBe(35);
    expect(findings).toEqual([]);
  });

  test('sheets in less: all of it', () => {
    expect(grams(bloomed('5 g  gelatin, sheet, 200 bloom', '20 g').step('bloom').result)).toBe(25);
  });

  test('in fat it stays dry', () => {
    const { step } = ran(
      formula(
        '  5 g  gelatin, sheet, 200 bloom\n  40 g  sunflower oil\n',
        '  soak gelatin in sunflower oil\n  heat gelatin to 40 °C\n',
      ),
    );
    expect(step('soak').result.gelatin).toBe('dry');
  });
});

describe('combined with others as an operand it is used up', () => {
  test('its name means nothing any more', () => {
    const { findings, run } = ran(formula(dairy, '  stir whole milk, cream as dairy\n  stir caster sugar into whole milk\n'));
    expect(findings).toContain('used-up 6');
    expect(run.findings.find(({ code }) => code === 'used-up')?.related?.[0]?.message).toBe('the last of it went in here');
  });

  test('nor does a second use', () => {
    expect(
      ran(formula(dairy, '  stir caster sugar into whole milk\n  stir caster sugar into cream\n  stir cream into whole milk\n'))
        .findings,
    ).toEqual(['used-up 6']);
  });
});

describe('parts', () => {
  test('half and fractions are of what was first there', () => {
    const { step, findings } = ran(
      formula(
        dairy,
        '  stir half of whole milk, cream as one\n  stir 1/4 of whole milk, caster sugar as two\n  stir rest of whole milk, one, two\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('stir half').result)).toBe('whole milk 100, cream 100');
    expect(contents(step('stir 1/4').result)).toBe('whole milk 50, caster sugar 50');
    expect(grams(step('stir rest').result)).toBe(350);
  });

  test('acting on a part leaves the rest under the name; the part needs `as` to be named', () => {
    const { step, findings } = ran(
      formula(
        dairy,
        '  heat 80 g of whole milk to 55 °C as warm milk\n  add caster sugar\n  stir warm milk into whole milk\n  add cream\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('add caster').result)).toBe('whole milk 80, caster sugar 50');
    expect(step('stir warm').inputs.map(({ name, matter }) => `${name} ${grams(matter)}`)).toEqual([
      'whole milk 120',
      'warm milk 130',
    ]);
  });

  test('an unnamed part is current, and lost once another step took over', () => {
    expect(ran(formula(dairy, '  heat 80 g of whole milk to 55 °C\n  stir whole milk, cream, caster sugar\n')).findings).toEqual([
      'leftover 5',
    ]);
  });

  test('grams, volumes and pieces of what is weighed in pieces', () => {
    const { step } = ran(
      formula(
        '  4 pc  egg\n  400 g  whole milk\n   50 g  caster sugar\n',
        '  whisk 1 pc of egg, caster sugar as one\n  whisk 3 pc of egg into whole milk\n  stir one into whole milk\n',
      ),
    );
    expect(contents(step('whisk 1 pc').result)).toBe('egg 50, caster sugar 50');
    expect(contents(step('whisk 3 pc').result)).toBe('whole milk 400, egg 150');
  });

  test('reserving a part without `as` leaves the name with the rest', () => {
    const { step } = ran(
      formula(dairy, '  stir whole milk, cream, caster sugar as base\n  reserve 100 g of base\n  heat base to 55 °C\n'),
    );
    expect(grams(step('heat').result)).toBe(250);
  });
});

describe('`soak`', () => {
  const soaked = (cake: string, syrup: string) =>
    ran(formula(`  100 g  ${cake}\n  ${syrup}  sugar syrup\n`, '  soak cake in sugar syrup\n  chill cake to 4 °C for 1 h\n'));

  test('takes up to what the kind absorbs; the rest is drained and no leftover', () => {
    const { step, findings, run } = soaked('sponge finger, as cake', '500 g');
    const { substance } = run.blocks[0]!.lines[0]!.line;
    const absorbs = substance.is === 'kind' ? substance.kind.absorbs : null;
    expect(absorbs).not.toBeNull();
    expect(grams(step('soak').result)).toBeCloseTo(100 * (1 + absorbs!), 0);
    expect(findings).toEqual([]);
  });

  test('takes all where that is not known', () => {
    expect(grams(soaked('shortcrust pastry, as cake', '80 g').step('soak').result)).toBe(180);
  });
});

describe('`layer`', () => {
  test('takes its operands bottom to top, and a name may recur in parts', () => {
    const { step, findings } = ran(`formula Test
  200 g  sponge cake
  300 g  custard, is pastry cream
  100 g  raspberry
  layer half of sponge cake, half of custard, raspberry, rest of sponge cake, rest of custard into ring
`);
    expect(findings).toEqual([]);
    expect(layersOf(step('layer').result)).toEqual([
      'sponge cake 100',
      'custard 150',
      'raspberry 100',
      'sponge cake 100',
      'custard 150',
    ]);
    expect(grams(step('layer').result)).toBe(600);
  });
});
