/** Pairs of versions for the comparison: one formula, and edits of it of which each changes one known thing. */

/** What a formula of the pairs takes from. */
export const bases = `component lemon syrup
  100 g  water
   80 g  caster sugar
   20 g  lemon juice
  boil water, caster sugar, lemon juice
  cool to 18-22 °C
`;

/** Well made, and with something of everything that a comparison looks at. */
export const before = `take lemon syrup from "bases.nappe"

formula Harbour bavarois
  by Harbour Road evening school
  version 4
  makes 12 glasses of 100 ml                     when glass
  makes 2 rings of 16 x 3 cm                     when mould
  choice serving: glass, mould
  served at 4-6 °C
  keeps 2 d at 0-4 °C
  free from nuts
  | A custard set with gelatin and lightened with whipped cream.

component custard
  240 g                cream, 35 % fat, 4 °C, as dairy cream
  240 g                whole milk, 4 °C
  110 g                egg yolk
   90 g                caster sugar
    9 g (mould 11 g)   gelatin, sheet, 200 bloom
   54 g (mould 66 g)   cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat whole milk, dairy cream to 80-85 °C as dairy
  whisk egg yolk, caster sugar until dissolved as liaison
  temper dairy into liaison
  cook to 82-84 °C until nappe
  add gelatin
  blend with immersion blender
  strain
  cool to 30-34 °C

component whipped cream
  320 g  cream, 35 % fat, 4 °C
  whip to soft-medium peak

component biscuit
  loss 12 %
  150 g  egg white
  150 g  caster sugar
  120 g  plain flour
   20 %  butter
  melt butter to 40-45 °C
  whip egg white to soft peak
  whisk caster sugar into egg white to medium peak
  fold plain flour into egg white
  fold butter into egg white in 2 additions: spatula
  bake at 180 °C for 12 min
  cool to 20-24 °C

assembly
  200 g  lemon syrup
  1 pc each  raspberry                           when glass
  brush biscuit with lemon syrup
  line glass with biscuit                        when glass
  line ring with biscuit                         when mould
  fold whipped cream into custard in 4 additions: whisk, whisk, spatula
  portion 100 ml into glass                      when glass
  pour into ring                                 when mould
  chill to 4 °C for 4 h (mould 6 h)
  garnish with raspberry                         when glass
`;

export interface Pair {
  readonly edit: string;
  /** What stands in `before` and what takes its place; several where one edit touches several lines. */
  readonly swaps: readonly (readonly [string, string])[];
  /** The same for the file of bases. */
  readonly inBases?: readonly (readonly [string, string])[];
  /** `kind | component | name | old → new`, `-` for nothing; diagnostics without their message. */
  readonly changes: readonly string[];
}

const swap = (edit: string, from: string, to: string, ...changes: readonly string[]): Pair => ({
  edit,
  swaps: [[from, to]],
  changes,
});

