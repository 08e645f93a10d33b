/** What a card says: the published JSON, its marks and cautions, other choices, data for machines, Markdown, and languages. */
import { createRequire } from 'node:module';
import Ajv from 'ajv';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import type { Recipe, WithContext } from 'schema-dts';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { describe, expect, it } from 'vitest';
import { cardHtml, cardJson, cardMarkdown, recipeOf } from '../../compiler/src/card/index.ts';
import { card, date, samples } from './support.ts';

/** Comes without types. */
const jsonld = createRequire(import.meta.url)('jsonld') as {
  expand(data: object, options: { documentLoader(url: string): Promise<object> }): Promise<Record<string, unknown>[]>;
};

describe('card --to json', () => {
  const range = { type: ['array', 'null'], items: { type: 'number' }, minItems: 2, maxItems: 2 };
  const nullable = (type: string) => ({ type: [type, 'null'] });
  const closed = (properties: object) => ({
    type: 'object',
    additionalProperties: false,
    required: Object.keys(properties),
    properties,
  });
  const facts = closed(
    Object.fromEntries(
      ['kJ', 'kcal', 'fat', 'saturates', 'carbohydrate', 'sugars', 'protein', 'salt'].map((name) => [name, nullable('number')]),
    ),
  );
  const shape = closed({
    version: { const: 1 },
    file: { type: 'string' },
    formula: { type: 'string' },
    by: nullable('string'),
    edition: nullable('string'),
    choices: { type: 'object', additionalProperties: { type: 'string' } },
    language: { type: 'string' },
    units: { type: 'string' },
    checked: { type: 'boolean' },
    diagnostics: { type: 'array' },
    allowed: {
      type: 'array',
      items: closed({
        file: { type: 'string' },
        line: { type: 'integer' },
        code: { type: 'string' },
        reason: nullable('string'),
      }),
    },
    factor: { type: 'number', exclusiveMinimum: 0 },
    makes: closed({
      text: { type: 'string' },
      count: nullable('number'),
      noun: nullable('string'),
      grams: nullable('number'),
      millilitres: nullable('number'),
    }),
    components: {
      type: 'array',
      minItems: 1,
      items: closed({
        name: { type: 'string' },
        from: nullable('string'),
        grams: nullable('number'),
        ingredients: {
          type: 'array',
          items: closed({
            line: { type: 'integer', minimum: 1 },
            name: { type: 'string' },
            kind: nullable('string'),
            exactGrams: nullable('number'),
            grams: nullable('number'),
            written: { type: 'string', minLength: 1 },
            percent: nullable('number'),
            notes: { type: 'array', items: { type: 'string' } },
          }),
        },
        steps: {
          type: 'array',
          items: closed({
            line: { type: 'integer', minimum: 1 },
            verb: { type: 'string' },
            text: { type: 'string', pattern: '\\.$' },
            celsius: range,
            seconds: range,
            critical: { type: 'boolean' },
            waiting: { type: 'boolean' },
            notes: { type: 'array', items: { type: 'string' } },
          }),
        },
      }),
    },
    compositionPercent: { type: 'object', additionalProperties: { type: 'number' } },
    allergens: closed({
      contains: { type: 'array', items: { type: 'string' } },
      unknown: { type: 'array', items: { type: 'string' } },
    }),
    nutrition: closed({ per100g: facts, perPortion: { anyOf: [facts, { type: 'object', maxProperties: 0 }] } }),
    keeps: nullable('string'),
    cautions: { type: 'array', minItems: 1, items: { type: 'string' } },
  });
  const fits = new Ajv({ allowUnionTypes: true, strictTuples: false }).compile(shape);

  it.each(samples)('has the published shape for %s', (name) => {
    const data = JSON.parse(JSON.stringify(cardJson(card(name))));
    fits(data);
    expect(fits.errors).toBeNull();
    expect(data.allergens.contains.length + data.allergens.unknown.length).toBeGreaterThan(0);
    const shares = data.components
      .flatMap((component: { ingredients: { percent: number | null }[] }) => component.ingredients)
      .map(({ percent }: { percent: number | null }) => percent ?? 0);
    expect(shares.reduce((sum: number, share: number) => sum + share, 0)).toBeGreaterThan(99);
  });

  it('puts the assembly last, bases before what takes them, and names where they are from', () => {
    const { components } = card('harbour-entremets.nappe');
    expect(components.map(({ name, from }) => [name, from])).toEqual([
      ['raspberry insert', null],
      ['crème anglaise', 'samples/bases.nappe'],
      ['chocolate mousse', null],
      ['almond sponge', 'samples/bases.nappe'],
      ['cocoa mirror glaze', 'samples/bases.nappe'],
      ['assembly', null],
    ]);
    expect(components.flatMap(({ steps }) => steps.map(({ number }) => number))).toEqual(
      components.flatMap(({ steps }) => steps).map((_, index) => index + 1),
    );
  });
});

