/** English cards. */
import { tools } from 'nappe-grammar';
import { amount, type Bit, join, list, name, type Phrase, sentence, sign, temperature, time } from '../sentence.ts';
import type { AttributeWords, Language, StepWords, Term } from './language.ts';

export const english: Language = {
  code: 'en',
  name: 'English',
  decimal: '.',
  quotes: ['“', '”'],
  labels: {
    by: 'by',
    version: 'Version',
    printed: 'Printed',
    makes: 'Makes',
    served: 'Serve at',
    keeps: 'Keeps',
    choices: 'This card',
    scaling: 'Scaling',
    ingredients: 'Weigh',
    method: 'Method',
    amount: 'Amount',
    usMeasure: 'US measure',
    ingredient: 'Ingredient',
    share: 'Share',
    bakers: 'On flour',
    assembly: 'Assembly',
    from: 'from',
    some: 'some',
    critical: 'Critical',
    additions: 'Folded in stages',
    temperatureLine: 'Temperature line',
    danger: 'bacteria grow',
    timeCompressed: 'The longer a wait, the more it is compressed.',
    window: 'Written window',
    step: 'Step',
    time: 'Time',
    starts: 'Starts',
    ends: 'Ends',
    differences: 'With other choices',
    instead: 'instead of',
    notThere: 'left out',
    allergens: 'Allergens',
    contains: 'Contains',
    noAllergens: 'None of the allergens that must be declared, as far as the catalogue knows.',
    unknownAllergens: 'Not known for',
    freeFrom: 'Made without',
    nutrition: 'Nutrition',
    per100: 'per 100 g',
    nutritionUnknown: 'Not computed: the composition is not known of',
    nutritionBasis: 'Computed from catalogue values; not a laboratory analysis.',
    storage: 'Storage',
    cautions: 'Cautions',
    allowed: 'Allowed by hand',
    noReason: 'no reason given',
    unchecked: 'Not checked through',
    uncheckedWhy: 'The checker found errors in this formula. Do not work from this card until they are put right.',
    line: 'line',
    why: 'Why',
    rows: {
      energy: 'Energy',
      fat: 'Fat',
      saturates: 'of which saturates',
      carbohydrate: 'Carbohydrate',
      sugars: 'of which sugars',
      fibre: 'Fibre',
      protein: 'Protein',
      salt: 'Salt',
    },
    us: {
      calories: 'Calories',
      fat: 'Total Fat',
      saturates: 'Saturated Fat',
      sodium: 'Sodium',
      carbohydrate: 'Total Carbohydrate',
      fibre: 'Dietary Fiber',
      sugars: 'Total Sugars',
      protein: 'Protein',
      lessThan: 'less than',
      notStated: 'Trans fat, cholesterol, added sugars and vitamins are not computed.',
    },
  },
  scaling: {
    asWritten: 'As written.',
    count: (w) => `Scaled × ${w.factor} by count: from ${w.from} to ${w.to}.`,
    mass: (w) => `Scaled × ${w.factor} by mass: from ${w.from} to ${w.to}.`,
    volume: (w) => `Scaled × ${w.factor} by volume: from ${w.from} to ${w.to}.`,
    density: (w) =>
      `Scaled × ${w.factor}: ${w.to}, that is ${w.millilitres} or ${w.grams} at the computed density of the finished mixture, ${w.density}; as written ${w.from}.`,
    fills: (w) =>
      `What is made weighs ${w.grams} and fills ${w.millilitres}: ${w.density}, computed from the finished mixture with the air that whipping and folding leave in it (an estimate).`,
    lined: 'Part of each mould is taken by its shell or lining: the count is exact, the size an estimate.',
    limit: (w) => `Scaled × ${w.factor}: as far as ${w.amount} of ${w.name} goes.`,
    pieces: (w) => `Rounded to ${w.count} of ${w.name}, and everything else with it (asked: × ${w.asked}).`,
    rounding: (percent) => `Rounding to the scale changes the total by ${percent}.`,
    times:
      'Times do not scale: a larger batch heats and cools more slowly, a smaller one faster. Go by the temperature and the sign, not by the clock.',
    vessels: 'Pan, bowl and tray do not scale either: keep the depth of the layer as it was, or work in batches.',
    batches: (w) => `Step ${w.step} needs ${w.needs}; the ${w.vessel} holds ${w.holds}: work in ${w.batches} batches.`,
  },
  units: { s: 's', min: 'min', h: 'h', tsp: 'tsp', tbsp: 'tbsp', cup: 'cup', floz: 'fl oz', oz: 'oz', lb: 'lb', pc: 'pc' },
  days: (count, one) => `${count} ${one ? 'day' : 'days'}`,
  overnight: (range) => `overnight (${range})`,
  below: (reading) => `below ${reading}`,
  above: (reading) => `above ${reading}`,
  keeping: (duration, reading) => (reading ? `${duration} at ${reading}` : duration),
  after: (step) => (step === 0 ? 'First' : `After step ${step}`),
  perPiece: (noun, grams) => `per ${noun ?? 'portion'} (${grams})`,
  yield: (count, noun, size) => `${count} ${noun}${size ? ` of ${size}` : ''}`,
  noun: (noun, count) => (nouns.has(noun) ? (count === 1 ? noun : plural(noun)) : null),
  kind: () => null,
  allergen: (allergen) => allergens[allergen] ?? allergen,
  glutenOfWheat: 'wheat (gluten)',
  attribute,
  tool: () => null,
  step,
  reasons: {
    'egg thickens': (t) => `Egg binds at about ${t(79, 85)} and curdles a few degrees above.`,
    'egg safe': () => 'This reading, held as written, is what makes the egg safe: lower or shorter is not the same.',
    'starch cooks': () =>
      'Starch thickens fully only near the boil, and boiling stops the enzyme of the yolk that would thin it again.',
    syrup: () => 'The temperature of a boiling syrup is its concentration: a degree less leaves more water in.',
    caramel: () => 'Sugar browns from here on; seconds decide how bitter it gets.',
    'fold cream': (t) =>
      `Above ${t(35)} the fat that carries whipped cream melts and the foam falls; too cold, and the base is too thick to take it.`,
    'fold chocolate': () =>
      'Warm enough that the cocoa butter stays liquid while the cream goes in, cool enough that the cream does not melt at once.',
    'fold white': () => 'An egg-white foam takes the heat, but the base must be soft enough to take the foam.',
    'gelatin melts': (t) =>
      `Bloomed gelatin melts from about ${t(35)}; in anything colder it stays in threads. Boiling weakens it.`,
    'gelatin sets': () => 'Gelatin sets in the cold within hours and goes on getting firmer for about half a day.',
    'chocolate melts': () => 'Cocoa butter must melt through; hotter, the milk solids and the cocoa scorch and thicken.',
    'chocolate works': () => 'In this window the stable crystals of the cocoa butter stay; a few degrees warmer melts them.',
    ganache: () => 'Cream and chocolate form a smooth emulsion only while the cocoa butter is liquid.',
    glaze: () => 'Warmer, a glaze runs off thin and melts what it covers; colder, it drags.',
    butter: () => 'Butter holds air and joins other matter only while it is soft, neither hard nor oily.',
    cold: (t) => `Bacteria grow between ${t(5)} and ${t(57)}: through that band quickly, then stay below it.`,
    frozen: () => 'Frozen through, it keeps its shape for unmoulding, glazing or cutting.',
  },
  cautions: {
    egg: () =>
      'Contains egg. For young children, pregnant women, older people or anyone who is ill, use pasteurised egg and heat it as written, with a probe.',
    'raw egg': () =>
      'Egg in this formula reaches the table without enough heat. Use pasteurised egg; do not serve it raw to young children, pregnant women, older people or anyone who is ill.',
    'egg undercooked': () =>
      'As written, the egg is not heated enough to be safe. Do not serve it before the temperature or the time is put right.',
    'hot sugar': (t) =>
      `Sugar above ${t(100)} burns deeply and sticks: dry tools, long sleeves, cold water at hand, nobody behind you.`,
    'hot fat': () => 'Hot fat burns and may catch fire: no water near it, a lid at hand, never leave it.',
    cooling: (t) =>
      `Cool perishable mixtures from ${t(57)} to ${t(21)} within 2 hours, and to ${t(5)} within 6 hours in all: shallow trays, an ice bath, stirring.`,
    'cold storage': (t) =>
      `Keep at ${t(5)} or colder, except where the formula says otherwise, and mark with the day it was made.`,
    'raw flour': () => 'Raw flour and frozen berries may carry germs: heat them through, or buy them heat-treated.',
    alcohol: () => 'Some alcohol is left in what is served: say so to guests.',
    'no plan': () =>
      'This card is a working aid, not a food-safety plan. The local food code and the advice of a licensed professional come first. Allergens and nutrition are computed from a catalogue: check the labels of what you really use.',
  },
};

