/** French cards: infinitives, as on a French school's technical sheet. */
import { amount, type Bit, join, list, name, type Phrase, sentence, sign, temperature, time } from '../sentence.ts';
import type { AttributeWords, Language, StepWords, Term } from './language.ts';

export const french: Language = {
  code: 'fr',
  name: 'français',
  decimal: ',',
  quotes: ['« ', ' »'],
  labels: {
    by: 'par',
    version: 'Version',
    printed: 'Imprimé le',
    makes: 'Pour',
    served: 'Servir à',
    keeps: 'Conservation',
    choices: 'Cette fiche',
    scaling: 'Mise à l’échelle',
    ingredients: 'Pesées',
    method: 'Progression',
    amount: 'Quantité',
    usMeasure: 'Mesure US',
    ingredient: 'Ingrédient',
    share: 'Part',
    bakers: 'Sur farine',
    assembly: 'Montage',
    from: 'tiré de',
    some: 'un peu',
    critical: 'Critique',
    additions: 'Incorporé en plusieurs fois',
    temperatureLine: 'Courbe de température',
    danger: 'zone de multiplication des bactéries',
    timeCompressed: 'Plus une attente est longue, plus elle est resserrée.',
    window: 'Plage écrite',
    step: 'Étape',
    time: 'Durée',
    starts: 'Début',
    ends: 'Fin',
    differences: 'Avec d’autres choix',
    instead: 'au lieu de',
    notThere: 'supprimé',
    allergens: 'Allergènes',
    contains: 'Contient',
    noAllergens: 'Aucun des allergènes à déclaration obligatoire, d’après le catalogue.',
    unknownAllergens: 'Inconnu pour',
    freeFrom: 'Fabriqué sans',
    nutrition: 'Valeurs nutritionnelles',
    per100: 'pour 100 g',
    nutritionUnknown: 'Non calculé : composition inconnue de',
    nutritionBasis: 'Calculé d’après un catalogue ; ce n’est pas une analyse de laboratoire.',
    storage: 'Stockage',
    cautions: 'Précautions',
    allowed: 'Admis à la main',
    noReason: 'sans raison donnée',
    unchecked: 'Non vérifié jusqu’au bout',
    uncheckedWhy:
      'Le vérificateur a trouvé des erreurs dans cette formule. Ne travaillez pas avec cette fiche avant de les avoir corrigées.',
    line: 'ligne',
    why: 'Pourquoi',
    rows: {
      energy: 'Énergie',
      fat: 'Matières grasses',
      saturates: 'dont acides gras saturés',
      carbohydrate: 'Glucides',
      sugars: 'dont sucres',
      fibre: 'Fibres alimentaires',
      protein: 'Protéines',
      salt: 'Sel',
    },
    us: {
      calories: 'Calories',
      fat: 'Lipides totaux',
      saturates: 'Gras saturés',
      sodium: 'Sodium',
      carbohydrate: 'Glucides totaux',
      fibre: 'Fibres',
      sugars: 'Sucres totaux',
      protein: 'Protéines',
      lessThan: 'moins de',
      notStated: 'Acides gras trans, cholestérol, sucres ajoutés et vitamines ne sont pas calculés.',
    },
  },
  scaling: {
    asWritten: 'Comme écrit.',
    count: (w) => `× ${w.factor} d’après le nombre : de ${w.from} à ${w.to}.`,
    mass: (w) => `× ${w.factor} d’après la masse : de ${w.from} à ${w.to}.`,
    volume: (w) => `× ${w.factor} d’après le volume : de ${w.from} à ${w.to}.`,
    density: (w) =>
      `× ${w.factor} : ${w.to}, soit ${w.millilitres} ou ${w.grams} à la masse volumique calculée du mélange fini, ${w.density} ; écrit pour ${w.from}.`,
    fills: (w) =>
      `L’ensemble pèse ${w.grams} et remplit ${w.millilitres} : ${w.density}, calculé pour le mélange fini avec l’air que le foisonnement et l’incorporation y laissent (estimation).`,
    lined: 'Le fond ou la coque occupe une part de chaque moule : le nombre est exact, la taille une estimation.',
    limit: (w) => `× ${w.factor} : ce que permettent ${w.amount} de ${w.name}.`,
    pieces: (w) => `Arrondi à ${w.count} de ${w.name}, et tout le reste avec (demandé : × ${w.asked}).`,
    rounding: (percent) => `L’arrondi de la balance change le total de ${percent}.`,
    times:
      'Les durées ne suivent pas l’échelle : une plus grande masse chauffe et refroidit plus lentement, une plus petite plus vite. Se fier à la température et à l’aspect, non à l’horloge.',
    vessels: 'Casserole, cuve et plaque ne suivent pas non plus : garder la même épaisseur, ou travailler en plusieurs fois.',
    batches: (w) =>
      `L’étape ${w.step} demande ${w.needs} ; « ${w.vessel} » contient ${w.holds} : travailler en ${w.batches} fois.`,
  },
  units: {
    s: 's',
    min: 'min',
    h: 'h',
    tsp: 'c. à c.',
    tbsp: 'c. à s.',
    cup: 'cup',
    floz: 'fl oz',
    oz: 'oz',
    lb: 'lb',
    pc: 'pièce',
  },
  days: (count, one) => `${count} ${one ? 'jour' : 'jours'}`,
  overnight: (range) => `une nuit (${range})`,
  below: (reading) => `moins de ${reading}`,
  above: (reading) => `plus de ${reading}`,
  keeping: (duration, reading) => (reading ? `${duration} à ${reading}` : duration),
  after: (step) => (step === 0 ? 'D’abord' : `Après l’étape ${step}`),
  perPiece: (noun, grams) => `par ${noun ?? 'portion'} (${grams})`,
  yield: (count, noun, size) => `${count} ${noun}${size ? ` de ${size}` : ''}`,
  noun: (noun, count) => nouns[noun]?.[count < 2 ? 0 : 1] ?? null,
  kind: (kind) => kind.fr || null,
  allergen: (allergen) => allergens[allergen],
  glutenOfWheat: 'blé (gluten)',
  attribute,
  tool: (tool) => tools[tool]?.[0] ?? null,
  step,
  reasons: {
    'egg thickens': (t) => `L’œuf lie vers ${t(79, 85)} et graine quelques degrés plus haut.`,
    'egg safe': () =>
      'C’est cette température, tenue comme écrit, qui rend l’œuf sûr : plus bas ou moins longtemps ne suffit pas.',
    'starch cooks': () =>
      'L’amidon n’épaissit tout à fait qu’à ébullition, et l’ébullition arrête l’enzyme du jaune qui le liquéfierait ensuite.',
    syrup: () => 'La température d’un sirop qui bout est sa concentration : un degré de moins laisse plus d’eau.',
    caramel: () => 'À partir d’ici le sucre brunit ; son amertume se joue en quelques secondes.',
    'fold cream': (t) =>
      `Au-dessus de ${t(35)} la matière grasse qui porte la crème montée fond et la mousse tombe ; trop froid, l’appareil est trop épais pour la recevoir.`,
    'fold chocolate': () =>
      'Assez chaud pour que le beurre de cacao reste liquide pendant que la crème entre, assez froid pour qu’elle ne fonde pas d’un coup.',
    'fold white': () => 'Une mousse de blancs supporte la chaleur, mais l’appareil doit rester assez souple pour la recevoir.',
    'gelatin melts': (t) =>
      `La gélatine hydratée fond à partir d’environ ${t(35)} ; plus froid, elle reste en fils. L’ébullition l’affaiblit.`,
    'gelatin sets': () => 'La gélatine prend au froid en quelques heures et se raffermit encore pendant une demi-journée.',
    'chocolate melts': () =>
      'Le beurre de cacao doit fondre à cœur ; plus chaud, les solides du lait et du cacao brûlent et épaississent.',
    'chocolate works': () =>
      'Dans cette plage les cristaux stables du beurre de cacao tiennent ; quelques degrés de plus les fondent.',
    ganache: () => 'Crème et chocolat ne forment une émulsion lisse que tant que le beurre de cacao est liquide.',
    glaze: () => 'Plus chaud, le glaçage coule trop fin et fond ce qu’il couvre ; plus froid, il traîne.',
    butter: () => 'Le beurre ne retient l’air et ne se lie que souple, ni dur ni huileux.',
    cold: (t) => `Entre ${t(5)} et ${t(57)} les bactéries se multiplient : traverser vite, puis rester en dessous.`,
    frozen: () => 'Pris à cœur par le froid, il garde sa forme au démoulage, au glaçage et à la coupe.',
  },
  cautions: {
    egg: () =>
      'Contient de l’œuf. Pour les jeunes enfants, les femmes enceintes, les personnes âgées ou malades, utiliser de l’œuf pasteurisé et chauffer comme écrit, sonde en main.',
    'raw egg': () =>
      'Dans cette formule, de l’œuf arrive à table sans avoir assez chauffé. Utiliser de l’œuf pasteurisé ; ne pas le servir cru aux jeunes enfants, aux femmes enceintes, aux personnes âgées ou malades.',
    'egg undercooked': () =>
      'Tel qu’écrit, l’œuf ne chauffe pas assez pour être sûr. Ne pas servir avant d’avoir corrigé la température ou la durée.',
    'hot sugar': (t) =>
      `Le sucre au-dessus de ${t(100)} brûle en profondeur et colle : outils secs, manches longues, eau froide à portée, personne derrière soi.`,
    'hot fat': () =>
      'La graisse chaude brûle et peut prendre feu : pas d’eau à côté, un couvercle à portée, ne jamais la quitter.',
    cooling: (t) =>
      `Refroidir les préparations périssables de ${t(57)} à ${t(21)} en 2 heures, et à ${t(5)} en 6 heures en tout : plaques peu profondes, bain de glace, en remuant.`,
    'cold storage': (t) =>
      `Conserver à ${t(5)} ou plus froid, sauf indication contraire de la formule, avec la date de fabrication.`,
    'raw flour': () =>
      'La farine crue et les fruits rouges surgelés peuvent porter des germes : les chauffer à cœur, ou les acheter traités à la chaleur.',
    alcohol: () => 'Il reste de l’alcool dans ce qui est servi : le dire aux convives.',
    'no plan': () =>
      'Cette fiche est une aide au travail, non un plan de maîtrise sanitaire. La réglementation locale et l’avis d’un professionnel agréé passent avant elle. Allergènes et valeurs nutritionnelles sont calculés d’après un catalogue : vérifier les étiquettes de ce qui est réellement employé.',
  },
};

