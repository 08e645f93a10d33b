/** Kinds of chocolate and cocoa. */
import type { Kind } from './kind.ts';
import { made, mixed, practice, recalled, row, sr28 } from './row.ts';

/**
 * Cocoa's carbohydrate that is neither sugar nor fibre is part starch, part polyphenols and acids: 60 % is counted as starch,
 * which gives cocoa powder 11.5 % (McCance & Widdowson prints 11.5, from memory).
 */
const dark = { fat: 'cocoaButter', sucrose: 1, starch: 0.6 } as const;

const halfDark = sr28('19902', [0.97, 4.88, 31.28, 61.17, 47.9, 7, 1.7], dark);
const midDark = sr28('19903', [1.25, 6.12, 38.31, 52.42, 36.71, 8, 1.9], dark);
const bitter = sr28('19904', [1.37, 7.79, 42.63, 45.9, 23.99, 10.9, 2.32], dark);
/** Milk fat and lactose of the next two rows: estimated from the milk solids that their protein implies. */
const milk = sr28(
  '19120',
  [1.5, 7.65, 29.66, 59.4, 51.5, 3.4, 1.78],
  { fat: 'cocoaButter', milkFat: 5.7, lactose: 8.2, sucrose: 1, starch: 0.2 },
  'milk fat and lactose estimated',
);
const white = sr28(
  '19087',
  [1.3, 5.87, 32.09, 59.24, 59, 0.2, 1.5],
  { fat: 'cocoaButter', milkFat: 6, lactose: 8.6, sucrose: 1 },
  'milk fat and lactose estimated',
);
const mass = sr28('19078', [1.34, 14.32, 52.31, 28.42, 0.91, 16.6, 3.6], { fat: 'cocoaButter', sucrose: 1, starch: 0.6 });
const powder = sr28('19165', [3, 19.6, 13.7, 57.9, 1.75, 37, 5.8], { fat: 'cocoaButter', sucrose: 0.5, starch: 0.6 });