function step(w: StepWords): Phrase {
  if (w.doing !== null) return sentence(w.doing);
  if (w.verb === 'line' && w.into?.vessel) {
    return sentence(
      'line the',
      name(w.into.text),
      w.operands.length > 0 ? join(['with', terms(w.operands)]) : null,
      w.for ? stay(w.for) : null,
      named(w),
    );
  }
  const verb = w.verb === 'check' ? 'check that it reads' : w.verb;
  return sentence(
    verb,
    terms(w.operands),
    w.each ? amount(w.each) : null,
    w.check ? temperature(w.check) : null,
    party(w.verb === 'add' && !w.into?.vessel ? 'to' : 'into', w.into, w),
    party('over', w.over, w),
    party('in', w.inside, w),
    w.pieces ? `into ${w.pieces}` : null,
    w.with.length > 0 ? join(['with', terms(w.with)]) : null,
    w.additions ? `in ${w.additions.count} ${w.additions.single ? 'addition' : 'additions'}${series(w.additions.tools)}` : null,
    w.turns ? `in ${w.turns.count} turns${series(w.turns.kinds)}` : null,
    w.tool ? withTool(w.tool) : null,
    target(w),
    w.at ? join(['at', temperature(w.at)]) : null,
    w.atRoom ? 'at room temperature' : null,
    w.medium ? (media[w.medium] ?? `in ${w.medium}`) : null,
    w.level ? `on ${w.level} ${mixing.has(w.verb) ? 'speed' : 'heat'}` : null,
    w.using ? `using the ${w.using}` : null,
    w.for ? stay(w.for) : null,
    w.until ? join(['until', sign(w.until)]) : null,
    w.whileWhipping ? 'while whipping' : null,
    w.losing ? `, losing ${w.losing}` : null,
    named(w),
  );
}

