/** German cards: the verb stands at the end, so this file also shows that a language orders its sentences itself. */
import { amount, type Bit, join, list, name, type Phrase, sentence, sign, temperature, time } from '../sentence.ts';
import type { AttributeWords, Language, StepWords, Term } from './language.ts';

export const german: Language = {
  code: 'de',
  name: 'Deutsch',
  decimal: ',',
  quotes: ['„', '“'],
  labels: {
    by: 'von',
    version: 'Fassung',
    printed: 'Gedruckt am',
    makes: 'Ergibt',
    served: 'Servieren bei',
    keeps: 'Haltbar',
    choices: 'Diese Karte',
    scaling: 'Umrechnung',
    ingredients: 'Abwiegen',
    method: 'Zubereitung',
    amount: 'Menge',
    usMeasure: 'US-Maß',
    ingredient: 'Zutat',
    share: 'Anteil',
    bakers: 'Auf Mehl',
    assembly: 'Zusammensetzen',
    from: 'aus',
    some: 'etwas',
    critical: 'Kritisch',
    additions: 'In Stufen untergehoben',
    temperatureLine: 'Temperaturverlauf',
    danger: 'Bakterien vermehren sich',
    timeCompressed: 'Je länger eine Wartezeit, desto stärker gestaucht.',
    window: 'Geschrieben',
    step: 'Schritt',
    time: 'Dauer',
    starts: 'Anfang',
    ends: 'Ende',
    differences: 'Bei anderer Wahl',
    instead: 'statt',
    notThere: 'entfällt',
    allergens: 'Allergene',
    contains: 'Enthält',
    noAllergens: 'Keine kennzeichnungspflichtigen Allergene, soweit der Katalog sie kennt.',
    unknownAllergens: 'Unbekannt für',
    freeFrom: 'Hergestellt ohne',
    nutrition: 'Nährwerte',
    per100: 'je 100 g',
    nutritionUnknown: 'Nicht berechnet: unbekannte Zusammensetzung von',
    nutritionBasis: 'Aus Katalogwerten berechnet, keine Laboranalyse.',
    storage: 'Lagerung',
    cautions: 'Vorsicht',
    allowed: 'Von Hand zugelassen',
    noReason: 'ohne Begründung',
    unchecked: 'Nicht fertig geprüft',
    uncheckedWhy: 'Die Prüfung hat Fehler in dieser Rezeptur gefunden. Erst nach deren Behebung nach dieser Karte arbeiten.',
    line: 'Zeile',
    why: 'Warum',
    rows: {
      energy: 'Energie',
      fat: 'Fett',
      saturates: 'davon gesättigte Fettsäuren',
      carbohydrate: 'Kohlenhydrate',
      sugars: 'davon Zucker',
      fibre: 'Ballaststoffe',
      protein: 'Eiweiß',
      salt: 'Salz',
    },
    us: {
      calories: 'Kalorien',
      fat: 'Fett gesamt',
      saturates: 'Gesättigte Fettsäuren',
      sodium: 'Natrium',
      carbohydrate: 'Kohlenhydrate gesamt',
      fibre: 'Ballaststoffe',
      sugars: 'Zucker gesamt',
      protein: 'Eiweiß',
      lessThan: 'unter',
      notStated: 'Transfette, Cholesterin, zugesetzter Zucker und Vitamine werden nicht berechnet.',
    },
  },
  scaling: {
    asWritten: 'Wie geschrieben.',
    count: (w) => `× ${w.factor} nach Stückzahl: von ${w.from} auf ${w.to}.`,
    mass: (w) => `× ${w.factor} nach Masse: von ${w.from} auf ${w.to}.`,
    volume: (w) => `× ${w.factor} nach Volumen: von ${w.from} auf ${w.to}.`,
    density: (w) =>
      `× ${w.factor}: ${w.to}, das sind ${w.millilitres} oder ${w.grams} bei der berechneten Dichte der fertigen Masse, ${w.density}; geschrieben für ${w.from}.`,
    fills: (w) =>
      `Das Ganze wiegt ${w.grams} und füllt ${w.millilitres}: ${w.density}, berechnet für die fertige Masse mit der Luft, die Aufschlagen und Unterheben darin lassen (Schätzung).`,
    lined: 'Boden oder Auskleidung nehmen einen Teil jeder Form ein: die Zahl stimmt genau, die Größe ist eine Schätzung.',
    limit: (w) => `× ${w.factor}: so weit ${w.amount} ${w.name} reichen.`,
    pieces: (w) => `Auf ${w.count} ${w.name} gerundet, alles andere entsprechend (verlangt: × ${w.asked}).`,
    rounding: (percent) => `Das Runden auf die Waage ändert die Summe um ${percent}.`,
    times:
      'Zeiten wachsen nicht mit: eine größere Menge wird langsamer warm und kalt, eine kleinere schneller. Nach Temperatur und Merkmal gehen, nicht nach der Uhr.',
    vessels:
      'Topf, Kessel und Blech wachsen auch nicht mit: die Schicht so hoch lassen wie zuvor oder in mehreren Ansätzen arbeiten.',
    batches: (w) => `Schritt ${w.step} braucht ${w.needs}; „${w.vessel}“ fasst ${w.holds}: in ${w.batches} Ansätzen arbeiten.`,
  },
  units: { s: 's', min: 'min', h: 'h', tsp: 'TL', tbsp: 'EL', cup: 'cup', floz: 'fl oz', oz: 'oz', lb: 'lb', pc: 'Stück' },
  days: (count, one) => `${count} ${one ? 'Tag' : 'Tage'}`,
  overnight: (range) => `über Nacht (${range})`,
  below: (reading) => `unter ${reading}`,
  above: (reading) => `über ${reading}`,
  keeping: (duration, reading) => (reading ? `${duration} bei ${reading}` : duration),
  after: (step) => (step === 0 ? 'Zuerst' : `Nach Schritt ${step}`),
  perPiece: (noun, grams) => `je ${noun ?? 'Portion'} (${grams})`,
  yield: (count, noun, size) => `${count} ${noun}${size ? ` zu ${size}` : ''}`,
  noun: (noun, count) => nouns[noun]?.[count === 1 ? 0 : 1] ?? null,
  kind: (kind) => kinds[kind.name] ?? null,
  allergen: (allergen) => allergens[allergen],
  glutenOfWheat: 'Weizen (Gluten)',
  attribute,
  tool: (tool) => tools[tool]?.[0] ?? null,
  step,
  reasons: {
    'egg thickens': (t) => `Ei bindet bei etwa ${t(79, 85)} und gerinnt wenige Grad darüber.`,
    'egg safe': () =>
      'Diese Temperatur, gehalten wie geschrieben, macht das Ei sicher: niedriger oder kürzer ist nicht dasselbe.',
    'starch cooks': () =>
      'Stärke bindet erst nahe am Kochen ganz, und das Kochen stoppt das Enzym des Dotters, das sie wieder verflüssigen würde.',
    syrup: () => 'Die Temperatur eines kochenden Sirups ist seine Konzentration: ein Grad weniger lässt mehr Wasser darin.',
    caramel: () => 'Ab hier bräunt Zucker; Sekunden entscheiden, wie bitter er wird.',
    'fold cream': (t) =>
      `Über ${t(35)} schmilzt das Fett, das die Schlagsahne trägt, und der Schaum fällt; zu kalt ist die Masse zu fest, um ihn aufzunehmen.`,
    'fold white': () => 'Eischnee verträgt die Wärme, aber die Masse muss weich genug sein, um ihn aufzunehmen.',
    'gelatin melts': (t) =>
      `Eingeweichte Gelatine schmilzt ab etwa ${t(35)}; in Kälterem bleibt sie in Fäden. Kochen schwächt sie.`,
    'gelatin sets': () => 'Gelatine wird in der Kälte in Stunden fest und etwa einen halben Tag lang noch fester.',
    'chocolate melts': () =>
      'Die Kakaobutter muss ganz schmelzen; heißer verbrennen Milch- und Kakaobestandteile und werden dick.',
    'chocolate works': () =>
      'In diesem Bereich bleiben die stabilen Kristalle der Kakaobutter; wenige Grad wärmer schmelzen sie.',
    ganache: () => 'Sahne und Schokolade ergeben nur eine glatte Emulsion, solange die Kakaobutter flüssig ist.',
    glaze: () => 'Wärmer läuft die Glasur zu dünn ab und schmilzt, was sie bedeckt; kälter zieht sie Schlieren.',
    butter: () => 'Butter hält Luft und verbindet sich nur, solange sie weich ist, weder hart noch ölig.',
    cold: (t) => `Zwischen ${t(5)} und ${t(57)} vermehren sich Bakterien: schnell hindurch und dann darunter bleiben.`,
    frozen: () => 'Durchgefroren behält es beim Ausformen, Glasieren und Schneiden seine Form.',
  },
  cautions: {
    egg: () =>
      'Enthält Ei. Für kleine Kinder, Schwangere, alte oder kranke Menschen pasteurisiertes Ei nehmen und wie geschrieben erhitzen, mit Fühler.',
    'raw egg': () =>
      'In dieser Rezeptur kommt Ei auf den Tisch, das nicht genug erhitzt wurde. Pasteurisiertes Ei nehmen; nicht roh an kleine Kinder, Schwangere, alte oder kranke Menschen geben.',
    'egg undercooked': () =>
      'So wie geschrieben wird das Ei nicht genug erhitzt. Nicht servieren, bevor Temperatur oder Zeit berichtigt sind.',
    'hot sugar': (t) =>
      `Zucker über ${t(100)} verbrennt tief und klebt: trockenes Werkzeug, lange Ärmel, kaltes Wasser in Reichweite, niemand im Rücken.`,
    'hot fat': () =>
      'Heißes Fett verbrennt und kann sich entzünden: kein Wasser in der Nähe, ein Deckel in Reichweite, nie allein lassen.',
    cooling: (t) =>
      `Leicht Verderbliches von ${t(57)} auf ${t(21)} in 2 Stunden abkühlen, auf ${t(5)} in 6 Stunden insgesamt: flache Bleche, Eisbad, rühren.`,
    'cold storage': (t) =>
      `Bei ${t(5)} oder kälter aufbewahren, wenn die Rezeptur nichts anderes sagt, und mit dem Herstelltag beschriften.`,
    'raw flour': () => 'Rohes Mehl und gefrorene Beeren können Keime tragen: durcherhitzen oder wärmebehandelt kaufen.',
    alcohol: () => 'Im Servierten bleibt Alkohol: den Gästen sagen.',
    'no plan': () =>
      'Diese Karte ist eine Arbeitshilfe, kein Konzept zur Lebensmittelsicherheit. Das örtliche Lebensmittelrecht und der Rat einer zugelassenen Fachkraft gehen vor. Allergene und Nährwerte sind aus einem Katalog berechnet: die Etiketten des wirklich Verwendeten prüfen.',
  },
};

