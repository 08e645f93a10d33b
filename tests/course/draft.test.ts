/** Drafts of fifteen recipes written for the purpose: every quantity right, no sentence lost, and every draft parses. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import { format, parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { draftOf, type Found, foundInData, foundInPage, foundInText } from '../../compiler/src/draft/index.ts';
import { folderWith, nappe } from '../cli/nappe.ts';

const folder = fileURLToPath(new URL('../corpus/drafts', import.meta.url));

interface Expected {
  /** Quantity as the notation writes it, and name, in the order of the recipe; worked out by hand from the recipe. */
  readonly weighed: readonly (readonly [string, string])[];
  /** The sentences that become steps, with those steps; every other sentence stays as it is. */
  readonly understood: Readonly<Record<string, readonly string[]>>;
  readonly makes: string | null;
}

/**
 * Metric spoons of French and German are 15 ml and 5 ml (common practice, no source). A quart is 4 cups (NIST Handbook 44,
 * Appendix C); a stick of butter is 8 tablespoons (common practice, no source); a Pfund is 500 g (German customs union of 1854, from memory).
 */
const recipes: Readonly<Record<string, Expected>> = {
  'pouring-custard.txt': {
    makes: '600 g',
    weighed: [
      ['400 g', 'whole milk'],
      ['100 g', 'egg yolks'],
      ['80 g', 'caster sugar'],
      ['1', 'vanilla pod'],
      ['some', 'salt'],
    ],
    understood: {
      'Heat the milk to 80-85 °C.': ['heat whole milk to 80-85 °C'],
      'Whisk the egg yolks and caster sugar until pale.': ['whisk egg yolks, caster sugar until pale'],
    },
  },
  'quay-lemon-curd.md': {
    makes: '6 portions',
    weighed: [
      ['120 g', 'lemon juice'],
      ['3', 'large eggs'],
      ['150 g', 'caster sugar'],
      ['110 g', 'unsalted butter'],
      ['2 tsp', 'lemon zest'],
    ],
    understood: {
      'Whisk the eggs, sugar and lemon juice in a bowl.': ['whisk large eggs, caster sugar, lemon juice'],
    },
  },
  'harbour-brownies.txt': {
    makes: '16 pc',
    weighed: [
      ['12 tbsp', 'butter'],
      ['8 oz', 'dark chocolate'],
      ['1 1/4 cup', 'granulated sugar'],
      ['3', 'eggs'],
      ['3/4 cup', 'all-purpose flour'],
      ['1/4 cup', 'cocoa powder'],
      ['1 tsp', 'vanilla extract'],
      ['1/2 tsp', 'salt'],
    ],
    understood: {
      'Melt the butter and dark chocolate in a medium saucepan over low heat, then cool to 95 °F.': [
        'melt butter, dark chocolate on low',
        'cool to 95 °F',
      ],
    },
  },
  'flaky-dough.md': {
    makes: '2 lb',
    weighed: [
      ['1 lb', 'bread flour'],
      ['12 floz', 'cold water'],
      ['2 tbsp', 'sugar'],
      ['2 tsp', 'fine salt'],
      ['1 lb', 'butter'],
      ['4 cup', 'ice'],
    ],
    understood: {
      'Mix the flour, sugar and salt.': ['mix bread flour, sugar, fine salt'],
      'Add the cold water.': ['add cold water'],
      'Knead for 3 minutes until smooth.': ['knead for 3 min until smooth'],
      'Rest for 30 minutes in the fridge.': ['rest for 30 min in fridge'],
    },
  },
  'creme-du-quai.txt': {
    makes: '6 portions',
    weighed: [
      ['50 cl', 'lait entier'],
      ['4', "jaunes d'œufs"],
      ['100 g', 'sucre en poudre'],
      ['40 g', 'maïzena'],
      ['1 pc', 'vanille'],
      ['25 g', 'beurre doux'],
      ['some', 'sel'],
    ],
    understood: {
      'Porter le lait à ébullition.': ['boil lait entier'],
      "Fouetter les jaunes d'œufs et le sucre jusqu'à ce que le mélange blanchisse.": [
        "whisk jaunes d'œufs, sucre en poudre until le mélange blanchisse",
      ],
    },
  },
  'sables-du-port.md': {
    makes: null,
    weighed: [
      ['250 g', 'farine'],
      ['125 g', 'beurre'],
      ['22.5 ml', 'lait'],
      ['10 ml', 'levure chimique'],
      ['80 g', 'sucre glace'],
      ['30 ml', 'miel'],
      ['some', 'amandes'],
    ],
    understood: { 'Mélanger la farine et le sucre glace.': ['mix farine, sucre glace'] },
  },
  'kuchen-am-kai.txt': {
    makes: '12 portions',
    weighed: [
      ['250 g', 'Mehl'],
      ['200 g', 'Zucker'],
      ['3', 'Eier'],
      ['250 g', 'Butter'],
      ['1/4 l', 'Milch'],
      ['10 ml', 'Backpulver'],
      ['45 ml', 'Öl'],
      ['some', 'Salz'],
      ['some', 'Zimt'],
      ['some', 'Puderzucker'],
    ],
    understood: {},
  },
  'sosse-der-spaetschicht.md': {
    makes: null,
    weighed: [
      ['500 ml', 'Vollmilch'],
      ['1', 'Becher Sahne'],
      ['4', 'Eigelb'],
      ['60-70 g', 'Zucker'],
      ['22.5 ml', 'Speisestärke'],
      ['5 pc', 'Gelatine'],
    ],
    understood: {},
  },
  'evening-mousse.html': {
    makes: '8 portions',
    weighed: [
      ['200 g', 'dark chocolate'],
      ['350 g', 'cream'],
      ['240 ml', 'whole milk'],
      ['4 pc', 'gelatin'],
      ['40 g', 'cold water'],
      ['1 1/2 tbsp', 'rum'],
    ],
    understood: {
      'Bloom the gelatin in the cold water for 10 minutes.': ['bloom gelatin in cold water for 10 min'],
      'Heat the milk to 70 °C and add the gelatin.': ['heat whole milk to 70 °C', 'add gelatin'],
      'Pour it over the chocolate.': ['pour over dark chocolate'],
      'Whip the cream to soft peaks.': ['whip cream to soft peak'],
    },
  },
  'two-sections.json': {
    makes: '4 portions',
    weighed: [
      ['300 ml', 'double cream'],
      ['2 tbsp', 'icing sugar'],
      ['250 g', 'sponge fingers'],
      ['1', 'punnet strawberries'],
      ['150 ml', 'sherry'],
    ],
    understood: { 'Whip the double cream to medium peaks.': ['whip double cream to medium peak'] },
  },
  'pier-flan.html': {
    makes: '8 parts',
    weighed: [
      ['1 l', 'lait entier'],
      ['4', 'œufs'],
      ['200 g', 'sucre'],
      ['90 g', 'fécule de maïs'],
      ['5 ml', 'extrait de vanille'],
    ],
    understood: {
      'Chauffer le lait à 90 °C.': ['heat lait entier to 90 °C'],
      'Fouetter les œufs et le sucre.': ['whisk œufs, sucre'],
    },
  },
  'two-storeys.md': {
    makes: '8 glasses of 120 ml',
    weighed: [
      ['400 g', 'cream'],
      ['60 g', 'caster sugar'],
      ['6 g', 'gelatin'],
      ['36 g', 'cold water'],
      ['300 g', 'raspberry purée'],
      ['5 g', 'gelatin'],
      ['30 g', 'cold water'],
    ],
    understood: {
      'Bloom the gelatin in the cold water for 10 min.': ['bloom gelatin in cold water for 10 min'],
      'Heat the cream and caster sugar to 60 °C.': ['heat cream, caster sugar to 60 °C'],
      'Add the gelatin.': ['add gelatin'],
      'Cool to 25 °C in an ice bath.': ['cool to 25 °C in ice bath'],
      'Heat the raspberry purée to 50-55 °C.': ['heat raspberry purée to 50-55 °C'],
      'Stir in the gelatin.': ['add gelatin'],
      'Pour the panna cotta into the glasses.': ['pour panna cotta into glass'],
    },
  },
  'either-measure.txt': {
    makes: null,
    weighed: [
      ['225 g', 'butter'],
      ['110 g', 'caster sugar'],
      ['340 g', 'plain flour'],
      ['60 g', 'rice flour'],
      ['50 g', 'milk chocolate'],
      ['1 tsp', 'salt'],
      ['some', 'Demerara sugar'],
    ],
    understood: {
      'Cream the butter and caster sugar until light.': ['cream butter, caster sugar until light'],
      'Add the plain flour, rice flour and salt.': ['add plain flour, rice flour, salt'],
    },
  },
  'odd-marks.txt': {
    makes: null,
    weighed: [
      ['1/2 kg', 'dark chocolate'],
      ['2 1/2-3 dl', 'cream'],
      ['1250 g', 'sugar'],
      ['0.5 l', 'water'],
      ['2-3 tbsp', 'honey'],
      ['1', 'egg yolk'],
      ['10 g', 'cream of tartar'],
      ['30 g', 'butter'],
    ],
    understood: { 'Boil the water & sugar.': ['boil water, sugar'] },
  },
  'no-headings.txt': {
    makes: null,
    weighed: [
      ['200 g', 'caster sugar'],
      ['60 g', 'water'],
      ['120 g', 'cream'],
      ['some', 'Salt'],
    ],
    understood: { 'Combine the caster sugar and water.': ['combine caster sugar, water'] },
  },
};

