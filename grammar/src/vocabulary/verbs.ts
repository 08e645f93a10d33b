/** The verbs of a step, one row a word: the clauses each takes, what it needs, and what it means to a cook. */

import type { ClauseUse } from './clauses.ts';
import { commonUses } from './clauses.ts';

export type VerbFamily =
  | 'bring together'
  | 'heat'
  | 'cool'
  | 'hydrate and extract'
  | 'eggs and chocolate'
  | 'air'
  | 'place'
  | 'finish'
  | 'keep track';

/** Something that must stand in the step; one of the alternatives is enough. */
export type Need = readonly (ClauseUse | 'operand' | 'reading' | 'text')[];

export interface VerbRow {
  readonly word: string;
  readonly family: VerbFamily;
  readonly meaning: string;
  /** Clauses beside the ones every verb takes. */
  readonly takes: readonly ClauseUse[];
  readonly needs: readonly Need[];
  /** Also takes a bare quantity: that much of the current matter into each vessel. */
  readonly amount: boolean;
  readonly template: string;
}

const mixing: readonly ClauseUse[] = ['into', 'to temperature', 'to peak', 'in medium', 'on'];
const heating: readonly ClauseUse[] = ['to temperature', 'to mass', 'to brix', 'at', 'on', 'in medium'];
const baking: readonly ClauseUse[] = ['at', 'to temperature', 'to mass', 'in medium', 'on'];
const cooling: readonly ClauseUse[] = ['to temperature', 'at', 'in medium', 'at room'];
const steeping: readonly ClauseUse[] = ['in name', 'to temperature'];
const straining: readonly ClauseUse[] = ['into', 'over'];
const placing: readonly ClauseUse[] = ['into', 'over', 'at', 'while whipping'];
const layering: readonly ClauseUse[] = ['into', 'over', 'with'];
const shaping: readonly ClauseUse[] = ['to length', 'into', 'in turns'];
const finishing: readonly ClauseUse[] = ['with', 'in name', 'at', 'over'];
const serving: readonly ClauseUse[] = ['into', 'with', 'at'];

const whipping: readonly ClauseUse[] = ['to peak', 'to temperature', 'in medium', 'on'];
const folding: readonly ClauseUse[] = ['into', 'at', 'in additions'];
const blending: readonly ClauseUse[] = ['into', 'to temperature', 'on'];

const inName: readonly Need[] = [['in name']];
const operand: readonly Need[] = [['operand']];
const reduced: readonly Need[] = [['to mass', 'to brix', 'losing']];
const party: readonly Need[] = [['operand', 'into']];