function step(w: StepWords): Phrase {
  if (w.doing !== null) return sentence(w.doing);
  if (w.check) return sentence('prüfen: Anzeige', temperature(w.check));
  const stream = w.verb === 'temper' && w.into !== null;
  const [infinitive, into] = stream ? ['in dünnem Strahl gießen, dabei rühren', 'zu'] : (verbs[w.verb] ?? [w.verb, 'in']);
  return sentence(
    terms(w.operands),
    w.each ? amount(w.each) : null,
    party(into, w.into, w),
    party('über', w.over, w),
    party('in', w.inside, w),
    w.pieces ? `in ${w.pieces}` : null,
    w.with.length > 0 ? join(['mit', terms(w.with)]) : null,
    w.additions ? `in ${w.additions.count} ${w.additions.single ? 'Portion' : 'Portionen'}${series(w.additions.tools)}` : null,
    w.turns ? `in ${w.turns.count} Touren${series(w.turns.kinds.map((kind) => turns[kind] ?? kind))}` : null,
    w.tool ? withTool(w.tool) : null,
    target(w),
    w.at ? join(['bei', temperature(w.at)]) : null,
    w.atRoom ? 'bei Raumtemperatur' : null,
    w.medium ? (media[w.medium] ?? `in: ${w.medium}`) : null,
    w.level ? (mixing.has(w.verb) ? `mit ${speeds[w.level]} Geschwindigkeit` : `bei ${speeds[w.level]} Hitze`) : null,
    w.using ? `(${w.using})` : null,
    w.for ? time(w.for) : null,
    infinitive,
    w.until ? join([',', sign(signs[w.until] ?? `bis: „${w.until}“`)]) : null,
    w.whileWhipping ? ', dabei weiterschlagen' : null,
    w.losing ? `, Verlust ${w.losing}` : null,
    w.as ? join([':', name(`„${w.as}“`)]) : null,
  );
}