test('every recipe of the corpus is expected something of', () => {
  expect(readdirSync(folder).sort()).toEqual(Object.keys(recipes).sort());
  expect(Object.keys(recipes)).toHaveLength(15);
});

describe.each(Object.entries(recipes))('%s', (name, { weighed, understood, makes }) => {
  const source = readFileSync(join(folder, name), 'utf8');
  const found = foundIn(name, source);
  const draft = draftOf(found);
  const { lines } = parse(draft.text);

  test('parses, and is laid out canonically', () => {
    expect(lines.flatMap(({ problems }) => problems)).toEqual([]);
    expect(format(parse(draft.text))).toBe(draft.text);
  });

  test('every quantity is right', () => {
    const ingredients = lines.flatMap((line) => (line.kind === 'ingredient' ? [line] : []));
    expect(
      ingredients.map(({ text, quantity, name: { text: called } }) => [text.slice(quantity.start, quantity.end), called]),
    ).toEqual(weighed);
  });

  test('makes what it made', () => {
    const header = lines.flatMap((line) => (line.kind === 'header' && line.word === 'makes' ? [line] : []))[0];
    expect(header ? header.text.slice(header.yield.start, header.yield.end) : null).toBe(makes);
  });

  test('no sentence is lost: each is a step that says it, or stands word for word', () => {
    const steps = lines.flatMap((line) => (line.kind === 'step' ? [line.text.trim()] : []));
    const kept = lines.flatMap((line) => (line.kind === 'step' && line.doing ? [line.doing.text] : []));
    const expectedSteps = sentencesIn(found).map((sentence) => understood[sentence] ?? [`do "${curved(sentence)}"`]);
    expect(steps).toEqual(expectedSteps.flat());
    const open = draft.open.map(({ message }) => message);
    for (const sentence of kept) expect(open.some((message) => curved(message).endsWith(sentence))).toBe(true);
    // What the sentences are is not the draft's word alone: every word of the source's method is in one of them.
    for (const sentence of Object.keys(understood)) expect(source.split(/\s+/).join(' ')).toContain(sentence);
  });

  test('every word of the file is in the draft, but for headings, measures and what was understood', () => {
    if (!/\.(?:txt|md)$/.test(name)) return;
    const said = `${draft.text} ${Object.keys(understood).join(' ')}`.toLowerCase();
    const words = curved(source).match(/\p{L}{4,}/gu) ?? [];
    expect(words.filter((word) => !said.includes(word.toLowerCase()) && !setAside.test(word))).toEqual([]);
  });

  test('every word of the method is in a step, a note below it, or understood', () => {
    const said = `${draft.text} ${Object.keys(understood).join(' ')}`;
    const words = found.parts.flatMap(({ prose }) => prose.flatMap(({ text }) => curved(text).split(/\s+/)));
    expect(words.filter((word) => !said.includes(word))).toEqual([]);
  });
});

