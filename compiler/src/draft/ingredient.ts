/** An ingredient line of a recipe → one of the notation: quantity, name, and what stands beside them. */
import { nameKey, parseLine } from 'nappe-grammar';
import { meantBy } from './kinds.ts';
import { measureAt } from './measures.ts';
import { numberAt } from './numbers.ts';
import { type Quantity, quantityAt } from './quantity.ts';

export interface DraftLine {
  readonly text: string;
  /** How the line calls it. */
  readonly name: string;
  /** The name as the recipe has it, for finding it again in the method. */
  readonly written: string;
  /** False for `some`. */
  readonly weighed: boolean;
  /** What could not be said in notation; null where all was. */
  readonly open: string | null;
}

/** Characters; a longer line is no ingredient. */
const longest = 500;

/** Whether a line of a plain text is one: it starts with a number and goes on with words, or with a measure. */
export function looksMeasured(text: string): boolean {
  const count = numberAt(text, { spelled: false });
  if (count) return /^\s*(?:[xX×]\s*\d|\p{L})/u.test(text.slice(count.length)) && !/^[.)]\s/.test(text.slice(count.length));
  const spelled = numberAt(text);
  const rest = spelled ? text.slice(spelled.length).trimStart() : text;
  return measureAt(rest)?.row.unit === 'some' || (spelled !== null && measureAt(rest) !== null);
}

export function ingredientLine(written: string): DraftLine {
  if (written.length > longest) return notUnderstood(written);
  const source = written.normalize('NFC').replaceAll('’', "'").split(/\s+/).join(' ').trim();
  const aside: string[] = [];
  // What stands in parentheses is another measure of the same, or a remark.
  let other: Quantity | null = null;
  let text = source.replace(/\(([^()]*)\)/gu, (_, inside: string) => {
    const measured = quantityAt(inside.trim());
    if (measured && measured.rank > 1 && inside.trim().length === measured.length) other = measured;
    // A per cent or a reading is the ingredient's own.
    else if (/\d ?(?:%|°|bloom)/iu.test(inside)) return `, ${inside}`;
    else aside.push(inside.trim());
    return ' ';
  });
  text = text.split(/\s+/).join(' ').trim();
  const first = quantityAt(text);
  if (first) text = text.slice(first.length).trim();
  const slash = first && /^[/|]\s*/u.exec(text);
  const second = slash ? quantityAt(text.slice(slash[0].length)) : null;
  if (slash && second) text = text.slice(slash[0].length + second.length).trim();
  const several = [first, second, other as Quantity | null].filter((one) => one !== null);
  const chosen = several.sort((a, b) => b.rank - a.rank)[0] ?? null;
  if (first?.packed)
    text = text.replace(/^(?:bars?|tins?|cans?|packets?|packs?|jars?|tubs?|blocks?|bags?|boîtes?|Dosen?)\s/iu, '');
  if (chosen?.remark) aside.push(chosen.remark);
  text = text.replace(/^(?:of|de la|de l'|du|des|de|d'|von|vom)(?:\s+|(?<='))/iu, '');
  const { attributes, rest } = attributesIn(text);
  const [name = '', ...remarks] = rest.split(',').map((part) => part.trim());
  aside.unshift(...remarks.filter((part) => part !== ''));
  const trailing =
    / (?:at room temperature|to taste|for dusting|to dust|for the (?:tin|mould|ring)s?|to serve|pour le moule|zum bestäuben)$/iu.exec(
      name,
    );
  const called = withoutMarks(trailing ? name.slice(0, trailing.index) : name).trim();
  if (trailing) aside.push(trailing[0].trim());
  return composed(written, chosen, called, attributes, aside);
}

/** Without the full stops, semicolons and colons it ends in. */
function withoutMarks(text: string): string {
  let end = text.length;
  while (end > 0 && '.;:'.includes(text.charAt(end - 1))) end--;
  return text.slice(0, end);
}

function composed(
  written: string,
  quantity: Quantity | null,
  called: string,
  attributes: readonly string[],
  aside: readonly string[],
): DraftLine {
  const meant = meantBy(called);
  const given = [...(quantity?.sheets && /^g[eé]latine?$/iu.test(called) ? ['sheet'] : []), ...attributes];
  const remark = aside.map((one) => one.replaceAll('"', '”')).join('; ');
  const tail = (named: string) =>
    [
      `${quantity?.text ?? 'some'} ${named}`,
      ...given,
      ...(meant.is ? [`is ${quotedIfNeeded(meant.is)}`] : []),
      ...(remark === '' ? [] : [`"${remark}"`]),
    ].join(', ');
  const quoted = `"${(meant.name === '' ? written : meant.name).replaceAll('"', '”')}"`;
  const text = [tail(meant.name), tail(quoted)].find((line) => reads(line, meant.name));
  if (text === undefined) return notUnderstood(written);
  const open = quantity === null ? 'no quantity; listed as some' : null;
  return { text, name: meant.name, written: called, weighed: quantity !== null && quantity.rank > 0, open };
}

const notUnderstood = (written: string): DraftLine => ({
  text: `some "${written.replaceAll('"', '”')}"`,
  name: written,
  written,
  weighed: false,
  open: 'not understood; listed as some',
});

function reads(line: string, name: string): boolean {
  const parsed = parseLine(line, 'formula');
  return parsed.kind === 'ingredient' && parsed.problems.length === 0 && parsed.name.key === nameKey(name);
}

const quotedIfNeeded = (name: string): string => (reads(`1 g ${name}`, name) ? name : `"${name}"`);

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
      .replaceAll(' ,', ',')
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
