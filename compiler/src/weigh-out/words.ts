/** The words of a weigh-out: its headings, figures and remarks, the same in every output. */
import { formatNumber } from '../quantities/format.ts';
import { fullName } from './data.ts';
import type { Costing, Item, Stored, WeighOut } from './model.ts';

export const title = 'Weigh-out';

export const storedTitles: Readonly<Record<Stored, string>> = { chilled: 'Chilled', frozen: 'Frozen', dry: 'Dry store' };

/** What the list is for, an order a line. */
export const orderLines = (list: WeighOut): readonly string[] =>
  list.orders.map(({ formula, makes, choices }) =>
    [formula, ...(makes === '' ? [] : [makes]), ...(choices.length > 0 ? [choices.join(', ')] : [])].join(' · '),
  );

export interface Row {
  readonly amount: string;
  readonly name: string;
  readonly buy: string;
  readonly cost: string;
  readonly share: string;
  /** What of it goes where; empty where it all goes to one formula. */
  readonly for: string;
}

export interface Section {
  readonly title: string;
  readonly rows: readonly Row[];
}

/** The items by where they are kept. */
export function sectionsOf(list: WeighOut): readonly Section[] {
  return (['chilled', 'frozen', 'dry'] as const).flatMap((stored) => {
    const items = list.items.filter((item) => item.stored === stored);
    return items.length === 0 ? [] : [{ title: storedTitles[stored], rows: items.map((item) => rowOf(item, list)) }];
  });
}

export const hasPrices = ({ costs }: WeighOut): boolean => costs.length > 0;

function rowOf(item: Item, list: WeighOut): Row {
  const currency = list.costs.length === 1 ? list.costs[0]!.currency : '';
  return {
    amount: item.written,
    name: fullName(item),
    buy: item.buy ?? '',
    cost: item.cost === null ? '' : money(item.cost, currency),
    share: item.share === null ? '' : `${(item.share * 100).toFixed(1)} %`,
    for:
      list.orders.length < 2
        ? ''
        : item.for.map(({ formula, grams }) => (grams === null ? formula : `${formula} ${formatNumber(grams, 2)} g`)).join('; '),
  };
}

export const money = (amount: number, currency: string): string => `${amount.toFixed(2)} ${currency}`;

/** Sentences below the list: the costs, what has no price, and what a cost is. */
export function costSentences({ costs }: WeighOut): readonly string[] {
  return [
    ...costs.flatMap(costSentencesOf),
    ...(costs.length > 0 ? ['Costs are of what is used, at the prices written: not of whole packs, nor of work and heat.'] : []),
  ];
}

function costSentencesOf({ currency, total, formulas, unpriced }: Costing): readonly string[] {
  const each = formulas.map(({ formula, cost, portions, perPortion }) => {
    const portion = perPortion === null ? '' : `, ${money(perPortion, currency)} each for ${portions}`;
    return `${formula}: ${money(cost, currency)}${portion}.`;
  });
  return [
    `All of it costs ${money(total, currency)}.`,
    ...each,
    ...(unpriced.length > 0 ? [`Without a price, and not counted: ${[...new Set(unpriced)].join(', ')}.`] : []),
  ];
}

/** Orders that have errors. */
export const uncheckedSentences = ({ orders }: WeighOut): readonly string[] =>
  orders
    .filter(({ checked }) => !checked)
    .map(({ formula, file }) => `${formula} is not checked through: nappe check ${file} says why.`);