describe('marks', () => {
  const hot = {
    text: `formula Hot custard
  makes 800 g
component custard
  250 g  whole milk
  100 g  egg yolk
   80 g  caster sugar
  whisk egg yolk, caster sugar as liaison
  heat whole milk to 80-85 °C
  temper whole milk into liaison
  cook to 82-84 °C until nappe
component whipped cream
  400 g  cream, 35 % fat
  whip to soft peak
assembly
  fold whipped cream into custard in 3 additions: whisk, spatula
`,
  };

  it('a formula with errors as not checked through, at the top, with the errors', () => {
    const made = card(hot);
    expect(made.checked).toBe(false);
    const errors = made.diagnostics.filter(({ severity }) => severity === 'error');
    expect(errors.map(({ code }) => code)).toContain('fold-too-warm');
    const html = cardHtml(made);
    expect(html.indexOf('Not checked through')).toBeGreaterThan(0);
    expect(html.indexOf('Not checked through')).toBeLessThan(html.indexOf('<h1'));
    expect(html).toContain('<code>fold-too-warm</code>');
    expect(cardMarkdown(made)).toMatch(/^\*\*NOT CHECKED THROUGH\*\*/u);
    expect(cardHtml(card('hojicha-bavarois.nappe'))).not.toContain('Not checked through');
  });

  it('safety codes allowed by hand, with the reason', () => {
    const made = card({
      text: 'formula Mousse\n  makes 500 g\n  keeps 1 d at 0-4 °C\n  300 g  cream, 35 % fat, 4 °C\n  // allow raw-egg: eggs of our own hens, eaten the same day\n  100 g  egg white, raw\n  100 g  caster sugar\n  whip egg white, caster sugar to medium peak as meringue\n  whip cream to soft peak\n  fold meringue into cream in 3 additions: whisk, spatula\n',
    });
    expect(made.allowed.map(({ code, reason }) => [code, reason])).toEqual([
      ['raw-egg', 'eggs of our own hens, eaten the same day'],
    ]);
    expect(cardHtml(made)).toContain('eggs of our own hens, eaten the same day');
    expect(made.cautions.join(' ')).toMatch(/reaches the table without enough heat/u);
  });

  it('says on every card that it is no food-safety plan, and defers to code and professional', () => {
    for (const name of samples)
      for (const detail of ['brief', 'full'] as const) {
        const made = card(name, { detail });
        for (const text of [cardHtml(made), cardMarkdown(made)])
          expect(text).toMatch(
            /not a food-safety plan\. The local food code and the advice of a licensed professional come first/u,
          );
      }
  });

  it('cautions where there is hot sugar, egg, cold chain', () => {
    expect(card('blackcurrant-mousse.nappe').cautions.join(' ')).toMatch(/Sugar above 100 °C burns/u);
    expect(card('hojicha-bavarois.nappe').cautions.join(' ')).toMatch(
      /Contains egg.*57 °C to 21 °C within 2 hours.*5 °C or colder/u,
    );
    expect(card('sable-diamonds.nappe').cautions.join(' ')).not.toMatch(/Sugar above|57 °C/u);
  });
});

