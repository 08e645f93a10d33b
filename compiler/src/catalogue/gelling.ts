/** Kinds that gel and thicken: gelatin, seaweed gums, pectins, seed and fermentation gums. */
import type { Kind } from './kind.ts';
import { made, mixed, practice, row, sr28 } from './row.ts';

const gelatin = sr28('19177', [13, 85.6, 0.1, 0, 0, 0, 1.3]);
const water = made('water', {}, 'a pure substance');
const gum = (name: string, ash = 3) => made('fibre', { water: 11, protein: 2, ash }, `${practice}: ${name} is nearly all fibre`);
const pectin = made('fibre', { water: 9, sucrose: 30, ash: 3 }, `${practice}: standardised with sugar`);

export const gelling: readonly Kind[] = [
  /* Who writes no phase means sheets; a sheet of the commonest grade (gold, 200 bloom) weighs 2 g (facts: trade compilation 2008–2014). */
  row(
    'gelatin',
    'gélatine',
    'gelatine, gelatin sheet, gelatin sheets, gelatine sheet, gelatine sheets, sheet gelatin, sheet gelatine, leaf gelatin, leaf gelatine, gelatin leaf, gelatin leaves, gelatine leaf, gelatine leaves, gold gelatin',
    'sheet',
    gelatin,
    { piece: 2, traits: ['gelatin'], absorbs: 5, sodium: 196 },
  ),
  row(
    'gelatin powder',
    'gélatine en poudre',
    'powdered gelatin, powdered gelatine, gelatine powder, granulated gelatin, unflavored gelatin, unflavoured gelatine, gelatin granules, beef gelatin, bovine gelatin',
    'powder',
    gelatin,
    { density: 0.63, traits: ['gelatin'], absorbs: 6, sodium: 196 },
  ),
  row('silver gelatin', 'gélatine argent', 'silver gelatine, silver leaf gelatin, silver gelatin sheets', 'sheet', gelatin, {
    piece: 2.5,
    traits: ['gelatin'],
    absorbs: 5,
    sodium: 196,
  }),
  row('bronze gelatin', 'gélatine bronze', 'bronze gelatine, bronze leaf gelatin, bronze gelatin sheets', 'sheet', gelatin, {
    piece: 3.3,
    traits: ['gelatin'],
    absorbs: 5,
    sodium: 196,
  }),
  row(
    'platinum gelatin',
    'gélatine platine',
    'platinum gelatine, platinum leaf gelatin, platinum gelatin sheets',
    'sheet',
    gelatin,
    { piece: 1.7, traits: ['gelatin'], absorbs: 5, sodium: 196 },
  ),
  row('fish gelatin', 'gélatine de poisson', 'fish gelatine', 'powder', gelatin, {
    density: 0.63,
    allergens: ['fish'],
    traits: ['gelatin'],
    absorbs: 6,
    sodium: 196,
  }),
  row(
    'instant gelatin',
    'gélatine instantanée',
    'instant gelatine, cold-soluble gelatin, cold soluble gelatin',
    'powder',
    made('protein', { water: 6, otherSugars: 30, ash: 1 }, `${practice}: gelatin dried on a sugar carrier`),
    { density: 0.4, traits: ['instant gelatin'], sodium: 150 },
  ),
  row(
    'gelatin mass',
    'masse gélatine',
    'gelatine mass, gelatin masse, masse gélatine, gelatin mix',
    'gel',
    mixed(
      [
        [1, gelatin],
        [6, water],
      ],
      "computed: one part gelatin (USDA SR28 19177) in six parts water, the trade's usual mass",
    ),
    { storage: 'chilled', density: 1.04, traits: ['gelatin mass'], pH: 5.5, sodium: 28 },
  ),

  row(
    'agar',
    'agar-agar',
    'agar-agar, agar agar, agar powder, agar-agar powder, kanten',
    'powder',
    made(
      'fibre',
      { water: 8.7, protein: 6.2, otherSugars: 3, otherFat: 0.3, ash: 3.6 },
      'from memory, USDA SR28 11663 (dried agar), carbohydrate counted as fibre',
    ),
    { density: 0.5, traits: ['agar'], sodium: 102 },
  ),
  row(
    'iota carrageenan',
    'carraghénane iota',
    'carrageenan, carrageen, iota, carrageenan iota',
    'powder',
    made('fibre', { water: 10, ash: 25 }, practice),
    { density: 0.7, traits: ['carrageenan'], sodium: 2000 },
  ),
  row(
    'kappa carrageenan',
    'carraghénane kappa',
    'kappa, carrageenan kappa',
    'powder',
    made('fibre', { water: 10, ash: 22 }, practice),
    { density: 0.7, traits: ['carrageenan'], sodium: 1000 },
  ),
  row('gellan gum', 'gellane', 'gellan, low-acyl gellan, high-acyl gellan', 'powder', gum('gellan'), {
    density: 0.6,
    traits: ['gellan'],
    sodium: 800,
  }),
  row(
    'high-methoxyl pectin',
    'pectine jaune',
    'yellow pectin, pectin, HM pectin, pectine jaune, slow-set pectin, apple pectin, citrus pectin, high methoxyl pectin, pectin powder',
    'powder',
    pectin,
    { density: 0.65, traits: ['high-methoxyl pectin'], pH: 3.4, sodium: 200 },
  ),
  row(
    'low-methoxyl pectin',
    'pectine LM',
    'LM pectin, low methoxyl pectin, amidated pectin, pectin X58, pectin LM',
    'powder',
    pectin,
    { density: 0.65, traits: ['low-methoxyl pectin'], pH: 4.2, sodium: 200 },
  ),
  row('NH pectin', 'pectine NH', 'pectin NH, NH nappage pectin, NH', 'powder', pectin, {
    density: 0.65,
    traits: ['low-methoxyl pectin'],
    pH: 4.2,
    sodium: 300,
  }),
  row('alginate', 'alginate de sodium', 'sodium alginate', 'powder', made('fibre', { water: 12, ash: 22 }, practice), {
    density: 0.7,
    traits: ['gum'],
    sodium: 9500,
  }),
  row('xanthan gum', 'xanthane', 'xanthan', 'powder', gum('xanthan', 9), { density: 0.65, traits: ['gum'], sodium: 3500 }),
  row('guar gum', 'gomme de guar', 'guar', 'powder', gum('guar'), { density: 0.65, traits: ['gum'], sodium: 50 }),
  row('locust bean gum', 'gomme de caroube', 'carob gum, carob bean gum, LBG', 'powder', gum('locust bean gum'), {
    density: 0.65,
    traits: ['gum'],
    sodium: 50,
  }),
  row('gum arabic', 'gomme arabique', 'acacia gum, arabic gum', 'powder', gum('gum arabic'), {
    density: 0.6,
    traits: ['gum'],
    sodium: 30,
  }),
  row(
    'cellulose gum',
    'gomme de cellulose',
    'CMC, carboxymethyl cellulose, tylose, tylose powder',
    'powder',
    gum('cellulose gum', 20),
    { density: 0.7, traits: ['gum'], sodium: 8000 },
  ),
  row('methylcellulose', 'méthylcellulose', '', 'powder', gum('methylcellulose'), { density: 0.5, traits: ['gum'], sodium: 400 }),
  row(
    'psyllium husk',
    'psyllium',
    'psyllium, psyllium powder, psyllium husks',
    'powder',
    made('fibre', { water: 8, protein: 2, ash: 3 }, practice),
    { density: 0.5, traits: ['gum'], absorbs: 15, sodium: 60 },
  ),
  row(
    'ice cream stabiliser',
    'stabilisateur glace',
    'ice cream stabilizer, stabiliser, stabilizer, sorbet stabiliser, sorbet stabilizer',
    'powder',
    gum('the gums in it'),
    { density: 0.6, traits: ['gum'], sodium: 500 },
  ),
  row(
    'whipping cream stabiliser',
    'fixe-chantilly',
    'whipping cream stabilizer, cream stabiliser, cream stabilizer',
    'powder',
    made('starch', { water: 5, otherSugars: 55 }, practice),
    { density: 0.6, traits: ['gum'], sodium: 20 },
  ),
  row(
    'neutral glaze',
    'nappage neutre',
    'nappage, nappage neutre, clear glaze, neutral nappage, mirror nappage, cold glaze',
    'gel',
    made('water', { sucrose: 35, otherSugars: 27, fibre: 1.2, ash: 0.2 }, practice),
    { density: 1.28, pH: 3.6, sodium: 20, pasteurised: true },
  ),
];