test.each([
  'Add some milk.',
  'Add an egg.',
  'Add half the milk.',
  'Add the remaining milk.',
  'Ajouter du lait.',
  'Heat the oven to 180 °C.',
  'Add the butter.',
  'Do not heat the milk.',
  'Heat the milk until it is 80 °C, whisking, and keep two spoons aside.',
  'Whisk it.',
])('a sentence that may mean something else stays as it is: %s', (sentence) => {
  const { text } = draftOf(foundInText(`Trial\n\n500 g milk\n3 eggs\n200 g lait\n\nMethod\n${sentence}\n`));
  expect(text).toContain(`do "${sentence}"`);
  expect(parse(text).lines.filter(({ kind }) => kind === 'step')).toHaveLength(1);
});

describe('whatever is thrown at it', () => {
  const scrap = fc.oneof(
    fc.string(),
    fc.constantFrom(
      '2 1/2 ',
      '1,5 ',
      '½',
      'c. à s. ',
      'EL ',
      ' °C',
      '"',
      '//',
      '|',
      '- ',
      '# ',
      'Method\n',
      '\n',
      'heat ',
      'the milk ',
      'to 80 °C',
      '.',
      ' and ',
      '(',
      ')',
    ),
  );
  test('the draft parses, and words that are no markup stay', () => {
    fc.assert(
      fc.property(fc.array(scrap, { maxLength: 40 }), (parts) => {
        const { text } = draftOf(foundInText(parts.join('')));
        expect(parse(text).lines.flatMap(({ problems }) => problems)).toEqual([]);
        expect(format(parse(text))).toBe(text);
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ['one long line', `X\n\n1 g ${'('.repeat(60_000)}`],
    ['a sentence without end', `X\n\n1 g milk\n\nMethod\n${'Heat the milk, '.repeat(5_000)}`],
    ['numbers without end', `X\n1 g ${'1,1,'.repeat(20_000)}`],
  ])('%s still parses, whole', (_, text) => {
    const draft = draftOf(foundInText(text));
    expect(parse(draft.text).lines.flatMap(({ problems }) => problems)).toEqual([]);
    expect(draft.text.length).toBeGreaterThan(text.length - 100);
  });

  test('a page nested too deep holds no recipe', () => {
    expect(foundInPage(`${'<div>'.repeat(20_000)}<script type="application/ld+json">{"@type":"Recipe"}</script>`)).toBeNull();
  });

  test('data of any shape is a recipe or none', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.jsonValue(), fc.jsonValue(), (name, recipeIngredient, recipeInstructions) => {
        const found = foundInData(JSON.stringify({ '@type': 'Recipe', name, recipeIngredient, recipeInstructions }));
        expect(parse(draftOf(found as Found).text).lines.flatMap(({ problems }) => problems)).toEqual([]);
      }),
      { numRuns: 300 },
    );
    expect(foundInData('{"@type":"Cake"}')).toBeNull();
    expect(foundInData('{')).toBeNull();
    expect(foundInPage('<p>no data')).toBeNull();
  });
});