const terms = (items: readonly Term[]): Bit => (items.length === 0 ? null : list(items.map(term), 'und'));

function term(item: Term): Phrase {
  const words = name(item.text);
  if (item.part === 'quantity' && item.amount) return join([amount(item.amount), words]);
  if (item.part === 'rest') return join(['den Rest', words, measured(item)]);
  if (item.part !== null && typeof item.part === 'object')
    return join([item.part.fraction === 0.5 ? 'die Hälfte' : fraction(item.part.fraction), words, measured(item)]);
  return join([words, measured(item)]);
}

const measured = (item: Term): Bit => (item.amount ? amount(`(${item.amount})`) : null);

function party(word: string, item: Term | null, w: StepWords): Bit {
  if (!item) return null;
  if (item.vessel === null) return join([word, term(item)]);
  return join([w.each ? 'je' : word === 'über' ? 'über' : 'in', name(item.text)]);
}

function target(w: StepWords): Bit {
  if (!w.to) return null;
  if (w.to.kind === 'peak') return join(['zu', sign(`${w.to.peaks.map((peak) => peaks[peak] ?? peak).join('–')} Spitzen`)]);
  return join(['auf', w.to.kind === 'temperature' ? temperature(w.to.text) : amount(w.to.text)]);
}

const withTool = (tool: string): string => tools[tool]?.[1] ?? `mit: ${tool}`;