describe('temperatures', () => {
  it('are critical for a reason, and only then', () => {
    const steps = card('hojicha-bavarois.nappe').components.flatMap(({ steps: own }) => own);
    expect(steps.filter(({ critical }) => critical).map(({ verb, celsius }) => [verb, celsius])).toEqual([
      ['cook', [82, 84]],
      ['cool', [30, 34]],
      ['chill', [4, 4]],
    ]);
    for (const { critical, reasons, celsius } of steps) if (critical) expect(reasons.length > 0 && celsius !== null).toBe(true);
  });

  it('draw one line from the milk to the glass, the fold in four stairs, each cooler', () => {
    const { temperature } = card('hojicha-bavarois.nappe');
    const main = temperature?.strands.at(-1);
    expect(main?.moves.map(({ step }) => step)).toEqual([2, 3, 4, 6, 7, 8, 9, 10, 12, 13, 14]);
    const fold = main?.moves.find(({ additions }) => additions.length > 1);
    const middles = fold?.additions.map(([low, high]) => (low + high) / 2) ?? [];
    expect(middles).toHaveLength(4);
    expect(middles).toEqual([...middles].sort((a, b) => b - a));
    expect(temperature?.points.map(({ seconds }) => seconds)).toEqual(
      [...(temperature?.points ?? [])].map(({ seconds }) => seconds).sort((a, b) => a - b),
    );
    const html = cardHtml(card('hojicha-bavarois.nappe'));
    expect(html).toMatch(/<desc[^>]*>Step 2: .*Step 12: .* → .* → .*<\/desc>/u);
    expect(html.includes('5–57\u00a0°C: bacteria grow')).toBe(true);
  });
});

describe('other choices', () => {
  it('say what each other value changes', () => {
    const { differences } = card('hojicha-bavarois.nappe');
    expect(differences.map(({ choice, value }) => `${choice}: ${value}`)).toEqual([
      'serving: mould',
      'serving: cut',
      'flavour: raspberry',
    ]);
    expect(differences[1]?.changes).toContainEqual({ what: 'gelatin', now: '9 g', other: '13 g' });
    expect(differences[1]?.changes).toContainEqual({ what: 'Step 10', now: 'Cool to 30–34 °C.', other: 'Cool to 27–30 °C.' });
    expect(differences[0]?.changes).toContainEqual({
      what: 'Step 13',
      now: 'Portion 100 ml into each glass.',
      other: 'Pour into the rings.',
    });
    expect(differences[2]?.changes).toContainEqual({ what: 'roasted green tea', now: '12 g', other: 'left out' });
  });
});

describe('nutrition', () => {
  it('is the EU table in order, or what can be computed of the US panel on US units', () => {
    const rows = (units: 'metric' | 'us'): string[] =>
      [
        ...cardMarkdown(card('hojicha-bavarois.nappe', { units })).matchAll(
          /^\| (Energy|Fat|of which \w+|Carbohydrate|Fibre|Protein|Salt|Calories|Total \w+|Saturated Fat|Sodium|Dietary Fiber) /gmu,
        ),
      ].map(([, row]) => row ?? '');
    // Regulation (EU) 1169/2011, Annex XV.
    expect(rows('metric')).toEqual([
      'Energy',
      'Fat',
      'of which saturates',
      'Carbohydrate',
      'of which sugars',
      'Fibre',
      'Protein',
      'Salt',
    ]);
    // 21 CFR 101.9(c).
    expect(rows('us')).toEqual([
      'Calories',
      'Total Fat',
      'Saturated Fat',
      'Sodium',
      'Total Carbohydrate',
      'Dietary Fiber',
      'Total Sugars',
      'Protein',
    ]);
  });

  it('of sugar alone is what the factors say', () => {
    // Annex XIV: carbohydrate 17 kJ and 4 kcal a gram; SR28 19335 has 99.98 g of it in 100 g.
    const { nutrition } = card({ text: 'formula Sugar\n  makes 100 g\n  100 g  caster sugar\n  sift caster sugar\n' });
    expect(nutrition.per100g?.kJ).toBeCloseTo(1700, -1);
    expect(nutrition.per100g?.kcal).toBeCloseTo(400, -1);
  });

  it('is left out where the composition of something is not known, and says of what', () => {
    const made = card({
      text: 'formula Odd\n  makes 200 g\n  100 g  cream, 35 % fat\n  100 g  grandmother dust\n  mix cream, grandmother dust\n',
    });
    expect(made.nutrition.per100g).toBeNull();
    expect(made.allergens.unknown).toEqual(['grandmother dust']);
    expect(cardHtml(made)).toContain('grandmother dust</bdi>.');
    expect(cardJson(made)).toMatchObject({ nutrition: { per100g: { kJ: null, fat: null }, perPortion: {} } });
  });
});