export const chocolate: readonly Kind[] = [
  row(
    'dark chocolate',
    'chocolat noir',
    'chocolate, plain chocolate, bittersweet chocolate, dark couverture, dark chocolate couverture, couverture, couverture chocolate, dark couverture chocolate, chocolat',
    'solid',
    midDark,
    { density: 0.7, allergens: ['soy'], traits: ['dark chocolate'], pH: 5.5, saturated: 58, sodium: 10 },
  ),
  row('semisweet chocolate', 'chocolat noir à 50 %', 'semi-sweet chocolate, sweet dark chocolate', 'solid', halfDark, {
    density: 0.7,
    allergens: ['soy'],
    traits: ['dark chocolate'],
    pH: 5.6,
    saturated: 59,
    sodium: 24,
  }),
  row(
    'extra dark chocolate',
    'chocolat noir à 75 %',
    'extra-dark chocolate, bitter chocolate, extra bitter chocolate, extra-bitter chocolate',
    'solid',
    bitter,
    { density: 0.7, allergens: ['soy'], traits: ['dark chocolate'], pH: 5.4, saturated: 57.4, sodium: 20 },
  ),
  row(
    'milk chocolate',
    'chocolat au lait',
    'milk couverture, milk chocolate couverture, milk couverture chocolate',
    'solid',
    milk,
    { density: 0.7, allergens: ['milk', 'soy'], traits: ['milk chocolate'], pH: 6.2, saturated: 62.4, sodium: 79 },
  ),
  row(
    'white chocolate',
    'chocolat blanc',
    'white couverture, white chocolate couverture, white couverture chocolate, ivory chocolate',
    'solid',
    white,
    { density: 0.7, allergens: ['milk', 'soy'], traits: ['white chocolate'], pH: 6.4, saturated: 60.5, sodium: 90 },
  ),
  row(
    'blond chocolate',
    'chocolat blond',
    'blonde chocolate, caramelised white chocolate, caramelized white chocolate, gold chocolate, caramel chocolate, roasted white chocolate',
    'solid',
    made(
      'sucrose',
      { water: 1, milkFat: 7, cocoaButter: 28, otherSugars: 13, protein: 7.5, ash: 1.7 },
      `${practice}: white chocolate with browned milk`,
    ),
    { density: 0.7, allergens: ['milk', 'soy'], traits: ['white chocolate'], pH: 6.3, saturated: 61, sodium: 150 },
  ),
  row(
    'ruby chocolate',
    'chocolat ruby',
    '',
    'solid',
    made('sucrose', { water: 1, milkFat: 6.5, cocoaButter: 29.5, otherSugars: 10, protein: 7.5, fibre: 1.5, ash: 1.7 }, practice),
    { density: 0.7, allergens: ['milk', 'soy'], traits: ['white chocolate'], pH: 5.5, saturated: 61, sodium: 90 },
  ),
  row(
    'dark chocolate chips',
    'pépites de chocolat noir',
    'chocolate chips, chocolate chunks, dark chocolate chunks, chocolate drops, baking chips',
    'solid',
    halfDark,
    { density: 0.72, allergens: ['soy'], traits: ['dark chocolate'], pH: 5.6, saturated: 59, sodium: 11 },
  ),
  row('milk chocolate chips', 'pépites de chocolat au lait', 'milk chocolate chunks, milk chocolate drops', 'solid', milk, {
    density: 0.72,
    allergens: ['milk', 'soy'],
    traits: ['milk chocolate'],
    saturated: 62.4,
    sodium: 79,
  }),
  row('white chocolate chips', 'pépites de chocolat blanc', 'white chocolate chunks, white chocolate drops', 'solid', white, {
    density: 0.72,
    allergens: ['milk', 'soy'],
    traits: ['white chocolate'],
    saturated: 60.5,
    sodium: 90,
  }),
  row(
    'compound coating',
    'pâte à glacer',
    'coating chocolate, compound chocolate, pâte à glacer, cake coating, glazing paste, brown coating',
    'solid',
    made('sucrose', { water: 0.8, otherFat: 38, otherSugars: 4, starch: 2.5, protein: 4, fibre: 4.5, ash: 1.5 }, practice),
    { density: 0.7, allergens: ['milk', 'soy'], saturated: 75, sodium: 60 },
  ),
  row(
    'gianduja',
    'gianduja',
    'hazelnut gianduja, milk gianduja, gianduia',
    'solid',
    mixed(
      [
        [35, made('sucrose', { water: 0.5 }, practice)],
        [35, sr28('12122', [2.52, 15.03, 62.4, 17.6, 4.89, 9.4, 2.45], { sucrose: 0.9 })],
        [15, mass],
        [15, made('cocoaButter', {}, practice)],
      ],
      `${practice}: sugar, hazelnut, cocoa mass and butter 35:35:15:15`,
    ),
    { density: 0.75, allergens: ['hazelnut', 'milk', 'soy'], traits: ['nut paste'], saturated: 35, sodium: 5 },
  ),
  row(
    'chocolate hazelnut spread',
    'pâte à tartiner',
    'hazelnut spread, hazelnut chocolate spread',
    'paste',
    recalled('19125', [1.05, 5.41, 29.73, 62.16, 54.05, 5.4, 1.65], { sucrose: 0.9 }),
    { density: 1.2, allergens: ['hazelnut', 'milk', 'soy'], traits: ['nut paste'], saturated: 35, sodium: 41 },
  ),

  row(
    'cocoa mass',
    'pâte de cacao',
    'cocoa liquor, cacao mass, chocolate liquor, unsweetened chocolate, baking chocolate, cocoa paste, cacao paste',
    'solid',
    mass,
    { density: 0.7, traits: ['cocoa mass', 'dark chocolate'], pH: 5.4, saturated: 61.8, sodium: 24 },
  ),
  row(
    'cocoa butter',
    'beurre de cacao',
    'cacao butter',
    'solid',
    recalled('04501', [0, 0, 100, 0, 0, 0, 0], { fat: 'cocoaButter' }),
    { density: 0.9, traits: ['cocoa butter'], saturated: 59.7 },
  ),
  row(
    'cocoa butter powder',
    'beurre de cacao en poudre',
    'cryogenic cocoa butter, powdered cocoa butter',
    'powder',
    made('cocoaButter', {}, practice),
    { density: 0.5, traits: ['cocoa butter'], saturated: 59.7 },
  ),
  row(
    'coloured cocoa butter',
    'beurre de cacao coloré',
    'colored cocoa butter',
    'solid',
    made('cocoaButter', { ash: 4 }, practice),
    { density: 0.92, traits: ['cocoa butter'], saturated: 59.7 },
  ),
  row(
    'cocoa powder',
    'cacao en poudre',
    'cocoa, unsweetened cocoa powder, unsweetened cocoa, natural cocoa powder, natural cocoa, cacao powder, cacao',
    'powder',
    powder,
    { density: 0.35, traits: ['cocoa powder'], pH: 5.7, saturated: 58.9, sodium: 21 },
  ),
  row(
    'alkalised cocoa powder',
    'cacao alcalinisé',
    'dutch-process cocoa powder, dutch process cocoa, dutch-process cocoa, dutched cocoa powder, dutched cocoa, alkalized cocoa powder, alkalised cocoa, alkalized cocoa, black cocoa powder',
    'powder',
    recalled('19171', [2.6, 18.1, 13.1, 58.3, 1.76, 29.8, 7.9], { fat: 'cocoaButter', sucrose: 0.5, starch: 0.6 }),
    { density: 0.39, traits: ['cocoa powder'], pH: 7.5, saturated: 59, sodium: 19 },
  ),
  row(
    'high-fat cocoa powder',
    'cacao à 22-24 %',
    '',
    'powder',
    mixed(
      [
        [88, powder],
        [12, made('cocoaButter', {}, '')],
      ],
      'computed: USDA SR28 19165 with cocoa butter to 24 % fat',
    ),
    { density: 0.36, traits: ['cocoa powder'], pH: 7, saturated: 59, sodium: 19 },
  ),
  row('cocoa nibs', 'grué de cacao', 'cacao nibs, nibs, cocoa nib, grué', 'solid', mass, {
    density: 0.5,
    traits: ['infusable'],
    pH: 5.4,
    saturated: 61,
    sodium: 12,
  }),
  row(
    'cocoa bean husk',
    'coque de cacao',
    'cocoa shells, cocoa shell, cacao husk',
    'solid',
    made('fibre', { water: 6, protein: 17, cocoaButter: 5, starch: 3, ash: 8 }, practice),
    { density: 0.2, traits: ['infusable'], absorbs: 2 },
  ),
  row(
    'drinking chocolate',
    'chocolat en poudre',
    'sweetened cocoa, hot chocolate powder, chocolate powder, sweet cocoa powder',
    'powder',
    made('sucrose', { water: 1.5, cocoaButter: 4, protein: 6, starch: 4, fibre: 11.5, ash: 2 }, practice),
    { density: 0.55, traits: ['cocoa powder'], saturated: 59, sodium: 60 },
  ),
];
