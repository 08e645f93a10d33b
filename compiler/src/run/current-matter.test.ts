/** The notation's paragraph “Current matter”, sentence by sentence, and what a component leaves. */
import { describe, expect, test } from 'vitest';
import { contents, grams, layersOf, ran } from './ran-text.ts';

const lines = `  200 g  whole milk
   50 g  caster sugar
  100 g  cream, 35 % fat
`;
const formula = (steps: string): string => `formula Test\n${lines}${steps}`;

describe('each block has a current matter: what the nearest step above left', () => {
  test('a step without operands acts on it', () => {
    const { step } = ran(formula('  stir whole milk, caster sugar\n  heat to 55 °C\n'));
    expect(contents(step('heat').result)).toBe('whole milk 200, caster sugar 50');
  });

  test('not on what a step further above left', () => {
    const { step } = ran(formula('  stir whole milk, caster sugar as sweet milk\n  heat cream to 40 °C\n  heat to 55 °C\n'));
    expect(contents(step('heat to 55').result)).toBe('cream 100');
  });

  test('among the steps there under the choices in force', () => {
    const text = `formula Test
  choice kind: warm, cold
${lines}  stir whole milk, caster sugar
  heat cream to 55 °C   when warm
  check 55 °C
`;
    expect(contents(ran(text, ['warm']).step('check').result)).toBe('cream 100');
    expect(contents(ran(text, ['cold']).step('check').result)).toBe('whole milk 200, caster sugar 50');
  });

  test('a target that took something in is what is current, not what went in', () => {
    const { step } = ran(formula('  heat cream to 55 °C\n  stir caster sugar into whole milk\n  heat to 70 °C\n'));
    expect(contents(step('heat to 70').result)).toBe('whole milk 200, caster sugar 50');
  });

  test('another block has a current matter of its own', () => {
    const { findings } = ran(`formula Test
component base
  100 g  whole milk
  heat whole milk to 55 °C
assembly
  100 g  cream, 35 % fat
   50 g  caster sugar
  heat to 55 °C
  stir base, cream, caster sugar
`);
    expect(findings).toEqual(['used-before-made 8']);
  });
});

describe('a step without operands acts on it, so every name it had still names it', () => {
  test('its own name and the one an earlier step gave', () => {
    const { step, findings } = ran(
      formula(
        '  heat whole milk to 55 °C as warm milk\n  cool to 20 °C\n  stir caster sugar into warm milk\n  stir cream into whole milk\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('stir cream').result)).toBe('whole milk 200, caster sugar 50, cream 100');
  });
});

describe('`add`, and `fold` without `into`, put their operands into it', () => {
  test('add', () => {
    const { step } = ran(formula('  heat whole milk to 55 °C\n  add caster sugar, cream\n  stir whole milk\n'));
    expect(contents(step('stir').result)).toBe('whole milk 200, caster sugar 50, cream 100');
  });

  test('fold', () => {
    const { step } = ran(
      formula('  whip cream to soft peak as foam\n  heat whole milk to 30 °C\n  fold foam\n  add caster sugar\n'),
    );
    expect(step('fold').inputs.map(({ role, name }) => `${role} ${name}`)).toEqual(['base whole milk', 'operand foam']);
    expect(contents(step('add').result)).toBe('whole milk 200, cream 100, caster sugar 50');
  });

  test('add with `into` puts them elsewhere', () => {
    const { step } = ran(formula('  heat whole milk to 55 °C\n  add caster sugar into cream\n'));
    expect(contents(step('add').result)).toBe('cream 100, caster sugar 50');
  });
});

describe('`reserve`, `discard`, `check` and `do` do not change it', () => {
  test('reserve: what remains stays current', () => {
    const { step } = ran(
      formula(
        '  stir whole milk, caster sugar as sweet milk\n  reserve 100 g of sweet milk as rest milk\n  heat to 55 °C\n  add rest milk, cream\n',
      ),
    );
    expect(grams(step('heat').result)).toBe(150);
    expect(grams(step('add').result)).toBe(350);
  });

  test('reserve of something else leaves it alone', () => {
    const { step, findings } = ran(
      formula(
        '  reserve 40 g of cream as topping\n  stir whole milk, caster sugar\n  reserve cream\n  heat to 55 °C\n  add cream, topping\n',
      ),
    );
    expect(findings).toEqual([]);
    expect(contents(step('heat').result)).toBe('whole milk 200, caster sugar 50');
    expect(grams(step('add').result)).toBe(350);
  });

  test('discard, check and do', () => {
    const { step, findings } = ran(
      formula('  heat whole milk to 55 °C\n  discard cream\n  check 55 °C\n  do "wait for the oven"\n  add caster sugar\n'),
    );
    expect(findings).toEqual([]);
    expect(contents(step('add').result)).toBe('whole milk 200, caster sugar 50');
  });
});

describe('at a block’s start there is none', () => {
  test('needing it there is used-before-made', () => {
    expect(ran(formula('  heat to 55 °C\n  stir whole milk, caster sugar, cream\n')).findings).toEqual(['used-before-made 5']);
  });

  test('adding with nothing there: the fix writes into what', () => {
    const { findings, fixes } = ran(formula('  add caster sugar\n  stir whole milk, caster sugar, cream\n'));
    expect(findings).toEqual(['used-before-made 5']);
    expect(fixes).toEqual(['Write into whole milk']);
  });

  test('adding it to itself is used-before-made, and costs nothing further', () => {
    const { findings, step } = ran(formula('  heat whole milk to 55 °C\n  add whole milk\n  add caster sugar, cream\n'));
    expect(findings).toEqual(['used-before-made 6']);
    expect(grams(step('add caster').result)).toBe(350);
  });

  test('a block with a single line begins with that', () => {
    const { step, findings } = ran('formula Test\n  320 g  cream, 35 % fat, 4 °C\n  whip to soft peak\n');
    expect(findings).toEqual([]);
    expect(grams(step('whip').result)).toBe(320);
  });
});

describe('a component’s result', () => {
  test('is what its last step leaves, under the component’s name', () => {
    const { block, step } = ran(`formula Test
component syrup
  100 g  water
  100 g  caster sugar
  boil water, caster sugar
assembly
  200 g  raspberry purée
  stir syrup into raspberry purée
`);
    expect(contents(block('syrup').result)).toBe('water 100, caster sugar 100');
    expect(step('stir').inputs.map(({ name }) => name)).toEqual(['raspberry purée', 'syrup']);
  });

  test('ingredient lines without steps are that result side by side', () => {
    const { block } = ran(`formula Test
component topping
  100 g  raspberry
   20 g  icing sugar
assembly
  200 g  sponge cake
  layer sponge cake, topping
`);
    expect(layersOf(block('topping').result)).toEqual(['raspberry 100', 'icing sugar 20']);
  });

  test('written losses come off it', () => {
    const { block } = ran(`formula Test
component syrup
  loss 10 %
  100 g  water
  100 g  caster sugar
  stir water, caster sugar
assembly
  200 g  raspberry purée
  stir syrup into raspberry purée
`);
    expect(grams(block('syrup').leaves)).toBe(200);
    expect(grams(block('syrup').result)).toBe(180);
  });
});