function series(names: readonly string[]): string {
  if (names.length === 0) return '';
  const words = names.map((tool) => tools[tool]?.[0] ?? tool);
  return ` (${words.length === 1 ? words[0] : `${words.slice(0, -1).join(', ')}, dann ${words[words.length - 1]}`})`;
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
    return `${a.percent} ${{ fat: 'Fett', cocoa: 'Kakao', sugar: 'Zucker', solids: 'Trockenmasse', alcohol: 'Alkohol' }[a.of]}`;
  if (a.kind === 'pH') return `pH ${a.value}`;
  if (a.kind === 'brix') return `${a.value} °Bx`;
  if (a.kind === 'bloom') return `${a.value} Bloom`;
  return a.kind === 'phase'
    ? (phases[a.phase] ?? a.phase)
    : { raw: 'roh', fresh: 'frisch', canned: 'aus der Dose', pasteurised: 'pasteurisiert' }[a.state];
}

const mixing: ReadonlySet<string> = new Set(['mix', 'whisk', 'stir', 'whip', 'blend', 'knead', 'cream', 'combine', 'smooth']);
const speeds = { low: 'niedriger', medium: 'mittlerer', high: 'hoher' } as const;

/** Infinitive, and the preposition before what takes the operands in. */
const verbs: Readonly<Record<string, readonly [string, string]>> = {
  mix: ['mischen', 'mit'],
  whisk: ['glatt rühren', 'in'],
  stir: ['rühren', 'in'],
  add: ['zugeben', 'zu'],
  combine: ['zusammenbringen', 'mit'],
  rub: ['verreiben', 'mit'],
  knead: ['kneten', 'mit'],
  sift: ['sieben', 'über'],
  cream: ['schaumig rühren', 'mit'],
  smooth: ['glatt arbeiten', 'in'],
  laminate: ['tourieren', 'in'],
  heat: ['erhitzen', 'in'],
  cook: ['garen', 'in'],
  boil: ['kochen', 'in'],
  reduce: ['einkochen', 'in'],
  melt: ['schmelzen', 'in'],
  bake: ['backen', 'in'],
  toast: ['rösten', 'in'],
  hold: ['halten', 'in'],
  dry: ['trocknen', 'in'],
  caramelise: ['karamellisieren', 'in'],
  fry: ['ausbacken', 'in'],
  cool: ['abkühlen', 'in'],
  chill: ['kalt stellen', 'in'],
  freeze: ['einfrieren', 'in'],
  rest: ['ruhen lassen', 'in'],
  thaw: ['auftauen', 'in'],
  churn: ['in der Eismaschine gefrieren', 'in'],
  proof: ['gehen lassen', 'in'],
  bloom: ['einweichen', 'in'],
  dissolve: ['auflösen', 'in'],
  soak: ['tränken', 'in'],
  infuse: ['ziehen lassen', 'in'],
  strain: ['passieren', 'in'],
  press: ['auspressen', 'in'],
  temper: ['temperieren', 'zu'],
  whip: ['aufschlagen', 'in'],
  fold: ['unterheben', 'unter'],
  blend: ['mixen', 'in'],
  pour: ['gießen', 'in'],
  portion: ['portionieren', 'in'],
  pipe: ['aufspritzen', 'in'],
  spread: ['streichen', 'in'],
  layer: ['schichten', 'in'],
  fill: ['füllen', 'in'],
  line: ['auslegen', 'in'],
  roll: ['ausrollen', 'in'],
  shape: ['formen', 'in'],
  cut: ['schneiden', 'in'],
  unmould: ['aus der Form lösen', 'auf'],
  glaze: ['glasieren', 'in'],
  dust: ['bestäuben', 'in'],
  brush: ['bestreichen', 'in'],
  dip: ['tauchen', 'in'],
  coat: ['überziehen', 'in'],
  grease: ['fetten', 'in'],
  garnish: ['garnieren', 'in'],
  serve: ['servieren', 'in'],
  pack: ['verpacken', 'in'],
  reserve: ['zurückbehalten', 'in'],
  discard: ['wegwerfen', 'in'],
  check: ['prüfen', 'in'],
};

