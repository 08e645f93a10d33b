/** Kinds of oil and fat that are not of the dairy and not of cocoa. */
import type { Kind } from './kind.ts';
import { made, practice, recalled, row, sr28 } from './row.ts';

const oil = { density: 0.915, traits: ['oil'] } as const;

export const fats: readonly Kind[] = [
  row(
    'sunflower oil',
    'huile de tournesol',
    'oil, vegetable oil, neutral oil, cooking oil, frying oil',
    'liquid',
    sr28('04506', [0, 0, 100, 0, 0, 0, 0]),
    { ...oil, saturated: 10.3 },
  ),
  row(
    'olive oil',
    "huile d'olive",
    'extra virgin olive oil, extra-virgin olive oil',
    'liquid',
    sr28('04053', [0, 0, 100, 0, 0, 0, 0]),
    { ...oil, saturated: 13.8, sodium: 2 },
  ),
  row('rapeseed oil', 'huile de colza', 'canola oil, colza oil', 'liquid', recalled('04582', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    saturated: 7.4,
  }),
  row('grapeseed oil', 'huile de pépins de raisin', 'grape seed oil', 'liquid', recalled('04517', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    saturated: 9.6,
  }),
  row('peanut oil', "huile d'arachide", 'groundnut oil', 'liquid', recalled('04042', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['peanut'],
    saturated: 16.9,
  }),
  row('corn oil', 'huile de maïs', 'maize oil', 'liquid', recalled('04518', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    saturated: 12.9,
  }),
  row('soybean oil', 'huile de soja', 'soya oil, soy oil', 'liquid', recalled('04044', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['soy'],
    saturated: 15.7,
  }),
  row('hazelnut oil', 'huile de noisette', '', 'liquid', recalled('04532', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['hazelnut'],
    saturated: 7.4,
  }),
  row('walnut oil', 'huile de noix', '', 'liquid', recalled('04528', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['walnut'],
    saturated: 9.1,
  }),
  row('almond oil', "huile d'amande", 'sweet almond oil', 'liquid', recalled('04529', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['almond'],
    saturated: 8.2,
  }),
  row('pistachio oil', 'huile de pistache', '', 'liquid', made('otherFat', {}, practice), {
    ...oil,
    allergens: ['pistachio'],
    saturated: 13,
  }),
  row('sesame oil', 'huile de sésame', '', 'liquid', recalled('04058', [0, 0, 100, 0, 0, 0, 0]), {
    ...oil,
    allergens: ['sesame'],
    saturated: 14.2,
  }),
  row(
    'coconut oil',
    'huile de coco',
    'coconut fat, virgin coconut oil, refined coconut oil, copra fat',
    'solid',
    recalled('04047', [0, 0, 100, 0, 0, 0, 0]),
    { density: 0.92, traits: ['solid fat', 'coconut'], saturated: 86.5 },
  ),
  row('palm oil', 'huile de palme', 'palm fat', 'solid', recalled('04055', [0, 0, 100, 0, 0, 0, 0]), {
    density: 0.91,
    traits: ['solid fat'],
    saturated: 49.3,
  }),
  row(
    'vegetable shortening',
    'graisse végétale',
    'shortening, white vegetable fat, vegetable fat, frying fat',
    'solid',
    recalled('04031', [0, 0, 100, 0, 0, 0, 0]),
    { density: 0.85, traits: ['solid fat'], saturated: 25, sodium: 4 },
  ),
  row('lard', 'saindoux', 'pork lard', 'solid', recalled('04002', [0, 0, 100, 0, 0, 0, 0]), {
    storage: 'chilled',
    density: 0.87,
    traits: ['solid fat'],
    saturated: 39.2,
  }),
  row(
    'margarine',
    'margarine',
    'baking margarine, cake margarine, plant butter, vegan butter, plant-based butter',
    'solid',
    made('water', { otherFat: 80, protein: 0.2, otherSugars: 0.3, ash: 1 }, practice),
    { storage: 'chilled', density: 0.95, traits: ['solid fat'], saturated: 35, sodium: 300 },
  ),
  row(
    'puff pastry margarine',
    'margarine de feuilletage',
    'pastry margarine, lamination margarine',
    'solid',
    made('water', { otherFat: 80, ash: 0.5 }, practice),
    { density: 0.94, traits: ['solid fat'], saturated: 50, sodium: 150 },
  ),
  row(
    'baking spray',
    'spray de démoulage',
    'release spray, non-stick spray, release agent, pan spray',
    'liquid',
    made('otherFat', {}, practice),
    { ...oil, saturated: 10 },
  ),
  row(
    'soy lecithin',
    'lécithine de soja',
    'lecithin, soya lecithin, lecithin powder',
    'powder',
    made('otherFat', { otherSugars: 5, ash: 5 }, practice),
    { density: 0.5, allergens: ['soy'], saturated: 20 },
  ),
  row('sunflower lecithin', 'lécithine de tournesol', '', 'powder', made('otherFat', { otherSugars: 5, ash: 5 }, practice), {
    density: 0.5,
    saturated: 18,
  }),
  row(
    'glycerol monostearate',
    'monostéarate de glycérol',
    'monostearate, GMS, E471, mono- and diglycerides, mono and diglycerides, sponge emulsifier, cake emulsifier',
    'powder',
    made('otherFat', { water: 1 }, practice),
    { density: 0.5, saturated: 95 },
  ),
];