test('the command prints the draft, and lists on standard error what it did not understand', () => {
  const cwd = folderWith({
    'note.txt': 'Toast\n\n2 slices bread\n10 g butter\n\nSpread it as thick as you dare.\n',
    'page.html': '<p>x',
    'empty.txt': '\n',
  });
  const { status, out, err } = nappe(['draft', 'note.txt'], { cwd });
  expect(status).toBe(0);
  expect(out).toContain('do "Spread it as thick as you dare."');
  expect(err).toBe('nappe: note.txt:6: kept as it is: Spread it as thick as you dare.\n');
  for (const file of ['page.html', 'empty.txt', 'absent.txt']) {
    const refused = nappe(['draft', file], { cwd });
    expect({ file, status: refused.status, out: refused.out }).toEqual({ file, status: 2, out: '' });
    expect(refused.err).toMatch(/^nappe: \S+: .+\n$/);
  }
  expect(nappe(['draft', 'note.txt', '-o', 'note.txt'], { cwd }).status).toBe(2);
});

function foundIn(name: string, text: string): Found {
  if (name.endsWith('.json')) return foundInData(text) as Found;
  return name.endsWith('.html') ? (foundInPage(text) as Found) : foundInText(text);
}

/** Headings that name nothing, and words for measures. */
const setAside =
  /^(?:Directions|Ingr[eé]dients|Instructions|Method|Préparation|Zubereitung|Zutaten|Étapes|Yield|Serves|Pour|Portionen|personnes|Blatt|Pfund|Prise|bars|café|cuillères|cups|etwas|gousse|pieces|pinch|pincée|quart|quelques|soupe|sticks|teaspoon)$/u;

/** By a rule of the test's own: after a mark that ends one, before a capital. Headings of sections are comments. */
const sentencesIn = ({ parts }: Found): string[] =>
  parts.flatMap(({ prose }) =>
    prose.filter(({ text }) => !text.endsWith(':')).flatMap(({ text }) => text.split(/(?<=[.!?]) (?=\p{Lu})/u)),
  );

/** A double quote has no spelling inside quoted text of the notation. */
const curved = (text: string): string => text.replace(/"([^"]*)"/g, '“$1”');