function step(w: StepWords): Phrase {
  if (w.doing !== null) return sentence(w.doing);
  const [infinitive, into] = verbs[w.verb] ?? [w.verb, 'dans'];
  const stream = w.verb === 'temper' && w.into !== null;
  return sentence(
    stream ? 'verser en filet' : infinitive,
    terms(w.operands),
    w.each ? amount(w.each) : null,
    w.check ? temperature(w.check) : null,
    party(stream ? 'sur' : into, w.into, w),
    stream ? 'en fouettant' : null,
    party('sur', w.over, w),
    party('dans', w.inside, w),
    w.pieces ? `en ${w.pieces}` : null,
    w.with.length > 0 ? join(['avec', terms(w.with)]) : null,
    w.additions ? `en ${w.additions.count} fois${series(w.additions.tools)}` : null,
    w.turns ? `en ${w.turns.count} tours${series(w.turns.kinds.map((kind) => turns[kind] ?? kind))}` : null,
    w.tool ? withTool(w.tool) : null,
    target(w),
    w.at ? join(['à', temperature(w.at)]) : null,
    w.atRoom ? 'à température ambiante' : null,
    w.medium ? (media[w.medium] ?? `dans : ${w.medium}`) : null,
    w.level ? `à ${mixing.has(w.verb) ? speeds[w.level] : heats[w.level]}` : null,
    w.using ? `(${w.using})` : null,
    w.for ? join(['pendant', time(w.for)]) : null,
    w.until ? sign(signs[w.until] ?? `jusqu’à : « ${w.until} »`) : null,
    w.whileWhipping ? 'en continuant de battre' : null,
    w.losing ? `, avec une perte de ${w.losing}` : null,
    w.as ? join([' :', name(`« ${w.as} »`)]) : null,
  );
}

