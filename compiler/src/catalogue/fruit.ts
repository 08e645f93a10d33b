/** Kinds of fruit: fresh, frozen, dried, candied, as purée, juice and jam, and the vegetables a pastry kitchen uses. */
import type { Kind } from './kind.ts';
import { type Basis, made, mixed, practice, recalled, row, sr28 } from './row.ts';

/* Sucrose shares of fruit sugars: from memory of handbook tables (Souci-Fachmann-Kraut), rounded to tenths. */
const raspberry = sr28('09302', [85.75, 1.2, 0.65, 11.94, 4.42, 6.5, 0.46], { sucrose: 0.1 });
const strawberry = sr28('09316', [90.95, 0.67, 0.3, 7.68, 4.89, 2, 0.4], { sucrose: 0.1 });
const blackcurrant = sr28('09083', [81.96, 1.4, 0.41, 15.38, 8, 6, 0.86], { sucrose: 0.1 }, 'sugars and fibre estimated');
const blueberry = sr28('09050', [84.21, 0.74, 0.33, 14.49, 9.96, 2.4, 0.24], { sucrose: 0 });
const blackberry = sr28('09042', [88.15, 1.39, 0.49, 9.61, 4.88, 5.3, 0.37], { sucrose: 0 });
const redcurrant = sr28('09084', [83.95, 1.4, 0.2, 13.8, 7.37, 4.3, 0.66], { sucrose: 0.1 });
const cranberry = sr28('09078', [87.32, 0.46, 0.13, 11.97, 4.27, 3.6, 0.12], { sucrose: 0 });
const mango = sr28('09176', [83.46, 0.82, 0.38, 14.98, 13.66, 1.6, 0.36], { sucrose: 0.6 });
const apricot = sr28('09021', [86.35, 1.4, 0.39, 11.12, 9.24, 2, 0.75], { sucrose: 0.6 });
const peach = recalled('09236', [88.87, 0.91, 0.25, 9.54, 8.39, 1.5, 0.43], { sucrose: 0.6 });
const pear = sr28('09252', [83.96, 0.36, 0.14, 15.23, 9.75, 3.1, 0.32], { sucrose: 0.1 });
const apple = sr28('09004', [86.67, 0.27, 0.13, 12.76, 10.1, 1.3, 0.17], { sucrose: 0.2 });
const banana = sr28('09040', [74.91, 1.09, 0.33, 22.84, 12.23, 2.6, 0.82], { sucrose: 0.2, starch: 0.7 });
const cherry = sr28('09070', [82.25, 1.06, 0.2, 16.01, 12.82, 2.1, 0.48], { sucrose: 0 });
const sourCherry = sr28('09063', [86.13, 1, 0.3, 12.18, 8.49, 1.6, 0.4], { sucrose: 0.1 });
const plum = sr28('09279', [87.23, 0.7, 0.28, 11.42, 9.92, 1.4, 0.37], { sucrose: 0.2 });
const pineapple = sr28('09266', [86, 0.54, 0.12, 13.12, 9.85, 1.4, 0.22], { sucrose: 0.6 });
const kiwi = sr28('09148', [83.07, 1.14, 0.52, 14.66, 8.99, 3, 0.61], { sucrose: 0 });
const papaya = sr28('09226', [88.06, 0.47, 0.26, 10.82, 7.82, 1.7, 0.39], { sucrose: 0 });
const fig = sr28('09089', [79.11, 0.75, 0.3, 19.18, 16.26, 2.9, 0.66], { sucrose: 0 });
const melon = sr28('09181', [90.15, 0.84, 0.19, 8.16, 7.86, 0.9, 0.65], { sucrose: 0.5 });
const lychee = sr28('09164', [81.76, 0.83, 0.44, 16.53, 15.23, 1.3, 0.44], { sucrose: 0.1 });
const passionJuice = sr28('09232', [85.62, 0.39, 0.05, 13.6, 13.4, 0.2, 0.34], { sucrose: 0.3 });
const lemonJuice = sr28('09152', [92.31, 0.35, 0.24, 6.9, 2.52, 0.3, 0.21], { sucrose: 0.2 });
const limeJuice = sr28('09160', [90.79, 0.42, 0.07, 8.42, 1.69, 0.4, 0.31], { sucrose: 0.2 });
const orangeJuice = sr28('09206', [88.3, 0.7, 0.2, 10.4, 8.4, 0.2, 0.4], { sucrose: 0.5 });
const mandarin = sr28('09218', [85.17, 0.81, 0.31, 13.34, 10.58, 1.8, 0.38], { sucrose: 0.6 });
const lemonPeel = sr28('09156', [81.6, 1.5, 0.3, 16, 4.17, 10.6, 0.6], { sucrose: 0.2 });
const orangePeel = sr28('09216', [72.5, 1.5, 0.2, 25, 8, 10.6, 0.8], { sucrose: 0.2 }, 'sugars not measured there: estimated');