describe('schema.org data', () => {
  // The types of schema-dts: this does not compile where the card's data leaves them.
  const recipe: WithContext<Recipe> = recipeOf(card('hojicha-bavarois.nappe'));

  it('is a Recipe that a JSON-LD processor expands, with nothing lost', async () => {
    // schema.org's own context maps every term into its vocabulary; no test reaches the network.
    const documentLoader = async (url: string) => ({
      contextUrl: null,
      documentUrl: url,
      document: { '@context': { '@vocab': 'https://schema.org/' } },
    });
    const [expanded] = await jsonld.expand(recipe, { documentLoader });
    const of = (name: string): unknown[] => (expanded?.[`https://schema.org/${name}`] ?? []) as unknown[];
    expect(expanded?.['@type']).toEqual(['https://schema.org/Recipe']);
    expect(of('recipeIngredient')).toHaveLength(8);
    expect(of('recipeInstructions')).toHaveLength(3);
    expect(of('name')).toEqual([{ '@value': 'Hojicha bavarois' }]);
  });

  it('uses properties of Recipe and its kin alone', () => {
    // schema.org/Recipe, HowTo, CreativeWork; HowToSection, HowToStep; NutritionInformation.
    expect(Object.keys(recipe).sort()).toEqual([
      '@context',
      '@type',
      'author',
      'dateModified',
      'inLanguage',
      'name',
      'nutrition',
      'recipeIngredient',
      'recipeInstructions',
      'recipeYield',
      'totalTime',
      'version',
    ]);
    expect(recipeOf(card('hojicha-bavarois.nappe')).totalTime).toMatch(/^P(\d+D)?T(\d+H)?(\d+M)?$/u);
  });

  it('stands in the page as it is', () => {
    const [, json = ''] =
      /<script type="application\/ld\+json">(.*?)<\/script>/su.exec(cardHtml(card('hojicha-bavarois.nappe'))) ?? [];
    expect(JSON.parse(json)).toEqual(JSON.parse(JSON.stringify(recipe)));
  });
});

describe('Markdown', () => {
  it.each(samples)('of %s is read back as headings, tables and lists, and nothing raw', (name) => {
    const tree = unified()
      .use(remarkParse)
      .use(remarkGfm)
      .parse(cardMarkdown(card(name)));
    const seen: Record<string, number> = {};
    visit(tree, (node) => {
      seen[node.type] = (seen[node.type] ?? 0) + 1;
    });
    expect(seen.html).toBeUndefined();
    expect(seen.table).toBeGreaterThanOrEqual(1);
    const items = card(name).components.reduce((sum, { steps }) => sum + steps.length, 0);
    expect(seen.listItem).toBeGreaterThanOrEqual(items);
  });
});

describe('languages', () => {
  it('translate labels, steps and catalogue names, and keep house names and notes', () => {
    const french = cardMarkdown(card('hojicha-bavarois.nappe', { language: 'fr' }));
    expect(french).toContain('Cuire à **82–84 °C** _jusqu’à la nappe_.');
    expect(french).toContain('lait entier, 4 °C');
    expect(french).toContain('roasted green tea');
    expect(french).toContain('A finger drawn across the spoon leaves a clean track.');
    expect(french).toContain('12 verrines de 100 ml');
    expect(french).not.toMatch(/\b(?:Heat|Cook|Serve|Keeps|Allergens|whole milk)\b/u);
    const german = cardMarkdown(card('hojicha-bavarois.nappe', { language: 'de' }));
    expect(german).toContain('Vollmilch (240 g) und Sahne (160 g) auf 80–85 °C erhitzen: „dairy“.');
    expect(card('hojicha-bavarois.nappe', { language: 'xx' }).language).toBe('en');
  });
});

describe('details', () => {
  it('brief leaves out notes and reasons; full has them', () => {
    const [brief, full] = [
      cardHtml(card('hojicha-bavarois.nappe', { detail: 'brief' })),
      cardHtml(card('hojicha-bavarois.nappe', { detail: 'full' })),
    ];
    for (const text of ['A finger drawn across', 'curdles a few degrees above', '<svg', 'With other choices']) {
      expect([full.includes(text), brief.includes(text)], text).toEqual([true, false]);
    }
    for (const html of [brief, full]) {
      for (const text of ['82–84\u00a0°C', 'Version <bdi>4</bdi>', date]) expect(html.includes(text), text).toBe(true);
    }
  });
});