const terms = (items: readonly Term[]): Bit => (items.length === 0 ? null : list(items.map(term), 'et'));

function term(item: Term): Phrase {
  const words = name(item.text);
  const of = /^[aeiouyhéèêëàâîïôöùûœ]/iu.test(item.text) ? 'd’' : 'de ';
  const ofName: Phrase = [{ kind: 'text', text: of }, words];
  if (item.part === 'quantity' && item.amount) return join([amount(item.amount), ofName]);
  if (item.part === 'rest') return join(['le reste', ofName, measured(item)]);
  if (item.part !== null && typeof item.part === 'object')
    return join([item.part.fraction === 0.5 ? 'la moitié' : fraction(item.part.fraction), ofName, measured(item)]);
  return join([words, measured(item)]);
}

const measured = (item: Term): Bit => (item.amount ? amount(`(${item.amount})`) : null);

function party(word: string, item: Term | null, w: StepWords): Bit {
  if (!item) return null;
  if (item.vessel === null) return join([word, term(item)]);
  return join([w.each ? 'par' : word === 'sur' ? 'sur' : 'en', name(item.text)]);
}

function target(w: StepWords): Bit {
  if (!w.to) return null;
  if (w.to.kind === 'peak') return sign(`jusqu’au bec ${w.to.peaks.map((peak) => peaks[peak] ?? peak).join('–')}`);
  return join(['à', w.to.kind === 'temperature' ? temperature(w.to.text) : amount(w.to.text)]);
}