const fresh = { storage: 'chilled', traits: ['fruit'] } as const;
const berry = { storage: 'chilled', traits: ['fruit', 'berry'] } as const;
const purée = { storage: 'chilled', traits: ['fruit', 'purée'], density: 1.04 } as const;
const berryPurée = { storage: 'chilled', traits: ['fruit', 'berry', 'purée'], density: 1.04 } as const;
const enzyme = { storage: 'chilled', traits: ['fruit', 'protease fruit'] } as const;
const enzymePurée = { storage: 'chilled', traits: ['fruit', 'purée', 'protease fruit'], density: 1.04 } as const;
const citrus = { storage: 'chilled', traits: ['fruit', 'citrus'] } as const;
const citrusJuice = { storage: 'chilled', traits: ['fruit', 'citrus', 'juice'], density: 1.03 } as const;

/** Fruit boiled with as much sugar to 65 % solids; heated, so its enzymes and germs are gone. */
const jam = (name: string, fr: string, synonyms: string): Kind =>
  row(
    name,
    fr,
    synonyms,
    'gel',
    recalled('19297', [30.47, 0.37, 0.07, 68.86, 48.5, 1.1, 0.23], { sucrose: 0.6, restIsSugar: true }),
    { density: 1.33, pH: 3.3, traits: ['fruit'], sodium: 32, pasteurised: true },
  );

/** Frozen berries: not heated, so the caution about boiling them holds. */
const frozen = (name: string, fr: string, synonyms: string, basis: Basis, density: number, pH: number): Kind =>
  row(name, fr, synonyms, 'frozen', basis, { storage: 'frozen', traits: ['fruit', 'berry'], density, pH });