const media: Readonly<Record<string, string>> = {
  'ice bath': 'im Eisbad',
  'water bath': 'im Wasserbad',
  fridge: 'im Kühlschrank',
  freezer: 'im Tiefkühler',
  'blast chiller': 'im Schnellkühler',
  oven: 'im Ofen',
};

/** The tool, and how it is said before the verb. */
const tools: Readonly<Record<string, readonly [string, string]>> = {
  whisk: ['Schneebesen', 'mit dem Schneebesen'],
  spatula: ['Teigspatel', 'mit dem Teigspatel'],
  mixer: ['Rührmaschine', 'mit der Rührmaschine'],
  'hand mixer': ['Handrührgerät', 'mit dem Handrührgerät'],
  'immersion blender': ['Stabmixer', 'mit dem Stabmixer'],
  blender: ['Standmixer', 'mit dem Standmixer'],
  'food processor': ['Kutter', 'mit dem Kutter'],
  torch: ['Brenner', 'mit dem Brenner'],
  sieve: ['Sieb', 'mit dem Sieb'],
  paddle: ['Flachrührer', 'mit dem Flachrührer'],
  hook: ['Knethaken', 'mit dem Knethaken'],
  spoon: ['Löffel', 'mit dem Löffel'],
  ladle: ['Kelle', 'mit der Kelle'],
  scraper: ['Teigkarte', 'mit der Teigkarte'],
  'palette knife': ['Palette', 'mit der Palette'],
  'rolling pin': ['Rollholz', 'mit dem Rollholz'],
  sheeter: ['Ausrollmaschine', 'mit der Ausrollmaschine'],
  knife: ['Messer', 'mit dem Messer'],
  cutter: ['Ausstecher', 'mit dem Ausstecher'],
  grater: ['Reibe', 'mit der Reibe'],
  'pastry brush': ['Pinsel', 'mit dem Pinsel'],
  'piping bag': ['Spritzbeutel', 'mit dem Spritzbeutel'],
  siphon: ['Siphon', 'mit dem Siphon'],
  thermometer: ['Thermometer', 'mit dem Thermometer'],
  hands: ['Hände', 'von Hand'],
};

const turns: Readonly<Record<string, string>> = { single: 'einfach', double: 'doppelt' };