const withTool = (tool: string): string => tools[tool]?.[1] ?? `avec : ${tool}`;

function series(names: readonly string[]): string {
  if (names.length === 0) return '';
  const words = names.map((tool) => tools[tool]?.[0] ?? tool);
  return words.length === 1 ? ` : ${words[0]}` : ` : ${words.slice(0, -1).join(', ')}, puis ${words[words.length - 1]}`;
}

function fraction(value: number): string {
  for (const under of [3, 4, 5, 6, 8]) {
    const over = Math.round(value * under);
    if (over > 0 && Math.abs(over / under - value) < 1e-3) return `${over}/${under}`;
  }
  return String(Math.round(value * 1000) / 1000).replace('.', ',');
}

function attribute(a: AttributeWords): string {
  if (a.kind === 'share')
    return `${a.percent} de ${{ fat: 'matière grasse', cocoa: 'cacao', sugar: 'sucre', solids: 'matière sèche', alcohol: 'vol. en masse' }[a.of]}`;
  if (a.kind === 'pH') return `pH ${a.value}`;
  if (a.kind === 'brix') return `${a.value} °Bx`;
  if (a.kind === 'bloom') return `${a.value} bloom`;
  return a.kind === 'phase'
    ? (phases[a.phase] ?? a.phase)
    : { raw: 'cru', fresh: 'frais', canned: 'en conserve', pasteurised: 'pasteurisé' }[a.state];
}

const mixing: ReadonlySet<string> = new Set(['mix', 'whisk', 'stir', 'whip', 'blend', 'knead', 'cream', 'combine', 'smooth']);
const speeds = { low: 'petite vitesse', medium: 'vitesse moyenne', high: 'grande vitesse' } as const;
const heats = { low: 'feu doux', medium: 'feu moyen', high: 'feu vif' } as const;

