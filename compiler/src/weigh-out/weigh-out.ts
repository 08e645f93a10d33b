/** Makes the weigh-out: every ingredient line of every order and its bases, summed by what it asks for. */
import { lineName, partsOf } from '../card/context.ts';
import type { Order } from '../card/order.ts';
import { plain } from '../card/text.ts';
import type { Formula, Price } from '../resolve/model.ts';
import type { BlockRun } from '../run/trace.ts';
import { type Goods, goodsOf } from './goods.ts';
import type { Bag, BagLine, Costing, Item, Stored, WeighOut } from './model.ts';
import { cents, type Priced, priceOf } from './prices.ts';

/** `unchecked`: the orders in which the checker found errors. */
export function weighOut(orders: readonly Order[], unchecked: ReadonlySet<Order> = new Set()): WeighOut {
  const entries = orders.flatMap((order, index) =>
    partsOf(order.context.run, order.positions).map(({ block, from }) => ({
      order,
      index,
      block,
      from,
      goods: block.lines.flatMap((weighed) => goodsOf(weighed, block, order) ?? []),
    })),
  );
  const sums = sumsOf(entries);
  const currencies = [...new Set(sums.flatMap(({ parts }) => parts.flatMap(({ priced }) => priced?.currency ?? [])))];
  const totals = new Map(currencies.map((currency) => [currency, cents(sum(sums.map((one) => costOf(one, currency) ?? 0)))]));
  return {
    orders: orders.map((order) => ({
      formula: plain(order.formula.name),
      file: order.positions.fileOf(order.formula.place),
      makes: order.makes.text,
      choices: Object.values(order.selection).map(plain),
      checked: !unchecked.has(order),
    })),
    items: sums.map((one) => itemOf(one, orders, currencies, totals)).sort(byPlace),
    bags: entries.flatMap(({ order, block, from, goods }) => bagOf(order, block, from, goods)),
    costs: currencies.map((currency) => costingOf(currency, sums, orders, totals.get(currency) ?? 0)),
  };
}

interface Part {
  readonly order: Order;
  readonly index: number;
  readonly goods: Goods;
  readonly priced: Priced | null;
}

interface Sum {
  readonly parts: readonly Part[];
  /** By name where one kind is asked for in several ways. */
  readonly name: string;
}

type Entry = { readonly order: Order; readonly index: number; readonly block: BlockRun; readonly goods: readonly Goods[] };

function sumsOf(entries: readonly Entry[]): readonly Sum[] {
  const sums = new Map<string, Part[]>();
  for (const { order, index, block, goods: all } of entries)
    for (const goods of all) {
      const part = { order, index, goods, priced: priceOf(goods, pricesFor(order.formula, block)) };
      const known = sums.get(goods.key);
      if (known) known.push(part);
      else sums.set(goods.key, [part]);
    }
  return [...sums.values()].map((parts) => {
    const names = new Set(parts.map(({ goods }) => goods.name));
    return { parts, name: names.size === 1 ? parts[0]!.goods.name : plain(parts[0]!.goods.kindName) };
  });
}

/** A base taken from another formula falls back on that formula's own prices. */
function pricesFor(formula: Formula, { batchOf }: BlockRun): readonly Price[] {
  const taken = batchOf?.substance.is === 'batch' ? (batchOf.substance.taken.formula?.prices ?? []) : [];
  return [...formula.prices, ...taken];
}

function itemOf(one: Sum, orders: readonly Order[], currencies: readonly string[], totals: ReadonlyMap<string, number>): Item {
  const { goods, priced, order } = one.parts[0]!;
  const { measures, language } = order.context;
  const grams = gramsOf(one.parts);
  const pieces = one.parts.every((part) => part.goods.pieces) ? sum(one.parts.map(piecesIn)) : null;
  const counted = one.parts.every((part) => part.goods.pieces?.counted);
  const mass = grams === null ? goods.unweighed : measures.mass(grams);
  const count = pieces === null ? null : `${counted ? measures.number(pieces, 1) : `≈ ${whole(pieces)}`} ${language.units.pc}`;
  const currency = currencies.length === 1 ? currencies[0]! : null;
  const cost = currency === null ? null : costOf(one, currency);
  const total = currency === null ? 0 : (totals.get(currency) ?? 0);
  return {
    name: one.name,
    attributes: goods.attributes,
    kind: goods.kind?.name ?? null,
    grams,
    written: count === null ? mass : counted ? `${count} (${mass})` : `${mass} (${count})`,
    buy: priced === null || grams === null ? null : bought(grams, priced, order),
    stored: goods.stored,
    cost,
    share: cost === null || total <= 0 ? null : cost / total,
    for: orders.flatMap((each, index) => {
      const parts = one.parts.filter((part) => part.index === index);
      return parts.length === 0 ? [] : [{ formula: plain(each.formula.name), grams: gramsOf(parts) }];
    }),
  };
}