export const fruit: readonly Kind[] = [
  row('raspberry', 'framboise', 'raspberries, fresh raspberries', 'solid', raspberry, {
    ...berry,
    density: 0.52,
    piece: 1.9,
    pH: 3.2,
    sodium: 1,
  }),
  row('strawberry', 'fraise', 'strawberries, fresh strawberries, wild strawberries', 'solid', strawberry, {
    ...berry,
    density: 0.61,
    piece: 12,
    pH: 3.4,
    sodium: 1,
  }),
  row('blackcurrant', 'cassis', 'blackcurrants, black currants, black currant, cassis', 'solid', blackcurrant, {
    ...berry,
    density: 0.47,
    piece: 1,
    pH: 2.9,
    sodium: 2,
  }),
  row('redcurrant', 'groseille', 'redcurrants, red currants, red currant', 'solid', redcurrant, {
    ...berry,
    density: 0.47,
    piece: 0.5,
    pH: 2.9,
    sodium: 1,
  }),
  row('blueberry', 'myrtille', 'blueberries, bilberries, bilberry', 'solid', blueberry, {
    ...berry,
    density: 0.63,
    piece: 1.4,
    pH: 3.3,
    sodium: 1,
  }),
  row('blackberry', 'mûre', 'blackberries, brambles', 'solid', blackberry, {
    ...berry,
    density: 0.61,
    piece: 5,
    pH: 3.4,
    sodium: 1,
  }),
  row('cranberry', 'canneberge', 'cranberries, fresh cranberries, lingonberries', 'solid', cranberry, {
    ...berry,
    density: 0.42,
    piece: 1.1,
    pH: 2.5,
    sodium: 2,
  }),
  row(
    'gooseberry',
    'groseille à maquereau',
    'gooseberries',
    'solid',
    recalled('09107', [87.87, 0.88, 0.58, 10.18, 5.5, 4.3, 0.49], { sucrose: 0.1 }),
    { ...berry, density: 0.63, piece: 4, pH: 3, sodium: 1 },
  ),
  frozen(
    'frozen raspberries',
    'framboises surgelées',
    'frozen raspberry, raspberry crumble, raspberry pieces',
    raspberry,
    0.55,
    3.2,
  ),
  frozen('frozen strawberries', 'fraises surgelées', 'frozen strawberry', strawberry, 0.62, 3.4),
  frozen('frozen blueberries', 'myrtilles surgelées', 'frozen blueberry', blueberry, 0.65, 3.3),
  frozen(
    'frozen berries',
    'fruits rouges surgelés',
    'frozen red berries, mixed frozen berries, mixed berries, red berries, frozen mixed berries, red fruit',
    mixed(
      [
        [1, raspberry],
        [1, strawberry],
        [1, blackcurrant],
        [1, blackberry],
      ],
      'computed: raspberry, strawberry, blackcurrant and blackberry in equal parts',
    ),
    0.6,
    3.2,
  ),
  row('apricot', 'abricot', 'apricots, fresh apricots', 'solid', apricot, {
    ...fresh,
    density: 0.65,
    piece: 35,
    pH: 3.7,
    sodium: 1,
  }),
  row('peach', 'pêche', 'peaches, nectarine, nectarines, vine peach', 'solid', peach, {
    ...fresh,
    density: 0.65,
    piece: 150,
    pH: 3.7,
  }),
  row('plum', 'prune', 'plums, mirabelle, mirabelles, damson, damsons, greengage', 'solid', plum, {
    ...fresh,
    density: 0.7,
    piece: 66,
    pH: 3.3,
  }),
  row('cherry', 'cerise', 'cherries, sweet cherries, sweet cherry, pitted cherries', 'solid', cherry, {
    ...fresh,
    density: 0.65,
    piece: 8.2,
    pH: 3.9,
  }),
  row('sour cherry', 'griotte', 'sour cherries, morello cherries, morello cherry, morello, griottes', 'solid', sourCherry, {
    ...fresh,
    density: 0.65,
    piece: 6,
    pH: 3.3,
    sodium: 3,
  }),
  row(
    'apple',
    'pomme',
    'apples, cooking apple, cooking apples, dessert apple, eating apple, peeled apple, peeled apples',
    'solid',
    apple,
    { ...fresh, density: 0.46, piece: 161, pH: 3.5 },
  ),
  row('pear', 'poire', 'pears, peeled pears, williams pear, fresh pears', 'solid', pear, {
    ...fresh,
    density: 0.6,
    piece: 160,
    pH: 4,
    sodium: 1,
  }),
  row('quince', 'coing', 'quinces', 'solid', recalled('09296', [83.8, 0.4, 0.1, 15.3, 9, 1.9, 0.4], { sucrose: 0.1 }), {
    ...fresh,
    density: 0.6,
    piece: 92,
    pH: 3.4,
    sodium: 4,
  }),
  row(
    'rhubarb',
    'rhubarbe',
    'rhubarb stalks, rhubarb stalk',
    'solid',
    recalled('09307', [93.61, 0.9, 0.2, 4.54, 1.1, 1.8, 0.76], { sucrose: 0.1 }),
    { ...fresh, density: 0.52, piece: 51, pH: 3.2, sodium: 4 },
  ),
  row('banana', 'banane', 'bananas, ripe banana, ripe bananas', 'solid', banana, {
    ...fresh,
    storage: 'ambient',
    density: 0.63,
    piece: 118,
    pH: 5,
    sodium: 1,
  }),
  row(
    'grape',
    'raisin frais',
    'grapes',
    'solid',
    recalled('09132', [80.54, 0.72, 0.16, 18.1, 15.48, 0.9, 0.48], { sucrose: 0 }),
    { ...fresh, density: 0.64, piece: 5, pH: 3.6, sodium: 2 },
  ),
  row('mango', 'mangue', 'mangoes, mangos, fresh mango', 'solid', mango, {
    ...fresh,
    density: 0.7,
    piece: 336,
    pH: 4,
    sodium: 1,
  }),
  row(
    'passion fruit',
    'fruit de la passion',
    'passionfruit, passion fruits, passion fruit pulp',
    'solid',
    sr28('09231', [72.93, 2.2, 0.7, 23.38, 11.2, 10.4, 0.8], { sucrose: 0.3 }),
    { ...fresh, density: 1, piece: 18, pH: 3, sodium: 28 },
  ),
  row(
    'pomegranate',
    'grenade',
    'pomegranates, pomegranate seeds',
    'solid',
    sr28('09286', [77.93, 1.67, 1.17, 18.7, 13.67, 4, 0.53], { sucrose: 0 }),
    { ...fresh, density: 0.74, piece: 282, pH: 3.1, sodium: 3 },
  ),
  row('lychee', 'litchi', 'lychees, litchi, litchis', 'solid', lychee, {
    ...fresh,
    density: 0.8,
    piece: 9.6,
    pH: 4.7,
    sodium: 1,
  }),
  row(
    'persimmon',
    'kaki',
    'persimmons, kaki',
    'solid',
    sr28('09263', [80.32, 0.58, 0.19, 18.59, 12.53, 3.6, 0.33], { sucrose: 0.1 }),
    { ...fresh, density: 0.7, piece: 168, pH: 5.6, sodium: 1 },
  ),
  row('guava', 'goyave', 'guavas', 'solid', recalled('09139', [80.8, 2.55, 0.95, 14.32, 8.92, 5.4, 1.39], { sucrose: 0.4 }), {
    ...fresh,
    density: 0.7,
    piece: 55,
    pH: 3.8,
    sodium: 2,
  }),
  row('avocado', 'avocat', 'avocados', 'solid', sr28('09037', [73.23, 2, 14.66, 8.53, 0.66, 6.7, 1.58], {}), {
    ...fresh,
    density: 0.63,
    piece: 150,
    pH: 6.5,
    saturated: 14.5,
    sodium: 7,
  }),

  row('pineapple', 'ananas', 'pineapples, fresh pineapple, victoria pineapple', 'solid', pineapple, {
    ...enzyme,
    density: 0.7,
    piece: 905,
    pH: 3.5,
    sodium: 1,
  }),
  row('kiwi', 'kiwi', 'kiwis, kiwifruit, kiwi fruit, green kiwi', 'solid', kiwi, {
    ...enzyme,
    density: 0.76,
    piece: 69,
    pH: 3.3,
    sodium: 3,
  }),
  row('papaya', 'papaye', 'papayas, pawpaw', 'solid', papaya, { ...enzyme, density: 0.61, piece: 300, pH: 5.5, sodium: 8 }),
  row('fig', 'figue', 'figs, fresh fig, fresh figs', 'solid', fig, { ...enzyme, density: 0.65, piece: 50, pH: 5, sodium: 1 }),
  row('melon', 'melon', 'melons, cantaloupe, charentais melon, cantaloupe melon, honeydew melon', 'solid', melon, {
    ...enzyme,
    density: 0.68,
    piece: 550,
    pH: 6.3,
    sodium: 16,
  }),
  row(
    'ginger',
    'gingembre',
    'fresh ginger, ginger root, grated ginger, root ginger',
    'solid',
    recalled('11216', [78.89, 1.82, 0.75, 17.77, 1.7, 2, 0.77], { sucrose: 0.5, starch: 0.8 }),
    { ...enzyme, traits: ['fruit', 'protease fruit', 'infusable'], density: 0.41, pH: 5.8, saturated: 27, sodium: 13 },
  ),
  row(
    'canned pineapple',
    'ananas en conserve',
    'tinned pineapple, pineapple in juice',
    'solid',
    sr28('09268', [83.51, 0.42, 0.08, 15.7, 14.45, 0.8, 0.3], { sucrose: 0.4 }),
    { traits: ['fruit'], density: 1.05, piece: 47, pH: 3.6, sodium: 1, pasteurised: true },
  ),
  row(
    'canned pears',
    'poires au sirop',
    'tinned pears, pears in syrup, poached pears, poached pear, canned pear',
    'solid',
    sr28('09257', [80.35, 0.2, 0.13, 19.17, 15.2, 1.6, 0.15], { sucrose: 0.3 }),
    { traits: ['fruit'], density: 1.08, piece: 76, pH: 4, sodium: 5, pasteurised: true },
  ),
  row(
    'canned peaches',
    'pêches au sirop',
    'tinned peaches, peaches in syrup, canned peach',
    'solid',
    sr28('09241', [79.28, 0.45, 0.1, 19.94, 18.64, 1.3, 0.24], { sucrose: 0.4 }),
    { traits: ['fruit'], density: 1.08, piece: 98, pH: 3.8, sodium: 6, pasteurised: true },
  ),
  row(
    'canned apricots',
    'abricots au sirop',
    'tinned apricots, apricots in syrup, apricot halves',
    'solid',
    sr28('09027', [77.56, 0.53, 0.08, 21.47, 19.87, 1.6, 0.37], { sucrose: 0.4 }),
    { traits: ['fruit'], density: 1.08, piece: 40, pH: 3.8, sodium: 4, pasteurised: true },
  ),
  row(
    'canned lychees',
    'litchis au sirop',
    'tinned lychees, lychees in syrup',
    'solid',
    made('water', { sucrose: 8, otherSugars: 10, protein: 0.5, fibre: 0.8, ash: 0.3 }, practice),
    { traits: ['fruit'], density: 1.07, piece: 10, pH: 4, pasteurised: true },
  ),

  /* A purée may be raw or pasteurised: the line says which, so none is taken for pasteurised here. Bought frozen, it is weighed thawed. */
  row('raspberry purée', 'purée de framboise', 'raspberry pulp, raspberry coulis', 'liquid', raspberry, {
    ...berryPurée,
    pH: 3.2,
    sodium: 1,
  }),
  row('strawberry purée', 'purée de fraise', 'strawberry pulp, strawberry coulis', 'liquid', strawberry, {
    ...berryPurée,
    pH: 3.4,
    sodium: 1,
  }),
  row('blackcurrant purée', 'purée de cassis', 'cassis purée, blackcurrant pulp', 'liquid', blackcurrant, {
    ...berryPurée,
    pH: 2.9,
    sodium: 2,
  }),
  row('redcurrant purée', 'purée de groseille', '', 'liquid', redcurrant, { ...berryPurée, pH: 2.9, sodium: 1 }),
  row('blueberry purée', 'purée de myrtille', 'bilberry purée', 'liquid', blueberry, { ...berryPurée, pH: 3.3, sodium: 1 }),
  row('blackberry purée', 'purée de mûre', '', 'liquid', blackberry, { ...berryPurée, pH: 3.4, sodium: 1 }),
  row('cranberry purée', 'purée de canneberge', '', 'liquid', cranberry, { ...berryPurée, pH: 2.5, sodium: 2 }),
  row(
    'red berry purée',
    'purée de fruits rouges',
    'mixed berry purée, red fruit purée, berry purée',
    'liquid',
    mixed(
      [
        [1, raspberry],
        [1, strawberry],
        [1, blackcurrant],
        [1, blackberry],
      ],
      'computed: raspberry, strawberry, blackcurrant and blackberry in equal parts',
    ),
    { ...berryPurée, pH: 3.2, sodium: 1 },
  ),
  row('mango purée', 'purée de mangue', 'mango pulp', 'liquid', mango, { ...purée, density: 1.06, pH: 4, sodium: 1 }),
  row(
    'passion fruit purée',
    'purée de fruit de la passion',
    'passionfruit purée, passion fruit juice, passionfruit juice, passion purée',
    'liquid',
    passionJuice,
    { ...purée, traits: ['fruit', 'purée', 'juice'], density: 1.05, pH: 3, sodium: 6 },
  ),
  row('apricot purée', "purée d'abricot", 'apricot pulp', 'liquid', apricot, { ...purée, pH: 3.7, sodium: 1 }),
  row('peach purée', 'purée de pêche', 'white peach purée, vine peach purée', 'liquid', peach, { ...purée, pH: 3.7 }),
  row('pear purée', 'purée de poire', '', 'liquid', pear, { ...purée, density: 1.05, pH: 4, sodium: 1 }),
  row(
    'apple purée',
    'compote de pommes',
    'applesauce, apple sauce, apple compote, unsweetened applesauce, green apple purée',
    'paste',
    sr28('09019', [88.22, 0.17, 0.1, 11.27, 9.39, 1.1, 0.24], { sucrose: 0.2 }),
    { ...purée, pH: 3.5, sodium: 2 },
  ),
  row('banana purée', 'purée de banane', 'mashed banana, mashed bananas', 'paste', banana, {
    ...purée,
    density: 1.06,
    pH: 5,
    sodium: 1,
  }),
  row('cherry purée', 'purée de cerise', '', 'liquid', cherry, { ...purée, density: 1.06, pH: 3.9 }),
  row('sour cherry purée', 'purée de griotte', 'morello cherry purée, griotte purée', 'liquid', sourCherry, {
    ...purée,
    pH: 3.3,
    sodium: 3,
  }),
  row('plum purée', 'purée de prune', 'mirabelle purée', 'liquid', plum, { ...purée, pH: 3.3 }),
  row(
    'rhubarb purée',
    'purée de rhubarbe',
    '',
    'liquid',
    recalled('09307', [93.61, 0.9, 0.2, 4.54, 1.1, 1.8, 0.76], { sucrose: 0.1 }),
    { ...purée, density: 1.02, pH: 3.2, sodium: 4 },
  ),
  row('lychee purée', 'purée de litchi', 'litchi purée', 'liquid', lychee, { ...purée, density: 1.06, pH: 4.7, sodium: 1 }),
  row(
    'coconut purée',
    'purée de coco',
    'sweetened coconut purée',
    'liquid',
    made('water', { otherFat: 18, sucrose: 13, protein: 2, fibre: 1.5, ash: 0.6 }, practice),
    { storage: 'chilled', traits: ['coconut'], density: 1.03, pH: 6.2, saturated: 88.7, sodium: 15 },
  ),
  row('pineapple purée', "purée d'ananas", 'pineapple pulp', 'liquid', pineapple, {
    ...enzymePurée,
    density: 1.05,
    pH: 3.5,
    sodium: 1,
  }),
  row('kiwi purée', 'purée de kiwi', 'kiwifruit purée', 'liquid', kiwi, { ...enzymePurée, pH: 3.3, sodium: 3 }),
  row('papaya purée', 'purée de papaye', '', 'liquid', papaya, { ...enzymePurée, pH: 5.5, sodium: 8 }),
  row('fig purée', 'purée de figue', '', 'paste', fig, { ...enzymePurée, density: 1.08, pH: 5, sodium: 1 }),
  row('melon purée', 'purée de melon', '', 'liquid', melon, { ...enzymePurée, pH: 6.3, sodium: 16 }),

  row('lemon', 'citron', 'lemons', 'solid', sr28('09150', [88.98, 1.1, 0.3, 9.32, 2.5, 2.8, 0.3], { sucrose: 0.2 }), {
    ...citrus,
    density: 0.9,
    piece: 58,
    pH: 2.4,
    sodium: 2,
  }),
  row('lime', 'citron vert', 'limes', 'solid', sr28('09159', [88.26, 0.7, 0.2, 10.54, 1.69, 2.8, 0.3], { sucrose: 0.2 }), {
    ...citrus,
    density: 0.9,
    piece: 67,
    pH: 2.4,
    sodium: 2,
  }),
  row(
    'orange',
    'orange',
    'oranges, orange segments, orange fillets',
    'solid',
    sr28('09200', [86.75, 0.94, 0.12, 11.75, 9.35, 2.4, 0.44], { sucrose: 0.5 }),
    { ...citrus, density: 0.76, piece: 131, pH: 3.7 },
  ),
  row(
    'mandarin',
    'mandarine',
    'mandarins, mandarine, clementine, clementines, tangerine, tangerines, satsuma, mandarin segments',
    'solid',
    mandarin,
    { ...citrus, density: 0.82, piece: 76, pH: 3.8, sodium: 2 },
  ),
  row(
    'grapefruit',
    'pamplemousse',
    'grapefruits, pink grapefruit, grapefruit segments',
    'solid',
    recalled('09111', [90.89, 0.63, 0.1, 8.08, 6.98, 1.1, 0.31], { sucrose: 0.4 }),
    { ...citrus, density: 0.97, piece: 236, pH: 3.2 },
  ),
  row('lemon juice', 'jus de citron', 'fresh lemon juice, lemon purée', 'liquid', lemonJuice, {
    ...citrusJuice,
    pH: 2.3,
    sodium: 1,
  }),
  row('lime juice', 'jus de citron vert', 'fresh lime juice, lime purée', 'liquid', limeJuice, {
    ...citrusJuice,
    pH: 2.3,
    sodium: 2,
  }),
  row(
    'orange juice',
    "jus d'orange",
    'fresh orange juice, blood orange juice, orange purée, blood orange purée',
    'liquid',
    orangeJuice,
    { ...citrusJuice, density: 1.045, pH: 3.7, sodium: 1 },
  ),
  row(
    'mandarin juice',
    'jus de mandarine',
    'mandarin purée, tangerine juice, clementine juice',
    'liquid',
    sr28('09221', [88.9, 0.5, 0.2, 10.1, 9.9, 0.2, 0.3], { sucrose: 0.6 }),
    { ...citrusJuice, density: 1.045, pH: 3.8, sodium: 1 },
  ),
  row(
    'grapefruit juice',
    'jus de pamplemousse',
    'pink grapefruit juice, grapefruit purée',
    'liquid',
    recalled('09128', [90, 0.5, 0.1, 9.2, 9.1, 0.1, 0.2], { sucrose: 0.4 }),
    { ...citrusJuice, density: 1.04, pH: 3.2, sodium: 1 },
  ),
  row(
    'yuzu juice',
    'jus de yuzu',
    'yuzu, yuzu purée',
    'liquid',
    made(
      'water',
      { otherSugars: 1.5, sucrose: 0.3, fibre: 6.5, protein: 0.5, ash: 0.4 },
      `${practice}; acids counted with fibre`,
    ),
    { ...citrusJuice, pH: 2.4, sodium: 2 },
  ),
  row(
    'bergamot juice',
    'jus de bergamote',
    'bergamot, bergamot purée',
    'liquid',
    made('water', { otherSugars: 2, sucrose: 0.5, fibre: 6, protein: 0.4, ash: 0.4 }, `${practice}; acids counted with fibre`),
    { ...citrusJuice, pH: 2.3, sodium: 2 },
  ),
  row(
    'calamansi juice',
    'jus de calamansi',
    'calamansi, calamansi purée, kalamansi juice',
    'liquid',
    made('water', { otherSugars: 2, sucrose: 0.5, fibre: 5.5, protein: 0.4, ash: 0.4 }, `${practice}; acids counted with fibre`),
    { ...citrusJuice, pH: 2.5, sodium: 2 },
  ),
  row(
    'apple juice',
    'jus de pomme',
    'cloudy apple juice',
    'liquid',
    sr28('09016', [88.24, 0.1, 0.13, 11.3, 9.62, 0.2, 0.23], { sucrose: 0.15 }),
    { storage: 'chilled', traits: ['fruit', 'juice'], density: 1.045, pH: 3.5, sodium: 4, pasteurised: true },
  ),
  row(
    'pineapple juice',
    "jus d'ananas",
    'canned pineapple juice',
    'liquid',
    sr28('09273', [86.37, 0.36, 0.12, 12.87, 9.98, 0.2, 0.28], { sucrose: 0.4 }, 'canned, hence heated'),
    { traits: ['fruit', 'juice'], density: 1.05, pH: 3.5, sodium: 2, pasteurised: true },
  ),
  row(
    'grape juice',
    'jus de raisin',
    'white grape juice, red grape juice',
    'liquid',
    recalled('09135', [84.51, 0.37, 0.13, 14.77, 14.2, 0.2, 0.22], { sucrose: 0 }),
    { traits: ['fruit', 'juice'], density: 1.06, pH: 3.4, sodium: 5, pasteurised: true },
  ),
  row(
    'pomegranate juice',
    'jus de grenade',
    '',
    'liquid',
    recalled('09442', [85.95, 0.15, 0.29, 13.13, 12.65, 0.1, 0.49], { sucrose: 0 }),
    { storage: 'chilled', traits: ['fruit', 'juice'], density: 1.05, pH: 3.1, sodium: 9, pasteurised: true },
  ),
  row(
    'pomegranate molasses',
    'mélasse de grenade',
    'grenadine molasses',
    'liquid',
    made('water', { otherSugars: 55, fibre: 11, protein: 0.5, ash: 1.5 }, practice),
    { traits: ['fruit', 'syrup'], density: 1.35, pH: 2.5, sodium: 20, pasteurised: true },
  ),

  // One piece is the zest of one fruit, finely grated (common practice, no source).
  row('lemon zest', 'zeste de citron', 'lemon peel, grated lemon zest, lemon rind', 'solid', lemonPeel, {
    storage: 'chilled',
    traits: ['citrus', 'infusable'],
    density: 0.41,
    piece: 6,
    pH: 4,
    sodium: 6,
  }),
  row('lime zest', 'zeste de citron vert', 'lime peel, lime rind', 'solid', lemonPeel, {
    storage: 'chilled',
    traits: ['citrus', 'infusable'],
    density: 0.41,
    piece: 4,
    pH: 4,
    sodium: 6,
  }),
  row('orange zest', "zeste d'orange", 'orange peel, orange rind, grated orange zest, fresh orange peel', 'solid', orangePeel, {
    storage: 'chilled',
    traits: ['citrus', 'infusable'],
    density: 0.41,
    piece: 10,
    pH: 4.5,
    sodium: 3,
  }),
  row(
    'citrus zest',
    "zeste d'agrumes",
    'zest, citrus peel, mandarin zest, grapefruit zest, yuzu zest, bergamot zest, mandarin peel, clementine zest',
    'solid',
    orangePeel,
    { storage: 'chilled', traits: ['citrus', 'infusable'], density: 0.41, pH: 4.5, sodium: 3 },
  ),

  row(
    'raisins',
    'raisins secs',
    'raisin, dried grapes, seedless raisins',
    'solid',
    recalled('09298', [15.43, 3.07, 0.46, 79.18, 59.19, 3.7, 1.85], { restIsSugar: true }),
    { traits: ['fruit'], density: 0.65, piece: 0.5, absorbs: 0.6, pH: 4, sodium: 11 },
  ),
  row(
    'sultanas',
    'raisins de Smyrne',
    'sultana, golden raisins, golden raisin',
    'solid',
    recalled('09297', [14.97, 3.39, 0.46, 79.52, 59.19, 4, 1.66], { restIsSugar: true }),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.65, piece: 0.4, absorbs: 0.6, pH: 4, sodium: 12 },
  ),
  row(
    'currants',
    'raisins de Corinthe',
    'dried currants, zante currants',
    'solid',
    sr28('09085', [19.21, 4.08, 0.27, 74.08, 67.28, 6.8, 2.36], {}),
    { traits: ['fruit'], density: 0.61, absorbs: 0.6, pH: 4, sodium: 8 },
  ),
  row(
    'prune',
    'pruneau',
    'prunes, dried plum, dried plums, pitted prunes',
    'solid',
    sr28('09291', [30.92, 2.18, 0.38, 63.88, 38.13, 7.1, 2.64], { restIsSugar: true }, 'polyols counted with the sugars'),
    { traits: ['fruit'], density: 0.74, piece: 9.5, absorbs: 0.5, pH: 3.9, sodium: 2 },
  ),
  row(
    'dried apricot',
    'abricot sec',
    'dried apricots',
    'solid',
    sr28('09032', [30.89, 3.39, 0.51, 62.64, 53.44, 7.3, 2.57], { sucrose: 0.3 }),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.55, piece: 7, absorbs: 0.7, pH: 4, sodium: 10 },
  ),
  row('dried fig', 'figue sèche', 'dried figs', 'solid', sr28('09094', [30.05, 3.3, 0.93, 63.87, 47.92, 9.8, 1.86], {}), {
    traits: ['fruit'],
    density: 0.63,
    piece: 8.4,
    absorbs: 0.6,
    pH: 5,
    sodium: 10,
  }),
  row(
    'date',
    'datte',
    'dates, pitted dates, medjool date, medjool dates',
    'solid',
    recalled('09421', [21.32, 1.81, 0.15, 74.97, 66.47, 6.7, 1.74], { sucrose: 0.1 }),
    { traits: ['fruit'], density: 0.62, piece: 24, absorbs: 0.3, pH: 5.5, sodium: 1 },
  ),
  row(
    'dried cranberries',
    'canneberges séchées',
    'dried cranberry',
    'solid',
    sr28('09079', [15.79, 0.17, 1.09, 82.8, 72.56, 5.3, 0.15], { sucrose: 0.5 }),
    { traits: ['fruit', 'berry'], density: 0.5, absorbs: 0.6, pH: 2.8, sodium: 5 },
  ),
  row(
    'dried apple',
    'pomme séchée',
    'dried apples, apple rings',
    'solid',
    sr28('09011', [31.76, 0.93, 0.32, 65.89, 57.19, 8.7, 1.1], { sucrose: 0.2 }),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.36, piece: 6.4, absorbs: 1, pH: 3.7, sodium: 87 },
  ),
  row(
    'dried pear',
    'poire séchée',
    'dried pears',
    'solid',
    sr28('09259', [26.69, 1.87, 0.63, 69.7, 62.2, 7.5, 1.11], { sucrose: 0.1 }),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.7, piece: 18, absorbs: 0.7, pH: 4.2, sodium: 6 },
  ),
  row(
    'freeze-dried raspberry',
    'framboise lyophilisée',
    'freeze-dried raspberries, freeze-dried raspberry powder, raspberry powder, freeze dried raspberries',
    'solid',
    made(
      'fibre',
      { water: 3, protein: 8, otherFat: 4, sucrose: 3, otherSugars: 27, ash: 3 },
      'computed: USDA SR28 09302 without its water',
    ),
    { traits: ['fruit', 'berry'], density: 0.15, pH: 3.2, sodium: 7 },
  ),
  row(
    'freeze-dried strawberry',
    'fraise lyophilisée',
    'freeze-dried strawberries, freeze-dried strawberry powder, strawberry powder, freeze dried strawberries',
    'solid',
    made(
      'fibre',
      { water: 3, protein: 7, otherFat: 3, sucrose: 5, otherSugars: 47, ash: 4 },
      'computed: USDA SR28 09316 without its water',
    ),
    { traits: ['fruit', 'berry'], density: 0.12, pH: 3.4, sodium: 10 },
  ),
  row(
    'candied orange peel',
    "écorce d'orange confite",
    'candied peel, candied citrus peel, candied lemon peel, mixed peel, candied fruit peel, orangeat',
    'solid',
    made('sucrose', { water: 18, otherSugars: 30, fibre: 4, protein: 0.3, ash: 0.3 }, practice),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.75, pH: 4, sodium: 30, pasteurised: true },
  ),
  row(
    'candied fruit',
    'fruits confits',
    'candied fruits, glacé fruit, glacé fruits',
    'solid',
    made('sucrose', { water: 19, otherSugars: 35, fibre: 2, protein: 0.3, ash: 0.3 }, practice),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.8, pH: 4, sodium: 60, pasteurised: true },
  ),
  row(
    'candied cherry',
    'bigarreau confit',
    'candied cherries, glacé cherries, glacé cherry',
    'solid',
    made('sucrose', { water: 20, otherSugars: 40, fibre: 1.5, protein: 0.3, ash: 0.2 }, practice),
    { allergens: ['sulphite'], traits: ['fruit'], density: 0.8, piece: 5, pH: 4, sodium: 30, pasteurised: true },
  ),
  row(
    'candied ginger',
    'gingembre confit',
    'stem ginger, crystallised ginger, crystallized ginger',
    'solid',
    made('sucrose', { water: 15, otherSugars: 15, starch: 2, fibre: 3, ash: 0.5 }, practice),
    { traits: ['fruit'], density: 0.75, pH: 5, sodium: 30, pasteurised: true },
  ),
  row(
    'amarena cherries',
    'cerises amarena',
    'amarena, amarena cherry, cherries in syrup',
    'solid',
    made('water', { sucrose: 30, otherSugars: 35, fibre: 1.5, protein: 0.6, ash: 0.3 }, practice),
    { traits: ['fruit'], density: 1.2, piece: 4, pH: 3.5, pasteurised: true },
  ),
  row(
    'brandied cherries',
    'cerises à l’eau-de-vie',
    'cherries in brandy, cherries in kirsch',
    'solid',
    made('water', { alcohol: 12, otherSugars: 22, fibre: 1.5, protein: 0.6, ash: 0.3 }, practice),
    { traits: ['fruit', 'alcohol'], density: 1.02, piece: 3.5, pH: 3.5 },
  ),
  jam(
    'raspberry jam',
    'confiture de framboises',
    'jam, raspberry preserve, seedless raspberry jam, strawberry jam, berry jam, blackcurrant jam',
  ),
  jam('apricot jam', "confiture d'abricots", 'apricot preserve, apricot glaze, apricot nappage'),
  jam('orange marmalade', "marmelade d'orange", 'marmalade, bitter orange marmalade'),
  jam('redcurrant jelly', 'gelée de groseille', 'currant jelly, quince jelly, fruit jelly, apple jelly'),

  row(
    'pumpkin purée',
    'purée de courge',
    'pumpkin, canned pumpkin, squash purée',
    'paste',
    recalled('11424', [89.97, 1.1, 0.28, 8.09, 3.3, 2.9, 0.56], { sucrose: 0.3, starch: 0.8 }),
    { storage: 'chilled', density: 1.03, pH: 5.2, saturated: 52, sodium: 5 },
  ),
  row(
    'carrot',
    'carotte',
    'carrots, grated carrot, grated carrots',
    'solid',
    recalled('11124', [88.29, 0.93, 0.24, 9.58, 4.74, 2.8, 0.97], { sucrose: 0.75, starch: 0.7 }),
    { storage: 'chilled', density: 0.47, piece: 61, pH: 6, saturated: 15, sodium: 69 },
  ),
  row('courgette', 'courgette', 'zucchini, courgettes', 'solid', recalled('11477', [94.79, 1.21, 0.32, 3.11, 2.5, 1, 0.58], {}), {
    storage: 'chilled',
    density: 0.52,
    piece: 196,
    pH: 5.9,
    saturated: 26,
    sodium: 8,
  }),
  row(
    'sweet potato',
    'patate douce',
    'sweet potatoes, sweet potato purée',
    'solid',
    recalled('11507', [77.28, 1.57, 0.05, 20.12, 4.18, 3, 0.99], { sucrose: 0.6, starch: 1 }),
    { density: 0.56, piece: 130, pH: 5.5, saturated: 36, sodium: 55 },
  ),
  row(
    'beetroot',
    'betterave',
    'beet, beets, beetroot purée, cooked beetroot',
    'solid',
    recalled('11080', [87.58, 1.61, 0.17, 9.56, 6.76, 2.8, 1.08], { sucrose: 0.95 }),
    { storage: 'chilled', density: 0.57, piece: 82, pH: 5.5, saturated: 16, sodium: 78 },
  ),
  row(
    'red bean paste',
    'pâte de haricots azuki',
    'azuki paste, anko, adzuki bean paste, sweet bean paste',
    'paste',
    made('water', { sucrose: 38, otherSugars: 1, starch: 17, protein: 5, fibre: 5, otherFat: 0.3, ash: 0.5 }, practice),
    { density: 1.2, pH: 6, sodium: 30, pasteurised: true },
  ),
];
