/** An ingredient line of a recipe → one of the notation: quantity, name, and what stands beside them. */
import { nameKey, parseLine } from 'nappe-grammar';
import { meantBy } from './kinds.ts';
import { measureAt, vague } from './measures.ts';
import { type Counted, numberAt } from './numbers.ts';

export interface DraftLine {
  readonly text: string;
  /** How the line calls it. */
  readonly name: string;
  /** The name as the recipe has it, for finding it again in the method. */
  readonly written: string;
  /** What could not be said in notation; null where all was. */
  readonly open: string | null;
}

interface Quantity {
  readonly text: string;
  /** `mass`, `volume` …, so that a mass in grams is preferred where several are given. */
  readonly rank: number;
  readonly length: number;
}

const grams = 3;
const volumes = new Set(['ml', 'cl', 'dl', 'l', 'cup', 'tbsp', 'tsp', 'floz']);

/** Whether a line of a plain text is one: it starts with a number and goes on with words, or with a measure. */
export function looksMeasured(text: string): boolean {
  const count = numberAt(text, { spelled: false });
  if (count) return /^\s*(?:[xX×]\s*\d|\p{L})/u.test(text.slice(count.length)) && !/^[.)]\s/.test(text.slice(count.length));
  const spelled = numberAt(text);
  const rest = spelled ? text.slice(spelled.length).trimStart() : text;
  return measureAt(rest)?.row.unit === 'some' || (spelled !== null && measureAt(rest) !== null);
}