/** Infinitive, and the preposition before what takes the operands in. */
const verbs: Readonly<Record<string, readonly [string, string]>> = {
  mix: ['mélanger', 'à'],
  whisk: ['fouetter', 'dans'],
  stir: ['remuer', 'dans'],
  add: ['ajouter', 'à'],
  combine: ['réunir', 'avec'],
  rub: ['sabler', 'avec'],
  knead: ['pétrir', 'avec'],
  sift: ['tamiser', 'sur'],
  cream: ['crémer', 'avec'],
  smooth: ['lisser', 'dans'],
  laminate: ['tourer', 'dans'],
  heat: ['chauffer', 'dans'],
  cook: ['cuire', 'dans'],
  boil: ['faire bouillir', 'dans'],
  reduce: ['réduire', 'dans'],
  melt: ['faire fondre', 'dans'],
  bake: ['cuire au four', 'dans'],
  toast: ['torréfier', 'dans'],
  hold: ['maintenir', 'dans'],
  dry: ['sécher', 'dans'],
  caramelise: ['caraméliser', 'dans'],
  fry: ['frire', 'dans'],
  cool: ['refroidir', 'dans'],
  chill: ['mettre au froid', 'dans'],
  freeze: ['surgeler', 'dans'],
  rest: ['laisser reposer', 'dans'],
  thaw: ['décongeler', 'dans'],
  churn: ['turbiner', 'dans'],
  proof: ['laisser pousser', 'dans'],
  bloom: ['hydrater', 'dans'],
  dissolve: ['dissoudre', 'dans'],
  soak: ['faire tremper', 'dans'],
  infuse: ['infuser', 'dans'],
  strain: ['passer', 'dans'],
  press: ['presser', 'dans'],
  temper: ['tempérer', 'sur'],
  whip: ['monter', 'dans'],
  fold: ['incorporer délicatement', 'à'],
  blend: ['mixer', 'dans'],
  pour: ['verser', 'dans'],
  portion: ['répartir', 'dans'],
  pipe: ['pocher', 'dans'],
  spread: ['étaler', 'dans'],
  layer: ['monter en couches', 'dans'],
  fill: ['garnir', 'dans'],
  line: ['foncer', 'dans'],
  roll: ['abaisser', 'dans'],
  shape: ['façonner', 'en'],
  cut: ['détailler', 'en'],
  unmould: ['démouler', 'sur'],
  glaze: ['glacer', 'dans'],
  dust: ['saupoudrer', 'dans'],
  brush: ['badigeonner', 'dans'],
  dip: ['tremper', 'dans'],
  coat: ['enrober', 'dans'],
  grease: ['graisser', 'dans'],
  garnish: ['décorer', 'dans'],
  serve: ['servir', 'dans'],
  pack: ['conditionner', 'dans'],
  reserve: ['réserver', 'dans'],
  discard: ['jeter', 'dans'],
  check: ['contrôler la lecture :', 'dans'],
};

const media: Readonly<Record<string, string>> = {
  'ice bath': 'au bain de glace',
  'water bath': 'au bain-marie',
  fridge: 'au réfrigérateur',
  freezer: 'au congélateur',
  'blast chiller': 'en cellule de refroidissement',
  oven: 'au four',
};

/** The tool, and how it is said after the verb. */
const tools: Readonly<Record<string, readonly [string, string]>> = {
  whisk: ['fouet', 'au fouet'],
  spatula: ['maryse', 'à la maryse'],
  mixer: ['batteur', 'au batteur'],
  'hand mixer': ['batteur électrique', 'au batteur électrique'],
  'immersion blender': ['mixeur plongeant', 'au mixeur plongeant'],
  blender: ['blender', 'au blender'],
  'food processor': ['cutter', 'au cutter'],
  torch: ['chalumeau', 'au chalumeau'],
  sieve: ['tamis', 'au tamis'],
  paddle: ['feuille', 'à la feuille'],
  hook: ['crochet', 'au crochet'],
  spoon: ['cuillère', 'à la cuillère'],
  ladle: ['louche', 'à la louche'],
  scraper: ['corne', 'à la corne'],
  'palette knife': ['palette', 'à la palette'],
  'rolling pin': ['rouleau', 'au rouleau'],
  sheeter: ['laminoir', 'au laminoir'],
  knife: ['couteau', 'au couteau'],
  cutter: ['emporte-pièce', 'à l’emporte-pièce'],
  grater: ['râpe', 'à la râpe'],
  'pastry brush': ['pinceau', 'au pinceau'],
  'piping bag': ['poche à douille', 'à la poche à douille'],
  siphon: ['siphon', 'au siphon'],
  thermometer: ['thermomètre', 'au thermomètre'],
  hands: ['mains', 'à la main'],
};

