/** The quantity an ingredient line of a recipe begins with: number and measure of whatever language. */
import { measureAt, vague } from './measures.ts';
import { type Counted, numberAt } from './numbers.ts';

export interface Quantity {
  /** In notation. */
  readonly text: string;
  /** Where a line gives several, the highest counts: grams, then metric volumes, other measures, pieces, no mass at all. */
  readonly rank: number;
  /** Characters read. */
  readonly length: number;
  /** Counted in sheets or leaves. */
  readonly sheets?: boolean;
  /** `heaped`: no scale shows it, and it is kept as said. */
  readonly remark?: string | null;
  /** `2 x 100 g`. */
  readonly packed?: boolean;
}

const rankOf = (unit: string): number =>
  unit === 'g' || unit === 'kg' ? 4 : ['ml', 'cl', 'dl', 'l'].includes(unit) ? 3 : unit === 'pc' ? 1 : 2;

/** `250 g`, `2 x 100 g`, `1 c. à soupe`, `a pinch`, `3`: at the start. */
export function quantityAt(text: string): Quantity | null {
  const unsure = vague.find((word) => text.toLowerCase().startsWith(`${word} `));
  if (unsure) return { text: 'some', rank: 0, length: unsure.length };
  const about = /^(?:about|approx\.?|ca\.|circa|environ|etwa)\s+/iu.exec(text)?.[0].length ?? 0;
  const count = numberAt(text.slice(about));
  if (!count) {
    const bare = measureAt(text);
    return bare?.row.unit === 'some' ? { text: 'some', rank: 0, length: bare.length } : null;
  }
  let at = about + count.length;
  const times = /^\s*[x×]\s*/iu.exec(text.slice(at));
  const packed = !times ? null : numberAt(text.slice(at + times[0].length), { spelled: false });
  if (times && packed) at += times[0].length + packed.length;
  const lead =
    /^[\s-]*(?:(heaped|level|rounded|generous|bonnes?|gehäufte[rn]?|gestrichene[rn]?|grosse|petite|large|small)\s+)?/iu.exec(
      text.slice(at),
    );
  const space = lead?.[0].length ?? 0;
  const measure = measureAt(text.slice(at + space));
  if (!measure) return times && packed ? null : { text: count.text, rank: 1, length: at };
  const { unit, factor } = measure.row;
  const length = at + space + measure.length;
  if (unit === 'some') return { text: 'some', rank: 0, length };
  const by = factor * (packed ? packed.low : 1);
  const amount = by === 1 ? count.text : scaled(count, by);
  const sheets = /^(?:sheet|leaf|leaves|feuille|blatt|blätter)/iu.test(text.slice(at + space));
  return { text: `${amount} ${unit}`, rank: rankOf(unit), length, sheets, packed: packed !== null, remark: lead?.[1] ?? null };
}

function scaled({ low, high }: Counted, by: number): string {
  const figure = (value: number): string => String(Math.round(value * by * 1000) / 1000);
  return low === high ? figure(low) : `${figure(low)}-${figure(high)}`;
}