export function ingredientLine(written: string): DraftLine {
  const source = written.normalize('NFC').replaceAll('’', "'").split(/\s+/).join(' ').trim();
  const aside: string[] = [];
  // What stands in parentheses is another measure of the same, or a remark.
  let other: Quantity | null = null;
  let text = source.replace(/\(([^()]*)\)/gu, (_, inside: string) => {
    const measured = quantityAt(inside.trim());
    if (measured && measured.rank > 0 && inside.trim().length === measured.length) other = measured;
    else aside.push(inside.trim());
    return ' ';
  });
  text = text.split(/\s+/).join(' ').trim();
  const first = quantityAt(text);
  if (first) text = text.slice(first.length).trim();
  const slash = first && /^[/|]\s*/u.exec(text);
  const second = slash ? quantityAt(text.slice(slash[0].length)) : null;
  if (slash && second) text = text.slice(slash[0].length + second.length).trim();
  let chosen = first;
  for (const one of [second, other as Quantity | null])
    if (one && (!chosen || (one.rank === grams && chosen.rank < grams) || (one.rank === 2 && chosen.rank < 2))) chosen = one;
  text = text.replace(/^(?:of|de la|de l'|du|des|de|d'|von|vom)(?:\s+|(?<='))/iu, '');
  const { attributes, rest } = attributesIn(text);
  const [name = '', ...remarks] = rest.split(',').map((part) => part.trim());
  aside.unshift(...remarks.filter((part) => part !== ''));
  const trailing =
    /\s+(?:at room temperature|to taste|for dusting|to dust|for the (?:tin|mould|ring)s?|to serve|pour le moule|zum bestäuben)$/iu.exec(
      name,
    );
  const called = (trailing ? name.slice(0, trailing.index) : name).replace(/[.;:]+$/u, '').trim();
  if (trailing) aside.push(trailing[0].trim());
  return composed(written, chosen, called, attributes, aside);
}

function composed(
  written: string,
  quantity: Quantity | null,
  called: string,
  attributes: readonly string[],
  aside: readonly string[],
): DraftLine {
  const meant = meantBy(called);
  const given = attributes.map((one) => (one === '%' ? '' : one)).filter((one) => one !== '');
  const remark = aside.map((one) => one.replaceAll('"', '”')).join('; ');
  const tail = (named: string) =>
    [
      `${quantity?.text ?? 'some'} ${named}`,
      ...given,
      ...(meant.is ? [`is ${quotedIfNeeded(meant.is)}`] : []),
      ...(remark === '' ? [] : [`"${remark}"`]),
    ].join(', ');
  const quoted = `"${(meant.name === '' ? written : meant.name).replaceAll('"', '”')}"`;
  const text =
    [tail(meant.name), tail(quoted)].find((line) => reads(line, meant.name)) ?? `some "${written.replaceAll('"', '”')}"`;
  const unweighed = quantity === null ? 'no quantity; listed as some' : null;
  return { text, name: meant.name, written: called, open: unweighed };
}

function reads(line: string, name: string): boolean {
  const parsed = parseLine(line, 'formula');
  return parsed.kind === 'ingredient' && parsed.problems.length === 0 && parsed.name.key === nameKey(name);
}

const quotedIfNeeded = (name: string): string => (reads(`1 g ${name}`, name) ? name : `"${name}"`);

/** `250 g`, `2 x 100 g`, `1 c. à soupe`, `a pinch`, `3`: at the start. */
function quantityAt(text: string): Quantity | null {
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
  const packed = times && numberAt(text.slice(at + times[0].length), { spelled: false });
  if (times && packed) at += times[0].length + packed.length;
  // `1 heaped teaspoon`: the heap is lost on no scale.
  const space =
    /^[\s-]*(?:(?:heaped|level|rounded|generous|bonnes?|gehäufte[rn]?|gestrichene[rn]?|grosse|petite|large|small)\s+)?/iu.exec(
      text.slice(at),
    )?.[0].length ?? 0;
  const measure = measureAt(text.slice(at + space));
  if (!measure) return times && packed ? null : { text: count.text, rank: 1, length: at };
  const { unit, factor } = measure.row;
  const length = at + space + measure.length;
  if (unit === 'some') return { text: 'some', rank: 0, length };
  const by = factor * (packed ? packed.low : 1);
  const amount = by === 1 ? count.text : scaled(count, by);
  return { text: `${amount} ${unit}`, rank: unit === 'g' || unit === 'kg' ? grams : volumes.has(unit) ? 2 : 2, length };
}

function scaled({ low, high }: Counted, by: number): string {
  const figure = (value: number): string => String(Math.round(value * by * 1000) / 1000);
  return low === high ? figure(low) : `${figure(low)}-${figure(high)}`;
}

/** Per cents, temperature and bloom that stand in the words, as attributes; the words without them. */
function attributesIn(text: string): { readonly attributes: readonly string[]; readonly rest: string } {
  const attributes: string[] = [];
  let rest = text;
  const take = (pattern: RegExp, say: (found: RegExpExecArray) => string | null): void => {
    const found = pattern.exec(rest);
    const said = found && say(found);
    if (!found || !said) return;
    attributes.push(said);
    rest = `${rest.slice(0, found.index)} ${rest.slice(found.index + found[0].length)}`
      .split(/\s+/)
      .join(' ')
      .replace(/\s+,/g, ',')
      .replace(/,\s*,/g, ',')
      .replace(/,\s*$/, '')
      .trim();
  };
  const number = (digits: string | undefined): string => (digits ?? '').replace(',', '.');
  take(
    /(\d{1,3}(?:[.,]\d+)?) ?% ?(?:(milk ?fat|fat|mg|de mg|de matières? grasses?|matières? grasses?|fett|de cacao|cocoa solids|cocoa|cacao|kakao)(?!\p{L}))?/iu,
    ([, share, of]) => {
      const what = of
        ? /coc|cac|kak/i.test(of)
          ? 'cocoa'
          : 'fat'
        : /choc|schoko/i.test(rest)
          ? 'cocoa'
          : /cream|crème|sahne|milk|lait|milch/i.test(rest)
            ? 'fat'
            : null;
      return what && `${number(share)} % ${what}`;
    },
  );
  take(
    /(?:at |à |bei )?(-?\d{1,3}(?:[.,]\d+)?) ?(?:°|º) ?([CF])(?!\p{L})/u,
    ([, degrees, scale]) => `${number(degrees)} °${scale}`,
  );
  take(/(\d{2,3}) ?bloom(?!\p{L})/iu, ([, strength]) => `${strength} bloom`);
  return { attributes, rest };
}