const turns: Readonly<Record<string, string>> = { single: 'simple', double: 'double' };

const peaks: Readonly<Record<string, string>> = { 'very soft': 'très souple', soft: 'souple', medium: 'moyen', stiff: 'ferme' };

const signs: Readonly<Record<string, string>> = {
  nappe: 'jusqu’à la nappe',
  ribbon: 'jusqu’au ruban',
  dissolved: 'jusqu’à dissolution',
  melted: 'jusqu’à fonte complète',
  smooth: 'jusqu’à texture lisse',
  boiling: 'jusqu’à ébullition',
  thick: 'jusqu’à épaississement',
  golden: 'jusqu’à coloration dorée',
  set: 'jusqu’à la prise',
  'just set': 'jusqu’à une prise encore tremblante au centre',
  sandy: 'jusqu’à texture sableuse',
  glossy: 'jusqu’à un aspect brillant',
  frothy: 'jusqu’à ce que le mélange mousse',
  amber: 'jusqu’à couleur ambrée',
  pale: 'jusqu’à blanchiment',
  doubled: 'jusqu’au double du volume',
  browned: 'jusqu’à couleur noisette',
  foamy: 'jusqu’à consistance mousseuse',
};

/** Singular and plural. */
const nouns: Readonly<Record<string, readonly [string, string]>> = {
  ring: ['cercle', 'cercles'],
  tart: ['tarte', 'tartes'],
  cylinder: ['cylindre', 'cylindres'],
  cone: ['cône', 'cônes'],
  sphere: ['sphère', 'sphères'],
  'half-sphere': ['demi-sphère', 'demi-sphères'],
  frame: ['cadre', 'cadres'],
  tray: ['plaque', 'plaques'],
  bar: ['barre', 'barres'],
  cube: ['cube', 'cubes'],
  glass: ['verrine', 'verrines'],
  jar: ['bocal', 'bocaux'],
  cup: ['gobelet', 'gobelets'],
  bowl: ['bol', 'bols'],
  dish: ['plat', 'plats'],
  ramekin: ['ramequin', 'ramequins'],
  mould: ['moule', 'moules'],
  tin: ['moule à manqué', 'moules à manqué'],
  'tart ring': ['cercle à tarte', 'cercles à tarte'],
  sheet: ['plaque de cuisson', 'plaques de cuisson'],
  mat: ['tapis de cuisson', 'tapis de cuisson'],
  pan: ['poêle', 'poêles'],
  saucepan: ['casserole', 'casseroles'],
  'piping bag': ['poche à douille', 'poches à douille'],
  siphon: ['siphon', 'siphons'],
  box: ['boîte', 'boîtes'],
  plate: ['assiette', 'assiettes'],
  portion: ['portion', 'portions'],
  slice: ['tranche', 'tranches'],
  piece: ['pièce', 'pièces'],
};

const phases: Readonly<Record<string, string>> = {
  liquid: 'liquide',
  powder: 'poudre',
  crystal: 'cristaux',
  solid: 'solide',
  sheet: 'feuilles',
  paste: 'pâte',
  foam: 'mousse',
  gel: 'gel',
  dough: 'pâte ferme',
  batter: 'appareil',
  frozen: 'surgelé',
};

const allergens: Readonly<Record<Parameters<Language['allergen']>[0], string>> = {
  gluten: 'gluten',
  wheat: 'blé',
  milk: 'lait',
  egg: 'œuf',
  nuts: 'fruits à coque',
  peanut: 'arachide',
  soy: 'soja',
  sesame: 'sésame',
  fish: 'poisson',
  crustacean: 'crustacés',
  mollusc: 'mollusques',
  celery: 'céleri',
  mustard: 'moutarde',
  lupin: 'lupin',
  sulphite: 'sulfites',
  almond: 'amande',
  hazelnut: 'noisette',
  walnut: 'noix',
  cashew: 'noix de cajou',
  pecan: 'noix de pécan',
  'brazil-nut': 'noix du Brésil',
  pistachio: 'pistache',
  macadamia: 'noix de macadamia',
};
