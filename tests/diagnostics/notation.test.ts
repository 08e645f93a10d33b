/** What the notation promises about matter that is used once, held by formulas a kitchen writes: names, vessels, rests, losses. */
import { describe, expect, test } from 'vitest';
import { checkText, isGrave } from './corpora.ts';

const codesOf = (text: string): readonly string[] =>
  checkText(text)
    .filter(isGrave)
    .map(({ line, code }) => `${line} ${code}`);

describe('what lies in a vessel', () => {
  const onCrumb = (press: string): string => `formula Set cheesecake
  200 g  digestive biscuits
   90 g  butter
  400 g  cream cheese, 20 °C
  100 g  icing sugar
  melt butter
  mix digestive biscuits, butter until sandy as crumb
  ${press}
  whisk cream cheese, icing sugar until smooth as filling
  pour filling into ring
  chill to 4 °C for 6 h
`;
  test.each(['press into ring', 'press crumb into ring', 'spread crumb into ring'])('%s: the next lies on it', (press) => {
    expect(codesOf(onCrumb(press))).toEqual([]);
  });

  test('a vessel greased or dusted leaves the work where it was', () => {
    expect(
      codesOf(`formula Cake
  200 g  egg
  120 g  caster sugar
  120 g  plain flour
   10 g  butter, as mould butter
   10 g  plain flour, as dusting
  whip egg, caster sugar until ribbon
  fold plain flour in 2 additions: spatula
  grease tin with mould butter
  dust tin with dusting
  pour into tin
  bake at 180 °C for 25 min until golden
`),
    ).toEqual([]);
  });
});

describe('one slip is one finding', () => {
  const buns = (milk: string, wash: string): string => `formula Buns
  500 g   strong flour
  270 g   whole milk, 4 °C
   20 g   fresh yeast
    1 pc  egg
  knead strong flour, fresh yeast, ${milk} for 8 min until smooth as dough
  proof at 27 °C for 1 h until doubled
  whisk egg as egg wash
  ${wash}
  bake at 180 °C for 16 min until golden losing 8 %
`;

  test('the formula has none', () => {
    expect(codesOf(buns('whole milk', 'brush dough with egg wash'))).toEqual([]);
  });

  test('what is left out or mistyped of a name is read as what it must have been', () => {
    expect(codesOf(buns('milk', 'brush dough with egg wash'))).toEqual(['6 unknown-name']);
    expect(codesOf(buns('whole milk', 'brush dugh with egg wash'))).toEqual(['9 unknown-name']);
  });

  test('a coat that was made last is no ground for itself', () => {
    const [only, ...more] = checkText(buns('whole milk', 'brush with egg wash')).filter(isGrave);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ line: 9, code: 'used-before-made' });
    expect(only?.message).toContain('`brush dough with egg wash`');
    expect(only?.fixes[0]?.edits[0]?.text).toBe(' dough');
  });

  test('the catalogue knows that whole milk is milk, though the formula and the powder bear the word too', () => {
    const [only] = checkText(`formula Milk ice
  400 g  whole milk
   60 g  milk powder, "sifted", as powder
   90 g  sugar
  whisk powder, sugar into milk
`).filter(isGrave);
    expect(only?.fixes[0]?.edits[0]?.text).toBe('whole milk');
  });

  test('a mixture without a name is asked for one, and read on', () => {
    const [only, ...more] = checkText(`formula Peach compote
  500 g  peach purée
   80 g  caster sugar
    7 g  NH pectin
  heat peach purée to 45 °C
  mix caster sugar, NH pectin
  whisk caster sugar into peach purée
  boil for 2 min
`).filter(isGrave);
    expect(more).toEqual([]);
    expect(only).toMatchObject({ line: 7, code: 'used-up' });
    expect(only?.message).toContain('`as`');
  });
});

describe('what a kitchen writes and the notation says otherwise', () => {
  const cream = (line: string, header = '') => `formula Cream
${header}
  100 g   whole milk
    1 pc  lemon zest
   50 g   cream, 35 % fat, 4 °C
  heat whole milk, lemon zest to 80 °C as dairy
${line}
  whip cream to soft peak
`;
  const fixed = (text: string) =>
    checkText(text)
      .filter(({ code }) => code === 'syntax')
      .map(({ message, fixes }) => [message, fixes[0]?.edits[0]?.text]);

  test('weeks and months are days', () => {
    expect(fixed(cream('', '  keeps 3 weeks at 0-4 °C'))).toEqual([['The longest unit of time is the day: `21 d`.', '21 d']]);
    expect(fixed(cream('', '  keeps 1 month at 0-4 °C'))).toEqual([['The longest unit of time is the day: `30 d`.', '30 d']]);
  });

  test('aromatics that lie in the liquid already rest', () => {
    expect(fixed(cream('  infuse for 20 min'))[0]?.[1]).toBe('rest');
  });

  test('onto is over', () => {
    expect(fixed(cream('  pour dairy onto cream'))).toEqual([
      ['`onto` is written `over`, or `into` a vessel; `dairy onto cream` was read as one name.', 'over'],
    ]);
  });

  test('several are not pasteurised', () => {
    const messages = checkText(`formula Mousse
  3 pc   egg whites
  100 g  sugar
  whip egg whites, sugar to soft peak
`).map(({ message }) => message);
    expect(messages.some((text) => text.startsWith('The egg whites are not pasteurised'))).toBe(true);
  });
});