export const verbs: readonly VerbRow[] = [
  ...family('bring together', [
    verb('mix', mixing, 'Brings things together without adding air.', 'mix <names>'),
    verb('whisk', mixing, 'Mixes with a whisk, with some air.', 'whisk <names>'),
    verb('stir', mixing, 'Mixes gently, keeping air out.', 'stir <names>'),
    verb('add', ['into', 'in additions'], 'Puts something into what is being worked on.', 'add <name>', operand),
    verb('combine', mixing, 'Puts things together into one.', 'combine <names>'),
    verb('rub', mixing, 'Rubs fat into flour until no lumps are left.', 'rub <butter> into <flour>'),
    verb('knead', mixing, 'Works a dough until it holds together.', 'knead until <smooth>'),
    verb('sift', mixing, 'Passes powder through a sieve.', 'sift <names>'),
    verb('cream', mixing, 'Beats fat and sugar until pale and light.', 'cream <butter>, <sugar>'),
    verb('smooth', mixing, 'Works set matter until it has no lumps.', 'smooth'),
    verb('laminate', shaping, 'Folds butter into a dough in turns.', 'laminate <butter> into <dough> in <3> turns'),
  ]),
  ...family('heat', [
    verb('heat', heating, 'Warms to a reading.', 'heat <names> to <80-85> °C'),
    verb('cook', heating, 'Cooks on the stove to a reading.', 'cook to <82-84> °C until <nappe>'),
    verb('boil', heating, 'Brings to the boil.', 'boil <names>'),
    verb('reduce', heating, 'Boils water off, down to a mass or a sugar reading.', 'reduce to <120 g>', reduced),
    verb('melt', heating, 'Turns solid into liquid by warmth.', 'melt <chocolate> to <45> °C'),
    verb('bake', baking, 'Cooks in the oven; `at` is the oven, not the core.', 'bake at <160> °C for <12 min>'),
    verb('toast', baking, 'Browns nuts, grains or flour dry.', 'toast <nuts> at <150> °C for <15 min>'),
    verb('hold', heating, 'Keeps at a temperature for a time.', 'hold at <60> °C for <4 min>', [['at'], ['for']]),
    verb('dry', baking, 'Takes water out slowly in warm air.', 'dry at <90> °C for <2 h>'),
    verb('caramelise', heating, 'Browns sugar; with a torch, the surface only.', 'caramelise <sugar> to <170> °C'),
    verb('fry', heating, 'Cooks in hot fat.', 'fry <name> at <180> °C'),
  ]),
  ...family('cool', [
    verb('cool', cooling, 'Lets the temperature fall to a reading.', 'cool to <30-34> °C'),
    verb('chill', cooling, 'Leaves in the cold; `for` is the whole stay.', 'chill to <4> °C for <4 h>'),
    verb('freeze', cooling, 'Leaves in the freezer; `for` is the whole stay.', 'freeze for <6 h>'),
    verb('rest', cooling, 'Leaves alone; `for` is the whole stay.', 'rest for <1 h>'),
    verb('thaw', cooling, 'Brings back from frozen.', 'thaw at <4> °C for <6 h>'),
    verb('churn', cooling, 'Freezes while stirring.', 'churn to <-6> °C'),
    verb('proof', cooling, 'Lets yeast raise a dough.', 'proof at <27> °C for <2 h>'),
  ]),
  ...family('hydrate and extract', [
    verb('bloom', steeping, 'Lets gelatin take up cold water.', 'bloom <gelatin> in <cold water> for <10 min>', inName),
    verb('dissolve', steeping, 'Turns a solid into part of a liquid.', 'dissolve <sugar> in <water>', inName),
    verb('soak', steeping, 'Lets something take up liquid; the rest is drained.', 'soak <sponge> in <syrup>', inName),
    verb('infuse', steeping, 'Leaves aromatics in a liquid to give their taste.', 'infuse <tea> in <milk> for <6 min>', inName),
    verb('strain', straining, 'Takes out what does not pass a sieve.', 'strain <name>'),
    verb('press', straining, 'Squeezes liquid out.', 'press <name>'),
  ]),
  ...family('eggs and chocolate', [
    verb(
      'temper',
      ['into', 'to temperature', 'in additions'],
      'With `into`: pours hot liquid onto eggs in a thin stream. Without: brings chocolate to working crystals.',
      'temper <hot liquid> into <eggs>',
    ),
  ]),
  ...family('air', [
    verb('whip', whipping, 'Beats air in.', 'whip to <very soft|soft|medium|stiff> peak'),
    verb('fold', folding, 'Brings a foam and a base together gently.', 'fold <foam> into <base> in <3> additions', party),
    verb('blend', blending, 'Shears with an immersion blender: emulsifies, and ends a foam.', 'blend'),
  ]),
  ...family('place', [
    verb('pour', placing, 'Pours into or over something.', 'pour into <mould>', [], true),
    verb('portion', placing, 'Puts the same amount into each vessel.', 'portion <100 ml> into <glass>', [], true),
    verb('pipe', placing, 'Presses through a piping bag.', 'pipe into <mould>', [], true),
    verb('spread', [...placing, 'with'], 'Spreads flat.', 'spread <300 g> into <frame>', [], true),
    verb('layer', layering, 'Puts layers on each other, bottom to top.', 'layer <names> into <ring>'),
    verb('fill', layering, 'Puts a filling in.', 'fill <name> with <name>'),
    verb('line', layering, 'Covers the inside of a vessel.', 'line <ring> with <dough>'),
    verb('roll', shaping, 'Rolls out, or rolls up.', 'roll to <3> mm'),
    verb('shape', shaping, 'Gives a form.', 'shape into <12 bars of 40 g>'),
    verb('cut', shaping, 'Cuts into pieces.', 'cut into <24 bars of 9 x 3 cm>'),
  ]),
  ...family('finish', [
    verb('unmould', serving, 'Takes out of the mould.', 'unmould'),
    verb('glaze', finishing, 'Covers with a glaze.', 'glaze with <name>'),
    verb('dust', finishing, 'Covers thinly with powder.', 'dust with <icing sugar>'),
    verb('brush', finishing, 'Covers thinly with a brush.', 'brush with <name>'),
    verb('dip', finishing, 'Dips into something that clings.', 'dip in <name>'),
    verb('coat', finishing, 'Covers all over.', 'coat with <name>'),
    verb('grease', finishing, 'Rubs a vessel with fat.', 'grease <tin> with <butter>'),
    verb('garnish', finishing, 'Decorates before serving.', 'garnish with <name>'),
    verb('serve', serving, 'Brings to the table.', 'serve at <4-6> °C'),
    verb('pack', serving, 'Wraps or boxes.', 'pack into <box>'),
  ]),
  ...family('keep track', [
    verb(
      'reserve',
      [],
      'Sets a part aside under a name; what remains stays in work.',
      'reserve <40 g> of <name> as <name>',
      operand,
    ),
    verb('discard', [], 'Throws away.', 'discard <name>', operand),
    verb('check', [], 'The matter must read that now.', 'check <84> °C', [['reading']]),
    verb('do', [], 'A step in free words that changes nothing the checker tracks.', 'do "<text>"', [['text']]),
  ]),
];

