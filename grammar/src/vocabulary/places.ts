/** What matter stands in, is worked with or is surrounded by: media, tools, vessels and shapes, one row a word. */

export interface WordRow {
  readonly word: string;
  readonly meaning: string;
  /** Other words for the same thing. */
  readonly also: readonly string[];
}

/** What surrounds a vessel, after `in`. */
export const media: readonly WordRow[] = [
  word('ice bath', 'Ice and water around the vessel.', 'ice-bath', 'ice water bath'),
  word('water bath', 'Hot water around or under the vessel.', 'water-bath', 'bain-marie', 'bain marie', 'double boiler'),
  word('fridge', 'The refrigerator.', 'refrigerator', 'cold room'),
  word('freezer', 'The freezer.', 'deep freezer'),
  word('blast chiller', 'Moving cold air.', 'blast-chiller'),
  word('oven', 'The oven.'),
];

/** What the cook holds, after `with`. */
export const tools: readonly WordRow[] = [
  word('whisk', 'Wires; breaks a foam a little, mixes fast.', 'balloon whisk', 'hand whisk'),
  word('spatula', 'Soft blade; keeps the air in.', 'rubber spatula', 'maryse'),
  word('mixer', 'A stand mixer.', 'stand mixer'),
  word('hand mixer', 'An electric hand mixer.'),
  word('immersion blender', 'A stick blender; emulsifies without air.', 'stick blender', 'hand blender'),
  word('blender', 'A jug blender.', 'jug blender'),
  word('food processor', 'A cutter.', 'cutter mixer'),
  word('torch', 'A gas flame.', 'blowtorch', 'blow torch'),
  word('sieve', 'Holds back what is coarse.', 'fine sieve', 'strainer', 'chinois'),
  word('paddle', "The mixer's flat beater.", 'flat beater'),
  word('hook', "The mixer's dough hook.", 'dough hook'),
  word('spoon', 'Any spoon.', 'wooden spoon'),
  word('ladle', 'A ladle.'),
  word('scraper', 'A flat bowl or bench scraper.', 'bench scraper', 'dough scraper'),
  word('palette knife', 'A long flat blade.', 'offset spatula', 'offset palette knife'),
  word('rolling pin', 'Rolls dough flat.'),
  word('sheeter', 'Rolls dough flat between rollers.', 'dough sheeter'),
  word('knife', 'Any knife.'),
  word('cutter', 'Stamps shapes out.', 'cookie cutter'),
  word('grater', 'Takes off fine shreds.', 'zester', 'rasp'),
  word('pastry brush', 'Spreads thin liquids.', 'brush'),
  word('piping bag', 'Presses soft matter through a nozzle.', 'pastry bag'),
  word('siphon', 'Charges with gas.'),
  word('thermometer', 'Reads the temperature.', 'probe'),
  word('hands', 'By hand.', 'hand'),
];

/** Nouns that are vessels wherever they stand after `into`, `over` and `in`; every shape is one too. */
export const vessels: readonly WordRow[] = [
  word('glass', 'A serving glass.', 'verrine'),
  word('jar', 'A jar.'),
  word('cup', 'A cup.'),
  word('bowl', 'A bowl.', 'basin'),
  word('dish', 'A dish.'),
  word('ramekin', 'A small straight-sided dish.'),
  word('mould', 'A mould.', 'mold'),
  word('ring', 'A bottomless ring.'),
  word('frame', 'A bottomless frame.'),
  word('tray', 'A flat tray.'),
  word('tin', 'A baking tin.'),
  word('tart ring', 'A low ring for tarts.'),
  word('sheet', 'A baking sheet.', 'baking sheet'),
  word('mat', 'A baking mat.', 'silicone mat'),
  word('pan', 'A pan.'),
  word('saucepan', 'A saucepan.', 'pot'),
  word('piping bag', 'A piping bag.', 'pastry bag'),
  word('siphon', 'A gas siphon.'),
  word('box', 'A box.', 'container'),
  word('plate', 'A plate.'),
];

export interface ShapeRow {
  readonly word: string;
  readonly meaning: string;
  /** The order of its lengths after `of`, joined by `x`. */
  readonly lengths: readonly ('diameter' | 'length' | 'width' | 'height')[];
}

export const shapes: readonly ShapeRow[] = [
  { word: 'ring', meaning: 'A flat cylinder.', lengths: ['diameter', 'height'] },
  { word: 'tart', meaning: 'A tart, its rim straight.', lengths: ['diameter', 'height'] },
  { word: 'cylinder', meaning: 'A cylinder.', lengths: ['diameter', 'height'] },
  { word: 'cone', meaning: 'A cone.', lengths: ['diameter', 'height'] },
  { word: 'sphere', meaning: 'A ball.', lengths: ['diameter'] },
  { word: 'half-sphere', meaning: 'Half a ball.', lengths: ['diameter'] },
  { word: 'frame', meaning: 'A box without bottom.', lengths: ['length', 'width', 'height'] },
  { word: 'tray', meaning: 'A tray with a rim.', lengths: ['length', 'width', 'height'] },
  { word: 'bar', meaning: 'A bar.', lengths: ['length', 'width', 'height'] },
  { word: 'cube', meaning: 'A cube.', lengths: ['length'] },
];

function word(name: string, meaning: string, ...also: string[]): WordRow {
  return { word: name, meaning, also };
}
