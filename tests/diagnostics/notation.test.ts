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