/** Words cooks write that are no verbs here, by the verb that is meant; proposed where one opens a line. */
export const cooksWords: Readonly<Record<string, readonly string[]>> = {
  mix: ['incorporate', 'homogenise', 'homogenize', 'toss'],
  whisk: ['beat'],
  stir: ['swirl'],
  add: ['put', 'sprinkle', 'drop'],
  combine: ['join', 'place'],
  rub: ['sand'],
  sift: ['sieve'],
  smooth: ['loosen', 'slacken'],
  laminate: ['turn'],
  heat: ['warm', 'reheat', 'scald', 'bring'],
  cook: ['simmer', 'poach', 'thicken'],
  reduce: ['evaporate'],
  melt: ['liquefy'],
  toast: ['roast'],
  hold: ['keep', 'maintain'],
  dry: ['dehydrate'],
  caramelise: ['caramelize', 'burn'],
  fry: ['sauté', 'saute'],
  chill: ['refrigerate', 'set', 'mature'],
  freeze: ['deep-freeze'],
  rest: ['stand', 'leave', 'wait', 'relax', 'let', 'allow'],
  thaw: ['defrost'],
  churn: ['spin'],
  proof: ['prove', 'ferment', 'rise'],
  bloom: ['hydrate'],
  soak: ['imbibe', 'moisten'],
  infuse: ['steep'],
  strain: ['drain', 'filter', 'pass'],
  press: ['squeeze'],
  whip: ['aerate'],
  blend: ['emulsify', 'purée', 'puree', 'grind'],
  pour: ['tip', 'drizzle'],
  portion: ['divide', 'spoon', 'scoop', 'deposit', 'ladle'],
  pipe: ['dress'],
  spread: ['smear', 'level'],
  layer: ['stack', 'assemble', 'build', 'arrange'],
  fill: ['stuff'],
  roll: ['sheet'],
  shape: ['form', 'mould', 'mold'],
  cut: ['slice', 'chop', 'trim', 'punch', 'dice'],
  unmould: ['unmold', 'demould', 'demold', 'release'],
  glaze: ['ice'],
  brush: ['paint'],
  dip: ['dunk'],
  coat: ['cover', 'enrobe'],
  grease: ['butter', 'oil'],
  garnish: ['decorate', 'top', 'finish'],
  serve: ['plate'],
  pack: ['wrap', 'store', 'box'],
  reserve: ['save'],
  discard: ['remove'],
  check: ['measure', 'verify'],
  do: ['prepare', 'preheat', 'clean'],
};

/** Every use a verb takes, the common ones included. */
export function usesOf(row: VerbRow): readonly ClauseUse[] {
  return [...row.takes, ...commonUses];
}

type Draft = Omit<VerbRow, 'family'>;

function verb(
  word: string,
  takes: readonly ClauseUse[],
  meaning: string,
  template: string,
  needs: readonly Need[] = [],
  amount = false,
): Draft {
  return { word, takes, meaning, template, needs, amount };
}

function family(name: VerbFamily, rows: readonly Draft[]): readonly VerbRow[] {
  return rows.map((row) => ({ family: name, ...row }));
}
