/**
 * How a declaration calls a kind: one name for what the rules let be one (every sucrose is sugar), the class before an additive, and
 * which kinds are made of several ingredients.
 *
 * Regulation (EU) 1169/2011, Annex VII, parts B (generic names) and C (classes of additives); 21 CFR 101.4(b) for the American names.
 * E numbers: Regulation (EC) 1333/2008, from memory.
 */
import type { Kind } from '../catalogue/kind.ts';
import type { Region } from './model.ts';

/** The name in the list; `label` is what the formula calls it, for what is in no catalogue. */
export function declaredName(kind: Kind | null, label: string, region: Region): string {
  if (kind === null) return label;
  const additive = additives[kind.name];
  if (additive) return region === 'eu' ? `${additive.class}: ${additive.name} (${additive.number})` : additive.name;
  const generic = generics.find(({ kinds }) => kinds.includes(kind.name));
  if (generic) return generic[region];
  const byTrait = traits.find(({ trait }) => kind.traits.includes(trait as Kind['traits'][number]));
  return byTrait && !own.has(kind.name) ? byTrait[region] : kind.name;
}

/** Sold as a mixture. A house ingredient is one wherever the formula does not say what it is like. */
export const isCompound = (kind: Kind | null): boolean =>
  kind !== null && (compounds.has(kind.name) || kind.traits.some((trait) => compoundTraits.has(trait)));

interface Generic {
  readonly kinds: readonly string[];
  readonly eu: string;
  readonly us: string;
}

const one = (name: string, ...kinds: string[]): Generic => ({ kinds, eu: name, us: name });

const generics: readonly Generic[] = [
  one('sugar', 'caster sugar', 'granulated sugar', 'icing sugar', 'pearl sugar', 'sugar cube', 'demerara sugar'),
  one('water', 'water', 'ice', 'sparkling water'),
  { kinds: ['whole egg', 'pasteurised whole egg'], eu: 'egg', us: 'eggs' },
  { kinds: ['egg yolk', 'pasteurised egg yolk'], eu: 'egg yolk', us: 'egg yolks' },
  { kinds: ['egg white', 'pasteurised egg white'], eu: 'egg white', us: 'egg whites' },
  { kinds: ['corn starch', 'waxy corn starch'], eu: 'maize starch', us: 'corn starch' },
  {
    kinds: ['gelatin', 'gelatin powder', 'silver gelatin', 'bronze gelatin', 'platinum gelatin', 'instant gelatin'],
    eu: 'gelatine',
    us: 'gelatin',
  },
  { kinds: ['fish gelatin'], eu: 'fish gelatine', us: 'fish gelatin' },
  { kinds: ['plain flour', 'strong flour', 'cake flour'], eu: 'wheat flour', us: 'wheat flour' },
  { kinds: ['wholemeal flour'], eu: 'wholemeal wheat flour', us: 'whole wheat flour' },
  { kinds: ['semolina'], eu: 'durum wheat semolina', us: 'durum wheat semolina' },
  { kinds: ['spelt flour'], eu: 'spelt wheat flour', us: 'spelt wheat flour' },
  { kinds: ['almond flour'], eu: 'ground almonds', us: 'ground almonds' },
  { kinds: ['flavour extract', 'essential oil', 'almond extract'], eu: 'flavouring', us: 'natural flavor' },
  { kinds: ['whole milk', 'semi-skimmed milk'], eu: 'milk', us: 'milk' },
  { kinds: ['skimmed milk'], eu: 'skimmed milk', us: 'skim milk' },
  one('butter', 'butter', 'dry butter'),
  one('salt', 'salt', 'coarse salt'),
  { kinds: ['glucose syrup', 'high-DE glucose syrup', 'atomised glucose'], eu: 'glucose syrup', us: 'glucose syrup' },
];

/** After the names: what all kinds of a trait are called. */
const traits: readonly { readonly trait: string; readonly eu: string; readonly us: string }[] = [
  { trait: 'cream', eu: 'cream', us: 'cream' },
];

/** Creams that the rules tell apart from cream. */
const own: ReadonlySet<string> = new Set(['half-and-half', 'clotted cream']);

interface Additive {
  readonly class: string;
  readonly name: string;
  readonly number: string;
}

const additive = (name: string, number: string, ofClass: string): Additive => ({ class: ofClass, name, number });