export const pairs: readonly Pair[] = [
  swap('grams', '110 g                egg yolk', '120 g                egg yolk', 'grams | custard | egg yolk | 110 g → 120 g'),
  swap('grams, in another unit and worth the same', '240 g                whole milk', '0.24 kg                whole milk'),
  swap('an override', 'mould 11 g)', 'mould 12 g)', 'grams | custard | gelatin | 9 g (mould 11 g) → 9 g (mould 12 g)'),
  swap('an override dropped', '9 g (mould 11 g) ', '9 g ', 'grams | custard | gelatin | 9 g (mould 11 g) → 9 g'),
  swap('a percentage', '20 %  butter', '22 %  butter', 'share | biscuit | butter | 20 % → 22 %'),
  swap('grams for a percentage', '20 %  butter', '105 g  butter', 'grams | biscuit | butter | 20 % → 105 g'),
  swap('a temperature in a step', '82-84 °C until', '83-84 °C until', 'celsius | custard | cook | to 82-84 °C → to 83-84 °C'),
  swap('a temperature in a step, in °F and worth the same', 'bake at 180 °C', 'bake at 356 °F'),
  swap('a temperature in a step, in °F', 'bake at 180 °C', 'bake at 340 °F', 'celsius | biscuit | bake | at 180 °C → at 340 °F'),
  swap('a temperature of a line', 'whole milk, 4 °C', 'whole milk, 20 °C', 'celsius | custard | whole milk | 4 °C → 20 °C'),
  swap(
    'a temperature that only one choice has',
    'cool to 30-34 °C',
    'cool to 30-34 °C (mould 28-32 °C)',
    'celsius | custard | cool | to 30-34 °C → to 30-34 °C (mould 28-32 °C)',
  ),
  swap('a duration', 'for 12 min', 'for 14 min', 'time | biscuit | bake | for 12 min → for 14 min'),
  swap('a duration in another unit', 'for 4 h (mould 6 h)', 'for 240 min (mould 6 h)'),
  swap(
    'a duration of one choice',
    'for 4 h (mould 6 h)',
    'for 4 h (mould 8 h)',
    'time | assembly | chill | for 4 h (mould 6 h) → for 4 h (mould 8 h)',
  ),
  swap(
    'a duration added',
    'blend with immersion blender',
    'blend with immersion blender for 2 min',
    'time | custard | blend | - → for 2 min',
  ),
  swap(
    'the count of additions',
    'in 4 additions',
    'in 3 additions',
    'step | assembly | fold | in 4 additions: whisk, whisk, spatula → in 3 additions: whisk, whisk, spatula',
  ),
  swap(
    'the tools of additions',
    'whisk, whisk, spatula',
    'whisk, spatula',
    'step | assembly | fold | in 4 additions: whisk, whisk, spatula → in 4 additions: whisk, spatula',
  ),
  swap(
    'a tool',
    'blend with immersion blender',
    'blend with blender',
    'step | custard | blend | with immersion blender → with blender',
  ),
  swap('until', 'until nappe', 'until thick', 'step | custard | cook | until nappe → until thick'),
  swap('a peak', 'to soft-medium peak', 'to soft peak', 'step | whipped cream | whip | to soft-medium peak → to soft peak'),
  swap('a step added', '  strain\n', '  strain\n  check 65-82 °C\n', 'step | custard | check | - → check 65-82 °C'),
  swap('a step dropped', '  strain\n', '', 'step | custard | strain | strain → -'),
  {
    edit: 'a step moved',
    swaps: [['  blend with immersion blender\n  strain\n', '  strain\n  blend with immersion blender\n']],
    changes: ['order | custard | blend with immersion blender | after “add gelatin” → after “strain”'],
  },
  swap('a verb', '  blend with immersion blender', '  stir', 'step | custard | stir | blend with immersion blender → stir'),
  {
    edit: 'a line added, with its step',
    swaps: [
      ['   90 g                caster sugar\n', '   90 g                caster sugar\n    2 g                salt\n'],
      ['  add gelatin\n', '  add gelatin\n  add salt\n'],
    ],
    changes: ['grams | custard | salt | - → 2 g salt', 'step | custard | add | - → add salt'],
  },
  {
    edit: 'a line dropped, with its steps',
    swaps: [
      ['  1 pc each  raspberry                           when glass\n', ''],
      ['  garnish with raspberry                         when glass\n', ''],
    ],
    changes: [
      'grams | assembly | raspberry | 1 pc each raspberry when glass → -',
      'step | assembly | garnish | garnish with raspberry when glass → -',
    ],
  },
  {
    edit: 'an ingredient renamed, with its steps',
    swaps: [
      ['90 g                caster sugar', '90 g                fine sugar, is caster sugar'],
      ['whisk egg yolk, caster sugar', 'whisk egg yolk, fine sugar'],
    ],
    changes: ['step | custard | renamed | caster sugar → fine sugar'],
  },
  {
    edit: 'a component renamed, with its uses',
    swaps: [
      ['component whipped cream', 'component chantilly'],
      ['fold whipped cream', 'fold chantilly'],
    ],
    changes: ['step | chantilly | renamed | whipped cream → chantilly'],
  },
  {
    edit: 'what a step calls its result renamed',
    swaps: [
      ['°C as dairy', '°C as hot dairy'],
      ['temper dairy', 'temper hot dairy'],
    ],
    changes: ['step | custard | renamed | dairy → hot dairy'],
  },
  {
    edit: 'what a line calls its ingredient renamed',
    swaps: [
      ['as dairy cream', 'as pouring cream'],
      ['whole milk, dairy cream', 'whole milk, pouring cream'],
    ],
    changes: ['step | custard | renamed | dairy cream → pouring cream'],
  },
  {
    edit: 'another kind in the place of one',
    swaps: [
      ['240 g                whole milk', '240 g                oat drink'],
      ['heat whole milk', 'heat oat drink'],
    ],
    changes: ['grams | custard | oat drink | 240 g whole milk → 240 g oat drink'],
  },
  swap('per cent fat', '320 g  cream, 35 % fat', '320 g  cream, 38 % fat', 'share | whipped cream | cream | 35 % fat → 38 % fat'),
  swap('bloom', '200 bloom', '180 bloom', 'share | custard | gelatin | 200 bloom → 180 bloom'),
  swap(
    'a preparation in words',
    '320 g  cream, 35 % fat, 4 °C',
    '320 g  cream, 35 % fat, 4 °C, "well shaken"',
    'step | whipped cream | cream | - → well shaken',
  ),
  swap(
    'the yield',
    'makes 12 glasses of 100 ml ',
    'makes 13 glasses of 100 ml ',
    'yield | Harbour bavarois | makes | 12 glasses of 100 ml when glass → 13 glasses of 100 ml when glass',
  ),
  swap(
    'the size of a mould',
    '16 x 3 cm',
    '16 x 3.5 cm',
    'yield | Harbour bavarois | makes | 2 rings of 16 x 3 cm when mould → 2 rings of 16 x 3.5 cm when mould',
  ),
  swap('how long it keeps', 'keeps 2 d', 'keeps 3 d', 'time | Harbour bavarois | keeps | 2 d at 0–4 °C → 3 d at 0–4 °C'),
  swap('at what it keeps', 'at 0-4 °C', 'at 2-4 °C', 'time | Harbour bavarois | keeps | 2 d at 0–4 °C → 2 d at 2–4 °C'),
  swap('at what it is served', 'served at 4-6 °C', 'served at 6-8 °C', 'celsius | Harbour bavarois | served | 4–6 °C → 6–8 °C'),
  swap('a written loss', 'loss 12 %', 'loss 10 %', 'share | biscuit | loss | 12 % → 10 %'),
  swap(
    'a guard of a step',
    'ring                                 when mould',
    'ring                                 unless glass',
  ),
  swap('free from', 'free from nuts', 'free from nuts, peanut', 'allergen | Harbour bavarois | free from | nuts → nuts, peanut'),
  swap(
    'gelatin by',
    '  free from nuts\n',
    '  free from nuts\n  gelatin by strength\n',
    'share | Harbour bavarois | gelatin | by concentration → by strength',
  ),
  swap('a tag', '  free from nuts\n', '  free from nuts\n  tagged children\n', 'step | Harbour bavarois | tagged | - → children'),
  {
    edit: 'an allergen by a new ingredient',
    swaps: [
      ['  120 g  plain flour\n', '  60 g  plain flour\n  60 g  almond flour\n'],
      ['fold plain flour into', 'fold plain flour, almond flour into'],
    ],
    changes: [
      'grams | biscuit | plain flour | 120 g → 60 g',
      'grams | biscuit | almond flour | - → 60 g almond flour',
      'step | biscuit | fold | fold plain flour into egg white → fold plain flour, almond flour into egg white',
      'allergen | Harbour bavarois | almond | - → contains',
      'diagnostic | claim-broken | gained',
    ],
  },
  swap(
    'a diagnostic gained',
    'cook to 82-84 °C',
    'cook to 92-94 °C',
    'celsius | custard | cook | to 82-84 °C → to 92-94 °C',
    'diagnostic | custard-curdles | gained',
  ),
  swap('the amount of a portion', 'portion 100 ml', 'portion 95 ml', 'grams | assembly | portion | 100 ml → 95 ml'),
  {
    edit: 'a value of a choice renamed, wherever it stands',
    swaps: [
      ['choice serving: glass, mould', 'choice serving: glass, cake'],
      ['when mould\n  choice', 'when cake\n  choice'],
      ['9 g (mould 11 g) ', '9 g (cake 11 g) '],
      ['54 g (mould 66 g)', '54 g (cake 66 g)'],
      ['line ring with biscuit                         when mould', 'line ring with biscuit  when cake'],
      ['pour into ring                                 when mould', 'pour into ring  when cake'],
      ['4 h (mould 6 h)', '4 h (cake 6 h)'],
    ],
    changes: ['step | Harbour bavarois | renamed | mould → cake'],
  },
  swap(
    'the default of a choice',
    'choice serving: glass, mould',
    'choice serving: mould, glass',
    'step | Harbour bavarois | choice | serving: glass, mould → serving: mould, glass',
  ),
  {
    edit: 'a choice dropped, with all that stood under it',
    swaps: [
      ['  makes 12 glasses of 100 ml                     when glass\n', ''],
      ['makes 2 rings of 16 x 3 cm                     when mould', 'makes 2 rings of 16 x 3 cm'],
      ['  choice serving: glass, mould\n', ''],
      ['9 g (mould 11 g) ', '11 g '],
      ['54 g (mould 66 g)', '66 g'],
      ['  1 pc each  raspberry                           when glass\n', ''],
      ['  line glass with biscuit                        when glass\n', ''],
      ['line ring with biscuit                         when mould', 'line ring with biscuit'],
      ['  portion 100 ml into glass                      when glass\n', ''],
      ['pour into ring                                 when mould', 'pour into ring'],
      ['4 h (mould 6 h)', '6 h'],
      ['  garnish with raspberry                         when glass\n', ''],
    ],
    changes: [
      'yield | Harbour bavarois | makes | 2 rings of 16 x 3 cm when mould → 2 rings of 16 x 3 cm',
      'yield | Harbour bavarois | makes | 12 glasses of 100 ml when glass → -',
      'step | Harbour bavarois | choice | serving: glass, mould → -',
      'grams | custard | gelatin | 9 g (mould 11 g) → 11 g',
      'grams | custard | cold water | 54 g (mould 66 g) → 66 g',
      'grams | assembly | raspberry | 1 pc each raspberry when glass → -',
      'step | assembly | line | when mould → always',
      'step | assembly | line | line glass with biscuit when glass → -',
      'step | assembly | pour | when mould → always',
      'time | assembly | chill | for 4 h (mould 6 h) → for 6 h',
      'step | assembly | portion | portion 100 ml into glass when glass → -',
      'step | assembly | garnish | garnish with raspberry when glass → -',
    ],
  },
  swap('the order of what is heated together', 'heat whole milk, dairy cream', 'heat dairy cream and whole milk'),
  swap(
    'a step only for one choice',
    '  blend with immersion blender\n',
    '  blend with immersion blender when mould\n',
    'step | custard | blend | always → when mould',
  ),
  swap('an amount in another unit and worth the same', 'portion 100 ml', 'portion 10 cl'),
  swap(
    'the fridge',
    'component custard\n',
    'equipment\n  fridge 6 °C\n\ncomponent custard\n',
    'celsius | equipment | fridge | - → fridge 6 °C',
  ),
  swap(
    'the formula renamed',
    'formula Harbour bavarois',
    'formula Quay bavarois',
    'step | Quay bavarois | renamed | Harbour bavarois → Quay bavarois',
  ),
  {
    edit: 'a base in a taken file',
    swaps: [],
    inBases: [['80 g  caster sugar', '60 g  caster sugar']],
    changes: [
      'grams | lemon syrup | caster sugar | 80 g → 60 g',
      'nutrition | Harbour bavarois | kJ | 1176 in 100 g → 1162 in 100 g',
      'nutrition | Harbour bavarois | kcal | 282 in 100 g → 279 in 100 g',
      'nutrition | Harbour bavarois | sugars | 20 g in 100 g → 19 g in 100 g',
    ],
  },
  swap('white space', '  whip to soft-medium peak', '\n    whip   to soft-medium   peak  '),
  swap('a comment', '  strain\n', '  // through the fine one\n  strain // twice\n'),
  swap('a note', '  strain\n', '  strain\n    | Scrape the sieve.\n'),
  swap('by', 'by Harbour Road evening school', 'by the evening school'),
  swap('the version', 'version 4', 'version 5'),
  {
    edit: 'the order of ingredient lines and components',
    swaps: [
      ['  150 g  egg white\n  150 g  caster sugar\n', '  150 g  caster sugar\n  150 g  egg white\n'],
      ['component whipped cream\n  320 g  cream, 35 % fat, 4 °C\n  whip to soft-medium peak\n\n', ''],
      ['assembly\n', 'component whipped cream\n  320 g  cream, 35 % fat, 4 °C\n  whip to soft-medium peak\n\nassembly\n'],
    ],
    changes: [],
  },
  swap('another spelling of the same name', 'temper dairy into liaison', 'temper Dairy into "liaison"'),
];
