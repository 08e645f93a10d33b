/** Which kind of the catalogue a recipe's words mean: plurals, adjectives, and the plain words of French and German. */
import { nameKey } from 'nappe-grammar';
import { findKind } from '../catalogue/catalogue.ts';

/** Common words of French and German with one clear meaning, by name key; the kind is the catalogue's. */
const translations: Readonly<Record<string, string>> = {
  lait: 'whole milk',
  'lait entier': 'whole milk',
  'crème liquide entière': 'cream',
  'crème liquide': 'cream',
  'crème entière': 'cream',
  beurre: 'butter',
  'beurre doux': 'butter',
  oeuf: 'egg',
  œuf: 'egg',
  oeufs: 'egg',
  œufs: 'egg',
  "jaunes d'oeufs": 'egg yolk',
  "jaunes d'œufs": 'egg yolk',
  "jaunes d'œuf": 'egg yolk',
  "jaune d'œuf": 'egg yolk',
  "blancs d'œufs": 'egg white',
  "blancs d'œuf": 'egg white',
  "blancs d'oeufs": 'egg white',
  sucre: 'caster sugar',
  'sucre en poudre': 'caster sugar',
  'sucre semoule': 'caster sugar',
  'sucre glace': 'icing sugar',
  farine: 'plain flour',
  'farine de blé': 'plain flour',
  maïzena: 'corn starch',
  'fécule de maïs': 'corn starch',
  sel: 'salt',
  eau: 'water',
  'eau froide': 'water',
  'poudre d’amandes': 'almond flour',
  "poudre d'amandes": 'almond flour',
  'chocolat noir': 'dark chocolate',
  'chocolat blanc': 'white chocolate',
  'chocolat au lait': 'milk chocolate',
  'jus de citron': 'lemon juice',
  miel: 'honey',
  gélatine: 'gelatin',
  'cacao en poudre': 'cocoa powder',
  milch: 'whole milk',
  vollmilch: 'whole milk',
  sahne: 'cream',
  schlagsahne: 'cream',
  butter: 'butter',
  ei: 'egg',
  eier: 'egg',
  eigelb: 'egg yolk',
  eigelbe: 'egg yolk',
  eiweiss: 'egg white',
  eiweiß: 'egg white',
  zucker: 'caster sugar',
  puderzucker: 'icing sugar',
  mehl: 'plain flour',
  weizenmehl: 'plain flour',
  speisestärke: 'corn starch',
  salz: 'salt',
  wasser: 'water',
  zitronensaft: 'lemon juice',
  honig: 'honey',
  gelatine: 'gelatin',
  'gemahlene mandeln': 'almond flour',
  zartbitterschokolade: 'dark chocolate',
  kakaopulver: 'cocoa powder',
};

/** Words before a name that say nothing of its composition. */
const adjectives =
  /^(?:extra[ -]large|large|medium|small|fresh|freshly|good|quality|cold|ice-cold|hot|warm|softened|melted|soft|fine|free-range|organic|unsalted|sweet|ripe|ground|whole|gros|grosse|frais|fraîche|froid|froide|große|große[sn]?|kalte[sr]?|frische[sr]?|weiche)\s+/iu;

export interface Meant {
  /** How the draft calls it. */
  readonly name: string;
  /** Set where the catalogue knows it under another name. */
  readonly is: string | null;
}

export function meantBy(text: string): Meant {
  if (findKind(text)) return { name: text, is: null };
  const single = singulars(text).find((one) => findKind(one));
  if (single) return { name: single, is: null };
  for (let rest = text; ; ) {
    const kind = [...singulars(rest), rest].map((one) => translations[nameKey(one)] ?? one).find((one) => findKind(one));
    if (kind) return { name: text, is: kind };
    const shorter = rest.replace(adjectives, '');
    if (shorter === rest) return { name: text, is: null };
    rest = shorter;
  }
}

/** `egg yolks` → `egg yolk`; `leaves`, `berries` too. */
export function singulars(text: string): readonly string[] {
  return [
    ...(/ies$/i.test(text) ? [text.replace(/ies$/i, 'y')] : []),
    ...(/es$/i.test(text) ? [text.slice(0, -2)] : []),
    ...(/s$/i.test(text) && !/ss$/i.test(text) ? [text.slice(0, -1)] : []),
  ];
}