/** `for 4 h`, but `overnight`. */
const stay = (words: string): Phrase => (words.startsWith('overnight') ? [time(words)] : join(['for', time(words)]));

const named = (w: StepWords): Bit => (w.as ? join([':', name(`“${w.as}”`)]) : null);

const terms = (items: readonly Term[]): Bit => (items.length === 0 ? null : list(items.map(term), 'and'));

function term(item: Term): Phrase {
  const words = name(item.text);
  if (item.part === 'quantity' && item.amount) return join([amount(item.amount), 'of', words]);
  if (item.part === 'rest') return join(['the rest of', words, measured(item)]);
  if (item.part !== null && typeof item.part === 'object')
    return join([item.part.fraction === 0.5 ? 'half of' : `${fraction(item.part.fraction)} of`, words, measured(item)]);
  return join([words, measured(item)]);
}

const measured = (item: Term): Bit => (item.amount ? amount(`(${item.amount})`) : null);

function party(word: string, item: Term | null, w: StepWords): Bit {
  if (!item) return null;
  if (item.vessel === null) return join([word, term(item)]);
  return w.each ? join([word, 'each', name(item.text)]) : join([word, 'the', name(item.text)]);
}

function target(w: StepWords): Bit {
  if (!w.to) return null;
  if (w.to.kind === 'peak') return join(['to', sign(`${w.to.peaks.join('–')} peaks`)]);
  return join(['to', w.to.kind === 'temperature' ? temperature(w.to.text) : amount(w.to.text)]);
}

const series = (names: readonly string[]): string =>
  names.length === 0
    ? ''
    : names.length === 1
      ? `: ${names[0]}`
      : `: ${names.slice(0, -1).join(', ')}, then ${names[names.length - 1]}`;

/** Tools of the vocabulary get an article; what a formula quotes stands as written. */
const withTool = (tool: string): string =>
  tool === 'hands'
    ? 'by hand'
    : !toolWords.has(tool)
      ? `with ${tool}`
      : /^[aeiou]/iu.test(tool)
        ? `with an ${tool}`
        : `with a ${tool}`;

function fraction(value: number): string {
  for (const under of [3, 4, 5, 6, 8]) {
    const over = Math.round(value * under);
    if (over > 0 && Math.abs(over / under - value) < 1e-3) return `${over}/${under}`;
  }
  return String(Math.round(value * 1000) / 1000);
}

function attribute(a: AttributeWords): string {
  if (a.kind === 'share') return `${a.percent} ${a.of}`;
  if (a.kind === 'pH') return `pH ${a.value}`;
  if (a.kind === 'brix') return `${a.value} °Bx`;
  if (a.kind === 'bloom') return `${a.value} bloom`;
  return a.kind === 'phase' ? a.phase : a.state;
}

const toolWords: ReadonlySet<string> = new Set(tools.map(({ word }) => word));

const mixing: ReadonlySet<string> = new Set(['mix', 'whisk', 'stir', 'whip', 'blend', 'knead', 'cream', 'combine', 'smooth']);

const plural = (noun: string): string => (/(?:s|sh|ch|x)$/u.test(noun) ? `${noun}es` : `${noun}s`);

const nouns: ReadonlySet<string> = new Set([
  'ring',
  'tart',
  'cylinder',
  'cone',
  'sphere',
  'half-sphere',
  'frame',
  'tray',
  'bar',
  'cube',
  'glass',
  'jar',
  'cup',
  'bowl',
  'dish',
  'ramekin',
  'mould',
  'tin',
  'tart ring',
  'sheet',
  'mat',
  'pan',
  'saucepan',
  'piping bag',
  'siphon',
  'box',
  'plate',
  'portion',
  'slice',
  'piece',
]);

const media: Readonly<Record<string, string>> = {
  'ice bath': 'in an ice bath',
  'water bath': 'in a water bath',
  fridge: 'in the fridge',
  freezer: 'in the freezer',
  'blast chiller': 'in the blast chiller',
  oven: 'in the oven',
};

const allergens: Readonly<Record<string, string>> = {
  'brazil-nut': 'Brazil nut',
  nuts: 'nuts',
  peanut: 'peanuts',
  sulphite: 'sulphites',
  mollusc: 'molluscs',
  crustacean: 'crustaceans',
  soy: 'soya',
};