/** What is used, in the unit it is bought in; pieces are whole. */
function bought(grams: number, { unit, gramsPerUnit }: Priced, { context: { measures, language } }: Order): string {
  const units = grams / gramsPerUnit;
  return unit === 'pc' ? `${whole(units)} ${language.units.pc}` : `${measures.number(units, units < 0.1 ? 3 : 2)} ${unit}`;
}

const piecesIn = ({ goods: { grams, pieces } }: Part): number => (grams ?? 0) / (pieces?.grams ?? 1);

/** A twentieth of a piece over is not another piece. */
const whole = (pieces: number): number => Math.max(1, Math.ceil(pieces - 0.05));

const gramsOf = (parts: readonly Part[]): number | null =>
  parts.every(({ goods }) => goods.grams === null)
    ? null
    : Math.round(sum(parts.map(({ goods }) => goods.grams ?? 0)) * 100) / 100;

const amountOf = (parts: readonly Part[], currency: string): number =>
  sum(parts.map(({ goods, priced }) => (priced?.currency === currency ? (goods.grams ?? 0) * priced.perGram : 0)));

/** To the cent; null where a part of it has no price. */
function costOf({ parts }: Sum, currency: string): number | null {
  return parts.every(({ priced }) => priced?.currency === currency) ? cents(amountOf(parts, currency)) : null;
}

function costingOf(currency: string, sums: readonly Sum[], orders: readonly Order[], total: number): Costing {
  const priced = sums.filter((one) => costOf(one, currency) !== null);
  return {
    currency,
    total,
    formulas: orders.map((order, index) => {
      const cost = cents(
        amountOf(
          priced.flatMap(({ parts }) => parts.filter((part) => part.index === index)),
          currency,
        ),
      );
      const portions = order.makes.count;
      return {
        formula: plain(order.formula.name),
        cost,
        portions,
        perPortion: portions === null || portions <= 0 ? null : cents(cost / portions),
      };
    }),
    unpriced: sums.filter(({ parts }) => parts.some((part) => part.priced === null)).map(({ name }) => name),
  };
}

function bagOf(order: Order, block: BlockRun, from: string | null, goods: readonly Goods[]): readonly Bag[] {
  if (goods.length === 0) return [];
  const { language, measures } = order.context;
  const name = block.component.isAssembly
    ? language.labels.assembly.toLocaleLowerCase(language.code)
    : plain(block.component.name);
  return [
    {
      formula: plain(order.formula.name),
      component: block.batchOf ? `${name} (${measures.mass(resultOf(block))})` : name,
      from,
      grams: Math.round(sum(goods.map(({ grams }) => grams ?? 0)) * 100) / 100,
      lines: goods.map(
        (one): BagLine => ({
          name: lineName(one.line, language),
          attributes: [...one.attributes, ...(one.line.preparation ? [plain(one.line.preparation)] : [])],
          grams: one.grams,
          written:
            one.grams === null
              ? plain(one.unweighed)
              : one.pieces?.counted
                ? `${measures.number(one.grams / one.pieces.grams, 2)} ${language.units.pc} (${measures.mass(one.grams)})`
                : measures.mass(one.grams),
          stored: one.stored,
        }),
      ),
    },
  ];
}

const resultOf = ({ result }: BlockRun): number => (result ? (result.grams.low + result.grams.high) / 2 : 0);

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

const order: readonly Stored[] = ['chilled', 'frozen', 'dry'];

const byPlace = (a: Item, b: Item): number =>
  order.indexOf(a.stored) - order.indexOf(b.stored) || a.name.localeCompare(b.name, 'en') || (b.grams ?? 0) - (a.grams ?? 0);
