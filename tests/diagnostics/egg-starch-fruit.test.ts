/** Egg, starch, fruit and claims: formulas at the edge of each rule; what is marked is raised, and no other error or warning. */
import { describe, expect, test } from 'vitest';
import { expectedIn } from '../../compiler/src/diagnostics/expectations.ts';
import { scalded } from '../../compiler/src/diagnostics/look-raw-egg.ts';
import { sufficient } from '../../compiler/src/matter/lethality.ts';
import { checkText, isGrave, lineOf } from './corpora.ts';

const custard = `  500 g  whole milk, 4 °C
  120 g  egg yolk
  100 g  caster sugar
`;

const formulas: Readonly<Record<string, string>> = {
  // needs-tempering
  'yolk loosened with part of the hot milk first is tempered by hand': `${custard}  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 90-92 °C
  whisk 120 g of whole milk into liaison
  whisk whole milk into liaison
  cook to 82-84 °C until nappe
`,
  'hot milk over a starched liaison needs no stream': `  500 g  whole milk, 4 °C
  100 g  egg yolk
  100 g  caster sugar
   45 g  corn starch
  whisk egg yolk, caster sugar, corn starch until smooth as liaison
  heat whole milk until boiling
  whisk whole milk into liaison
  boil for 2 min until thick
`,
  'a ladle of hot milk into much yolk warms it too little': `  150 g  whole milk, 4 °C
  300 g  egg yolk, pasteurised
  100 g  caster sugar
  whisk egg yolk, caster sugar until dissolved as liaison
  heat whole milk to 85-90 °C
  whisk whole milk into liaison
  cook to 80-82 °C until thick
`,
  'boiling cream on whole eggs': `  300 g  cream, 35 % fat, 4 °C
  150 g  egg
   60 g  caster sugar
  boil cream, caster sugar as dairy
  pour dairy over egg   // expect: needs-tempering
  cook to 80-82 °C until thick
`,
  'milk above a written 85 °C counts as 85': `${custard}  whisk egg yolk, caster sugar as liaison
  heat whole milk to above 85 °C
  stir whole milk into liaison   // expect: needs-tempering
  cook to 82-84 °C until nappe
`,
  'thick syrup over yolks at work': `  120 g  egg yolk, pasteurised
  140 g  caster sugar
   45 g  water
  boil water, caster sugar to 117 °C as syrup
  pour syrup over egg yolk while whipping
  whip to 30-35 °C until ribbon
`,

  // custard-curdles
  'the thermometer never decides: 86 °C is still written as 86': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook to 86 °C until nappe
`,
  'a range counts at its upper end': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook to 84-87 °C until nappe   // expect: warning custard-curdles
`,
  'an egg custard that boils': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  boil for 1 min   // expect: error custard-curdles
`,
  'the same with starch': `${custard}   40 g  corn starch
  whisk whole milk, egg yolk, caster sugar, corn starch as mix
  boil for 1 min until thick
`,
  'a bread is no custard: its core may reach 94 °C': `  500 g  strong flour
  250 g  egg
   60 g  caster sugar
   12 g  fresh yeast
  knead strong flour, egg, caster sugar, fresh yeast for 8 min as dough
  bake at 180 °C to 92-94 °C until golden
`,
  'an almond cake without flour is no custard': `  200 g  egg
  200 g  almond flour
  180 g  caster sugar
   80 g  butter, 20 °C
  whisk egg, caster sugar until pale as batter
  add almond flour, butter
  bake at 165 °C to 92-94 °C until golden
`,
  'a checked custard that was too hot': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook until nappe
  check 91 °C   // expect: error custard-curdles
`,

  // no-checkpoint
  'checked after it was cooked by its sign': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook on low until nappe
  check 83 °C
`,
  'whites warmed by feel and dried for two hours': `  180 g  egg white
  360 g  caster sugar
  whisk egg white, caster sugar in bain-marie until warm as meringue
  whip meringue to stiff peak
  pipe over mat
  dry at 80 °C for 2 h
`,
  'whites warmed by feel and eaten': `  180 g  egg white
  300 g  caster sugar
  whisk egg white, caster sugar in bain-marie until warm as meringue   // expect: no-checkpoint
  whip meringue to medium peak
`,
  'pasteurised whites warmed by feel': `  180 g  egg white, pasteurised
  300 g  caster sugar
  whisk egg white, caster sugar in bain-marie until warm as meringue
  whip meringue to medium peak
`,
  'eggs warmed by feel for a sponge': `  300 g  egg
  180 g  caster sugar
  180 g  plain flour
  whisk egg, caster sugar in bain-marie until warm as eggs
  whip eggs on high until ribbon
  fold plain flour into eggs in 2 additions: spatula
  bake at 175 °C for 25 min until golden
`,
  'cooked twice by eye: said once, at the last': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  heat on low until warm
  cook until nappe   // expect: no-checkpoint
`,
  'warmed to melt gelatin after it cooled is no reading of its cooking': `${custard}    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  whisk whole milk, egg yolk, caster sugar as mix
  cook until nappe   // expect: no-checkpoint
  cool in ice bath to 4-6 °C
  heat to 60 °C
  add gelatin
`,
  'pastry cream by the sign of the boil': `${custard}   40 g  corn starch
  whisk whole milk, egg yolk, caster sugar, corn starch until smooth as mix
  cook until boiling
`,
  'the sign says almost': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook until "almost boiling"   // expect: no-checkpoint
`,
  'bread and custard bake until golden': `  400 g  whole milk
  200 g  egg
   80 g  caster sugar
  250 g  bread
  whisk whole milk, egg, caster sugar as mix
  soak bread in mix for 20 min
  bake at 170 °C for 35 min until golden
`,
  'egg brushed on dough': `  250 g  strong flour
  140 g  whole milk
   10 g  fresh yeast
   20 g  egg, as wash
   20 g  cream, 35 % fat
  knead strong flour, whole milk, fresh yeast for 8 min as dough
  whisk wash, cream as glaze
  brush dough with glaze
  bake at 190 °C for 15 min until golden
`,

  // egg-undercooked and raw-egg
  'a long hold at 60 °C is enough': `  150 g  egg
   15 g  caster sugar
  whisk egg, caster sugar as mix
  heat in water bath to 60 °C
  hold at 60 °C for 10 min
  cool in ice bath to 4 °C
`,
  'the time of the whole step is no hold': `  150 g  egg yolk
   80 g  caster sugar
  100 g  orange juice
  whisk egg yolk, caster sugar, orange juice in bain-marie to 62 °C for 20 min until thick   // expect: egg-undercooked
`,
  'hot enough the second time': `${custard}  whisk whole milk, egg yolk, caster sugar as mix
  cook to 55 °C
  cook to 82 °C until nappe
`,
  'meringue only browned on a curd': `  150 g  lemon juice
  150 g  egg
  140 g  caster sugar
   90 g  egg white   // expect: warning raw-egg
  140 g  caster sugar, as meringue sugar
  whisk lemon juice, egg, caster sugar as curd
  cook to 83-85 °C until thick
  pour curd into dish
  whip egg white, meringue sugar to stiff peak as meringue
  spread meringue over curd
  bake at 220 °C for 5 min until golden
`,
  'meringue baked through on a curd': `  150 g  lemon juice
  150 g  egg
  140 g  caster sugar
   90 g  egg white
  140 g  caster sugar, as meringue sugar
  whisk lemon juice, egg, caster sugar as curd
  cook to 83-85 °C until thick
  pour curd into dish
  whip egg white, meringue sugar to stiff peak as meringue
  spread meringue over curd
  bake at 175 °C for 18 min until golden
`,
  'frangipane weighed for a tart is for baking': `  100 g  butter, 20 °C
  100 g  icing sugar
  100 g  almond flour
  100 g  egg, 20 °C
  cream butter, icing sugar until smooth as mix
  add almond flour
  add egg in 3 additions
`,
  'tagged for pregnant guests': `  tagged pregnant
  100 g  egg white   // expect: error raw-egg
  180 g  caster sugar
  whip egg white, caster sugar to stiff peak
`,

  // starch-undercooked
  'root starch is done at 84 °C': `  500 g  cherry purée, pasteurised, 20 °C
   60 g  caster sugar
   15 g  potato starch
  whisk cherry purée, caster sugar, potato starch until smooth
  cook to 84-86 °C until thick
`,
  'cocoa and icing sugar bring no thickening starch': `  500 g  whole milk, 4 °C
   60 g  cocoa powder
   80 g  icing sugar
  whisk whole milk, cocoa powder, icing sugar until smooth
  heat to 70-75 °C
`,
  'a flan is baked later': `  500 g  whole milk, 4 °C
  120 g  egg
  100 g  caster sugar
   45 g  corn starch
  whisk whole milk, egg, caster sugar, corn starch until smooth as flan
  cook to 80-82 °C until thick
  pour into dish
  bake at 180 °C for 40 min until browned
`,
  'softened again after it boiled': `  500 g  whole milk, 4 °C
   80 g  caster sugar
   40 g  corn starch
  whisk whole milk, caster sugar, corn starch until smooth as cream
  boil for 2 min until thick
  cool to 4 °C in ice bath for 40 min
  heat to 60 °C
`,

  // enzyme-fruit
  'ginger steeped, strained and gone': `  400 g  cream, 35 % fat, 4 °C
  200 g  whole milk, 4 °C
   30 g  fresh ginger
   80 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat cream, whole milk, caster sugar to 80-85 °C as dairy
  infuse fresh ginger in dairy for 15 min
  strain dairy
  add gelatin
  pour into glass
  chill to 4 °C for 5 h
`,
  'kiwi boiled, then gelled': `  400 g  kiwi, fresh
   80 g  caster sugar
    7 g  gelatin, sheet, 200 bloom
   42 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  boil kiwi, caster sugar for 1 min as fruit
  cool to 60-65 °C
  add gelatin
  pour into glass
  chill to 4 °C for 5 h
`,
  'kiwi on agar': `  400 g  kiwi purée
   80 g  caster sugar
  150 g  water
    4 g  agar
  whisk water, caster sugar, agar until smooth as jelly
  boil for 2 min
  stir kiwi purée into jelly
  pour into glass
  chill to 4 °C for 2 h
`,
  'melon held long enough at 76 °C': `  400 g  melon, fresh
   60 g  caster sugar
    7 g  gelatin, sheet, 200 bloom
   42 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat melon, caster sugar to 76 °C as fruit
  hold at 76 °C for 6 min
  cool to 60 °C
  add gelatin
  pour into glass
  chill to 4 °C for 5 h
`,
  'jelly poured over raw pineapple': `  300 g  water
   80 g  caster sugar
    8 g  gelatin, sheet, 200 bloom
   48 g  water, 10 °C, as cold water
  150 g  pineapple, fresh
  bloom gelatin in cold water for 10 min
  heat water, caster sugar to 60 °C as jelly
  add gelatin
  cool to 25 °C
  portion pineapple into glass
  pour jelly into glass   // expect: error enzyme-fruit
  chill to 4 °C for 5 h
`,
  'raw kiwi laid on a set cream': `  400 g  cream, 35 % fat, 4 °C
   60 g  caster sugar
    5 g  gelatin, sheet, 200 bloom
   30 g  cold water, 10 °C
   80 g  kiwi, fresh
  bloom gelatin in cold water for 10 min
  heat cream, caster sugar to 70-75 °C as dairy
  add gelatin
  pour into glass
  chill to 4 °C for 5 h
  garnish with kiwi
`,

  // acid-dairy
  'lemon in rich boiled cream': `  500 g  cream, 48 % fat
  140 g  caster sugar
   90 g  lemon juice
  boil cream, caster sugar for 2 min as dairy
  add lemon juice
  pour into glass
  chill to 4 °C for 4 h
`,
  'raspberry in a custard': `  300 g  whole milk, 4 °C
  100 g  egg yolk
   90 g  caster sugar
  100 g  raspberry purée, pasteurised, 20 °C
  heat whole milk to 80-85 °C
  whisk egg yolk, caster sugar as liaison
  temper whole milk into liaison
  cook to 82-84 °C until nappe
  add raspberry purée
`,
  'lemon in milk below 40 °C': `  500 g  whole milk, 4 °C
   80 g  caster sugar
   90 g  lemon juice
  heat whole milk, caster sugar to 40 °C
  add lemon juice
`,

  // gelling-agent
  'agar boiled by its sign': `  500 g  orange juice
   80 g  caster sugar
    4 g  agar
  whisk orange juice, caster sugar, agar until smooth
  cook until boiling
  pour into glass
  chill to 4 °C for 2 h
`,
  'agar that never saw heat': `  500 g  orange juice
   80 g  caster sugar
    4 g  agar
  whisk orange juice, caster sugar, agar until smooth   // expect: warning gelling-agent
  pour into glass
  chill to 4 °C for 2 h
`,
  'agar gel blended smooth, then folded cold': `  400 g  mango purée, pasteurised, 20 °C
   50 g  caster sugar
    3 g  agar
  200 g  cream, 35 % fat, 4 °C
  whisk agar, caster sugar, mango purée until smooth as base
  boil base for 2 min
  cool to 4 °C in ice bath for 30 min
  blend until smooth
  whip cream to soft-medium peak
  fold cream into base in 3 additions: whisk, spatula
`,
  'a jam needs little pectin of its own': `  500 g  strawberries, fresh
  450 g  caster sugar
    3 g  pectin
   20 g  lemon juice
  mix caster sugar, pectin as dry mix
  boil strawberries, lemon juice as fruit
  stir dry mix into fruit
  boil fruit to 105 °C losing 20 %
  pour into jar
`,
  'a pinch of carrageenan in an ice': `  served at -12 °C
  600 g  whole milk, 4 °C
  150 g  caster sugar
   60 g  skimmed milk powder
  0.15 g carrageenan
  whisk whole milk, caster sugar, skimmed milk powder, carrageenan until smooth
  heat to 80-85 °C
  cool to 4 °C in ice bath for 40 min
  churn to -7 °C
`,

  // frozen-texture
  'biscuit beside an ice does not count': `  served at -12 °C
  500 g  raspberry purée, pasteurised, 4 °C
  110 g  caster sugar
  150 g  sponge cake
  mix raspberry purée, caster sugar until dissolved as sorbet
  churn sorbet to -8 °C
  layer sponge cake, sorbet into ring
  freeze at -18 °C for 4 h
`,
  'a jelly frozen only to be glazed': `  served at 6 °C
  500 g  cream, 35 % fat, 4 °C
   20 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat cream, caster sugar to 70-75 °C as dairy
  add gelatin
  pour into mould
  freeze at -18 °C for 8 h
  thaw in fridge for 6 h
`,

  // claim-broken
  'nuts strained out are still in it': `  free from nuts   // expect: error claim-broken
  500 g  whole milk, 4 °C
   60 g  almond flour
   40 g  corn starch
  heat whole milk to 80-85 °C
  infuse almond flour in whole milk for 10 min
  strain whole milk losing 5 %
  whisk corn starch into whole milk
  boil for 2 min until thick
`,
  'wheat starch is wheat, and gluten': `  free from gluten   // expect: error claim-broken
  500 g  whole milk, 4 °C
   40 g  wheat starch
  whisk whole milk, wheat starch until smooth
  boil for 2 min until thick
`,
  'free from what it does not hold': `  free from egg, nuts, gluten, soy
  500 g  whole milk, 4 °C
   40 g  corn starch
  whisk whole milk, corn starch until smooth
  boil for 2 min until thick
`,
};

describe('egg, starch, fruit, claims', () => {
  test.each(Object.entries(formulas))('%s', (name, body) => {
    const text = `formula ${name.replace(/[^\p{L} ]/gu, '')}\n${body}`;
    const found = checkText(text);
    const marks = expectedIn(text);
    const missed = marks.filter(
      (mark) =>
        !found.some(
          (one) => one.line === mark.line && one.code === mark.code && one.severity === (mark.severity ?? one.severity),
        ),
    );
    const more = found.filter((one) => isGrave(one) && !marks.some((mark) => mark.line === one.line && mark.code === one.code));
    expect({ missed, more: more.map(lineOf) }).toEqual({ missed: [], more: [] });
  });
});

describe('a notice too is an alarm', () => {
  const cheesecake = (core: string) => `formula Baked cheesecake
  900 g  cream cheese, 20 °C
  250 g  caster sugar
   30 g  plain flour
    4 pc egg
  whisk cream cheese, caster sugar, plain flour until smooth as filling
  add egg in 4 additions
  pour into tin
  bake at 150 °C for 1 h 10 min to ${core} until just set
`;
  const codes = (text: string) => checkText(text).map(({ code }) => code);

  // FDA Food Code 2022, 3-401.11: 70 °C for less than a second.
  test('flour in a filling baked past 70 °C in the middle is not raw', () => {
    expect(codes(cheesecake('72 °C'))).not.toContain('heat-treat');
    expect(codes(cheesecake('60 °C'))).toContain('heat-treat');
  });
});

test('what hot syrup scalds is safe by the model too, within a second and however sweet', () => {
  for (const medium of ['yolk', 'whole egg', 'white'] as const)
    for (const sugarPercent of [0, 10, 40, 80])
      expect(sufficient({ medium, sugarPercent, celsius: scalded, seconds: 1 }), `${medium}, ${sugarPercent} %`).toBe(true);
});
