/** The kitchen: an `equipment` block's vessels and surroundings, a `prices` block, and the settings a formula runs under. */
import type { EquipmentLine } from 'nappe-grammar';
import { type Interval, interval } from '../quantities/interval.ts';
import { celsiusOf, isVolume, millilitresPer } from '../quantities/units.ts';
import { kept, ofBlock, placeIn } from './blocks.ts';
import type { Place, Price, RawFinding, Settings, Vessel } from './model.ts';

/** What an `equipment` block says, item by item. */
export type Item =
  | { readonly is: 'vessel'; readonly vessel: Vessel }
  | { readonly is: 'surroundings'; readonly key: Surroundings; readonly celsius: Interval; readonly place: Place }
  | { readonly is: 'altitude'; readonly metres: number; readonly place: Place };

type Surroundings = 'room' | 'fridge' | 'freezer';

const surroundings: readonly Surroundings[] = ['room', 'fridge', 'freezer'];

/** Where no equipment says otherwise (common practice, no source). */
const usual: Readonly<Record<Surroundings, Interval>> = {
  room: interval(18, 24),
  fridge: interval(2, 6),
  freezer: interval(-20, -15),
};

export const itemsIn = ofBlock((block): readonly Item[] =>
  block.lines.flatMap((line, index) => (line.kind === 'equipment' ? [itemOf(line, placeIn(block.id, index, line.span))] : [])),
);

function itemOf(line: EquipmentLine, place: Place): Item {
  if (line.altitude !== null) return { is: 'altitude', metres: line.altitude, place };
  const key = surroundings.find((word) => word === line.name.key);
  if (key !== undefined && line.temperature !== null)
    return { is: 'surroundings', key, celsius: celsiusOf(line.temperature), place };
  const { capacity } = line;
  const millilitres = capacity !== null && isVolume(capacity.unit) ? capacity.low * millilitresPer[capacity.unit] : null;
  const vessel: Vessel = { name: line.name.text, key: line.name.key, millilitres, wideMm: line.wide, deepMm: line.deep, place };
  return { is: 'vessel', vessel };
}

export const keyOf = (item: Item): string =>
  item.is === 'vessel' ? item.vessel.key : item.is === 'altitude' ? 'altitude' : item.key;

export const placeOfItem = (item: Item): Place => (item.is === 'vessel' ? item.vessel.place : item.place);

/** Items of the same name twice in one kitchen. */
export function repeatedItems(items: readonly Item[]): readonly RawFinding[] {
  const seen = new Map<string, Item>();
  const findings: RawFinding[] = [];
  for (const item of items) {
    const key = keyOf(item);
    const first = seen.get(key);
    if (first === undefined) seen.set(key, item);
    else
      findings.push({
        code: 'duplicate-name',
        place: placeOfItem(item),
        numbers: { name: item.is === 'vessel' ? item.vessel.name : key },
        related: [{ place: placeOfItem(first), message: `${key} is declared here first` }],
      });
  }
  return findings;
}

export interface Rules {
  readonly gelatinLaw: Settings['gelatinLaw'];
  readonly tags: readonly string[];
  readonly thermometer: number;
}

/** Settings from items, nearest first (the formula's own, the file's, those taken): the first of a name holds. The earlier object where nothing changed. */
export function settingsOf(items: readonly Item[], rules: Rules, earlier: Settings | undefined): Settings {
  const first = new Map<string, Item>();
  for (const item of items) if (!first.has(keyOf(item))) first.set(keyOf(item), item);
  const celsius = (key: Surroundings): Interval => {
    const item = first.get(key);
    return item?.is === 'surroundings' ? item.celsius : usual[key];
  };
  const altitude = first.get('altitude');
  const settings: Settings = {
    vessels: kept(
      earlier?.vessels,
      [...first.values()].flatMap((item) => (item.is === 'vessel' ? [item.vessel] : [])),
    ),
    room: celsius('room'),
    fridge: celsius('fridge'),
    freezer: celsius('freezer'),
    altitudeMetres: altitude?.is === 'altitude' ? altitude.metres : 0,
    gelatinLaw: rules.gelatinLaw,
    tags: kept(earlier?.tags, rules.tags),
    thermometer: rules.thermometer,
  };
  return earlier !== undefined && sameSettings(settings, earlier) ? earlier : settings;
}

const sameInterval = (a: Interval, b: Interval): boolean => a.low === b.low && a.high === b.high;

const sameSettings = (a: Settings, b: Settings): boolean =>
  a.vessels === b.vessels &&
  a.tags === b.tags &&
  a.gelatinLaw === b.gelatinLaw &&
  a.altitudeMetres === b.altitudeMetres &&
  sameInterval(a.room, b.room) &&
  sameInterval(a.fridge, b.fridge) &&
  sameInterval(a.freezer, b.freezer);

export const pricesIn = ofBlock((block): readonly Price[] => {
  const currency = block.heading?.name?.text ?? '';
  return block.lines.flatMap((line, index) =>
    line.kind === 'price'
      ? [
          {
            amount: line.amount,
            currency,
            per: line.per,
            name: line.name.text,
            key: line.name.key,
            place: placeIn(block.id, index, line.span),
          },
        ]
      : [],
  );
});
