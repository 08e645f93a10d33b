/** The weigh-out for other programs: JSON in its published shape, version 1, and CSV (RFC 4180) for spreadsheets. */
import type { Item, WeighOut } from './model.ts';

/** `costs` is there only where something has a price. */
export function weighOutJson(list: WeighOut): object {
  const twice = namesTwice(list);
  return {
    version: 1,
    items: list.items.map((item) => ({
      name: twice.has(item.name) ? fullName(item) : item.name,
      kind: item.kind,
      grams: item.grams,
      written: item.written,
      stored: item.stored,
      cost: item.cost,
      for: item.for,
    })),
    ...(list.costs.length > 0 && { costs: list.costs }),
  };
}

export const fullName = ({ name, attributes }: Pick<Item, 'name' | 'attributes'>): string => [name, ...attributes].join(', ');

function namesTwice({ items }: WeighOut): ReadonlySet<string> {
  const names = items.map(({ name }) => name);
  return new Set(names.filter((name, index) => names.indexOf(name) !== index));
}

/** One row an item; a field that a spreadsheet would take for a formula is made text. */
export function weighOutCsv(list: WeighOut): string {
  const currency = list.costs.length === 1 ? list.costs[0]!.currency : '';
  const rows: (string | number | null)[][] = [
    ['stored', 'name', 'kind', 'grams', 'written', 'buy', 'cost', 'currency', 'share %', 'for'],
    ...list.items.map((item) => [
      item.stored,
      fullName(item),
      item.kind,
      item.grams,
      item.written,
      item.buy,
      item.cost === null ? null : item.cost.toFixed(2),
      item.cost === null ? null : currency,
      item.share === null ? null : (item.share * 100).toFixed(1),
      item.for.map(({ formula, grams }) => (grams === null ? formula : `${formula}: ${grams} g`)).join('; '),
    ]),
  ];
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  const text = /^[=+\-@\t\r]/u.test(value) ? `'${value}` : value;
  return /[",\r\n]/u.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