const additives: Readonly<Record<string, Additive>> = {
  agar: additive('agar', 'E 406', 'gelling agent'),
  'iota carrageenan': additive('carrageenan', 'E 407', 'gelling agent'),
  'kappa carrageenan': additive('carrageenan', 'E 407', 'gelling agent'),
  'gellan gum': additive('gellan gum', 'E 418', 'gelling agent'),
  'high-methoxyl pectin': additive('pectin', 'E 440', 'gelling agent'),
  'low-methoxyl pectin': additive('pectin', 'E 440', 'gelling agent'),
  'NH pectin': additive('amidated pectin', 'E 440', 'gelling agent'),
  alginate: additive('sodium alginate', 'E 401', 'gelling agent'),
  'xanthan gum': additive('xanthan gum', 'E 415', 'thickener'),
  'guar gum': additive('guar gum', 'E 412', 'thickener'),
  'locust bean gum': additive('locust bean gum', 'E 410', 'thickener'),
  'gum arabic': additive('gum arabic', 'E 414', 'thickener'),
  'cellulose gum': additive('cellulose gum', 'E 466', 'thickener'),
  methylcellulose: additive('methylcellulose', 'E 461', 'thickener'),
  'soy lecithin': additive('soya lecithin', 'E 322', 'emulsifier'),
  'sunflower lecithin': additive('sunflower lecithin', 'E 322', 'emulsifier'),
  'glycerol monostearate': additive('mono- and diglycerides of fatty acids', 'E 471', 'emulsifier'),
  'baking soda': additive('sodium bicarbonate', 'E 500', 'raising agent'),
  'ammonium bicarbonate': additive('ammonium bicarbonate', 'E 503', 'raising agent'),
  'cream of tartar': additive('potassium bitartrate', 'E 336', 'acidity regulator'),
  'citric acid': additive('citric acid', 'E 330', 'acid'),
  'tartaric acid': additive('tartaric acid', 'E 334', 'acid'),
  'malic acid': additive('malic acid', 'E 296', 'acid'),
  'ascorbic acid': additive('ascorbic acid', 'E 300', 'antioxidant'),
  'sodium citrate': additive('sodium citrate', 'E 331', 'acidity regulator'),
  'calcium lactate': additive('calcium lactate', 'E 327', 'acidity regulator'),
  glycerol: additive('glycerol', 'E 422', 'humectant'),
  'sorbitol powder': additive('sorbitol', 'E 420', 'sweetener'),
  sorbitol: additive('sorbitol', 'E 420', 'sweetener'),
  isomalt: additive('isomalt', 'E 953', 'sweetener'),
  maltitol: additive('maltitol', 'E 965', 'sweetener'),
  erythritol: additive('erythritol', 'E 968', 'sweetener'),
  xylitol: additive('xylitol', 'E 967', 'sweetener'),
  'activated charcoal': additive('vegetable carbon', 'E 153', 'colour'),
  'gold leaf': additive('gold', 'E 175', 'colour'),
};

const compoundTraits: ReadonlySet<string> = new Set([
  'dark chocolate',
  'milk chocolate',
  'white chocolate',
  'plant cream',
  'plant milk',
  'baked',
  'crumbs',
  'gelatin mass',
  'leavening',
]);

const compounds: ReadonlySet<string> = new Set([
  ...[
    'condensed milk',
    'dulce de leche',
    'salted butter',
    'lightly salted butter',
    'sweetened coconut cream',
    'sugared egg yolk',
  ],
  ...['snow sugar', 'vanilla sugar', 'fondant', 'sugar paste', 'marshmallow', 'caramel sauce', 'custard powder', 'baking spray'],
  ...['margarine', 'puff pastry margarine', 'compound coating', 'gianduja', 'chocolate hazelnut spread', 'drinking chocolate'],
  ...['coloured cocoa butter', 'tant pour tant', 'chestnut paste', 'chestnut cream', 'candied chestnut', 'praline paste'],
  ...['almond praline', 'pecan praline', 'praline grains', 'marzipan', 'almond paste', 'nougat', 'pistachio paste'],
  ...['canned pineapple', 'canned pears', 'canned peaches', 'canned apricots', 'canned lychees', 'candied orange peel'],
  ...[
    'candied fruit',
    'candied cherry',
    'candied ginger',
    'amarena cherries',
    'brandied cherries',
    'raspberry jam',
    'apricot jam',
  ],
  ...['orange marmalade', 'redcurrant jelly', 'dried cranberries', 'red bean paste', 'ice cream stabiliser', 'neutral glaze'],
  ...['whipping cream stabiliser', 'vanilla paste', 'mixed spice', 'speculoos spread', 'puff pastry', 'filo pastry', 'sprinkles'],
  ...[
    'chocolate vermicelli',
    'popping candy',
    'food colour',
    'powdered food colour',
    'edible glitter',
    'wafer paper',
    'soy sauce',
  ],
]);
