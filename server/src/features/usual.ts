/** Readings and times that a verb usually ends with or takes. All are common practice, no source; the checker has its own, with theirs. */

export interface Usual {
  readonly text: string;
  readonly why: string;
}

type ByVerb = Readonly<Record<string, readonly Usual[]>>;

const usual = (text: string, why: string): Usual => ({ text, why });

export const usualTo: ByVerb = {
  heat: [
    usual('80-85 °C', 'milk or cream before it meets yolk'),
    usual('60 °C', 'warm enough for gelatin'),
    usual('40-45 °C', 'blood warm'),
  ],
  cook: [usual('82-84 °C', 'custard to nappe'), usual('85 °C', 'fruit curd'), usual('71 °C', 'egg cooked through')],
  boil: [
    usual('118-121 °C', 'syrup for Italian meringue'),
    usual('104-105 °C', 'syrup of a mirror glaze'),
    usual('102 °C', 'light syrup'),
  ],
  melt: [usual('45-50 °C', 'dark chocolate'), usual('40-45 °C', 'milk or white chocolate'), usual('50 °C', 'butter')],
  caramelise: [usual('170-175 °C', 'amber caramel'), usual('180 °C', 'dark caramel')],
  reduce: [usual('65 brix', 'thick syrup')],
  cool: [
    usual('30-34 °C', 'a gelatin base before cream is folded in'),
    usual('20-25 °C', 'room warm'),
    usual('4 °C', 'fridge cold'),
  ],
  chill: [usual('4 °C', 'fridge cold')],
  freeze: [usual('-18 °C', 'frozen through')],
  churn: [usual('-6 °C', 'drawn from the machine')],
  temper: [usual('31-32 °C', 'dark chocolate'), usual('29-30 °C', 'milk chocolate'), usual('28-29 °C', 'white chocolate')],
  bake: [usual('94-96 °C', 'core of a sponge or cake')],
  whisk: [usual('55-60 °C', 'whites and sugar over the water bath')],
  mix: [usual('40-45 °C', 'ganache')],
  stir: [usual('40-45 °C', 'ganache')],
  whip: [usual('30 °C', 'meringue whipped until cool')],
  roll: [usual('3 mm', 'tart dough')],
};

export const usualAt: ByVerb = {
  bake: [usual('160 °C', 'tarts, custards'), usual('180 °C', 'cakes'), usual('220 °C', 'thin sponges')],
  toast: [usual('150 °C', 'nuts')],
  dry: [usual('90 °C', 'meringues')],
  hold: [usual('60 °C', 'with a time'), usual('82 °C', 'with a time')],
  chill: [usual('4 °C', 'fridge')],
  freeze: [usual('-18 °C', 'freezer')],
  rest: [usual('4 °C', 'fridge')],
  thaw: [usual('4 °C', 'fridge')],
  proof: [usual('27 °C', 'yeast doughs')],
  fry: [usual('180 °C', 'doughnuts')],
  serve: [usual('4-6 °C', 'from the fridge'), usual('-12 °C', 'frozen desserts')],
  glaze: [usual('32-35 °C', 'mirror glaze')],
  pour: [usual('32-35 °C', 'mirror glaze')],
  fold: [usual('30-34 °C', 'a gelatin base')],
};

export const usualFor: ByVerb = {
  bloom: [usual('10 min', 'gelatin')],
  infuse: [usual('6 min', 'tea'), usual('15 min', 'vanilla, spices')],
  soak: [usual('10 min', 'dried fruit, sponge')],
  chill: [usual('4 h', 'gelatin in glasses'), usual('6 h', 'gelatin in moulds'), usual('12 h', 'gelatin to be cut')],
  freeze: [usual('6 h', 'entremets')],
  rest: [usual('1 h', 'doughs'), usual('overnight', 'ganache to be whipped')],
  bake: [usual('12 min', 'biscuits'), usual('25 min', 'cakes')],
  boil: [usual('1 min', 'syrup'), usual('2 min', 'pastry cream')],
  hold: [usual('4 min', 'with a reading')],
  whip: [usual('8 min', 'whole egg')],
  knead: [usual('8 min', 'yeast dough')],
  proof: [usual('2 h', 'yeast dough')],
  thaw: [usual('6 h', 'in the fridge')],
};

/** Where the verb has none of its own. */
export const anyTime: readonly Usual[] = [
  usual('10 min', 'ten minutes'),
  usual('1 h', 'one hour'),
  usual('overnight', '8 to 14 hours'),
];

export const served: readonly Usual[] = [
  usual('4-6 °C', 'from the fridge'),
  usual('18-20 °C', 'at room temperature'),
  usual('-12 °C', 'frozen'),
];

export const kept: readonly Usual[] = [usual('0-4 °C', 'fridge'), usual('-18 °C', 'freezer'), usual('15-20 °C', 'cool room')];

export const keepTimes: readonly Usual[] = [usual('2 d', 'two days'), usual('12 h', 'half a day'), usual('30 d', 'frozen')];