const peaks: Readonly<Record<string, string>> = {
  'very soft': 'sehr weichen',
  soft: 'weichen',
  medium: 'mittleren',
  stiff: 'festen',
};

const signs: Readonly<Record<string, string>> = {
  nappe: 'bis es zur Rose abzieht',
  ribbon: 'bis es ein Band zieht',
  dissolved: 'bis alles gelöst ist',
  melted: 'bis alles geschmolzen ist',
  smooth: 'bis es glatt ist',
  boiling: 'bis es kocht',
  thick: 'bis es dick ist',
  golden: 'bis es goldbraun ist',
  set: 'bis es fest ist',
  'just set': 'bis es in der Mitte eben noch zittert',
  sandy: 'bis es sandig ist',
  glossy: 'bis es glänzt',
  frothy: 'bis es schäumt',
  amber: 'bis es bernsteinfarben ist',
  pale: 'bis es hell ist',
  doubled: 'bis es sich verdoppelt hat',
  browned: 'bis es nussbraun ist',
  foamy: 'bis es schaumig ist',
};

/** Singular and plural. */
const nouns: Readonly<Record<string, readonly [string, string]>> = {
  ring: ['Ring', 'Ringe'],
  tart: ['Tarte', 'Tartes'],
  cylinder: ['Zylinder', 'Zylinder'],
  cone: ['Kegel', 'Kegel'],
  sphere: ['Kugel', 'Kugeln'],
  'half-sphere': ['Halbkugel', 'Halbkugeln'],
  frame: ['Rahmen', 'Rahmen'],
  tray: ['Blech', 'Bleche'],
  bar: ['Riegel', 'Riegel'],
  cube: ['Würfel', 'Würfel'],
  glass: ['Glas', 'Gläser'],
  jar: ['Schraubglas', 'Schraubgläser'],
  cup: ['Becher', 'Becher'],
  bowl: ['Schüssel', 'Schüsseln'],
  dish: ['Schale', 'Schalen'],
  ramekin: ['Förmchen', 'Förmchen'],
  mould: ['Form', 'Formen'],
  tin: ['Backform', 'Backformen'],
  'tart ring': ['Tartering', 'Tarteringe'],
  sheet: ['Backblech', 'Backbleche'],
  mat: ['Backmatte', 'Backmatten'],
  pan: ['Pfanne', 'Pfannen'],
  saucepan: ['Topf', 'Töpfe'],
  'piping bag': ['Spritzbeutel', 'Spritzbeutel'],
  siphon: ['Siphon', 'Siphons'],
  box: ['Dose', 'Dosen'],
  plate: ['Teller', 'Teller'],
  portion: ['Portion', 'Portionen'],
  slice: ['Scheibe', 'Scheiben'],
  piece: ['Stück', 'Stücke'],
};

const phases: Readonly<Record<string, string>> = {
  liquid: 'flüssig',
  powder: 'Pulver',
  crystal: 'Kristalle',
  solid: 'fest',
  sheet: 'Blätter',
  paste: 'Paste',
  foam: 'Schaum',
  gel: 'Gel',
  dough: 'Teig',
  batter: 'Masse',
  frozen: 'gefroren',
};

const allergens: Readonly<Record<Parameters<Language['allergen']>[0], string>> = {
  gluten: 'Gluten',
  wheat: 'Weizen',
  milk: 'Milch',
  egg: 'Ei',
  nuts: 'Schalenfrüchte',
  peanut: 'Erdnuss',
  soy: 'Soja',
  sesame: 'Sesam',
  fish: 'Fisch',
  crustacean: 'Krebstiere',
  mollusc: 'Weichtiere',
  celery: 'Sellerie',
  mustard: 'Senf',
  lupin: 'Lupine',
  sulphite: 'Sulfite',
  almond: 'Mandel',
  hazelnut: 'Haselnuss',
  walnut: 'Walnuss',
  cashew: 'Cashewnuss',
  pecan: 'Pekannuss',
  'brazil-nut': 'Paranuss',
  pistachio: 'Pistazie',
  macadamia: 'Macadamianuss',
};

/** Catalogue names. */
const kinds: Readonly<Record<string, string>> = {};
