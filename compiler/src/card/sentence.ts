/** Sentences of a card as segments: the words for every output, and what each piece is, so that a page can set it apart. */

export type SegmentKind = 'text' | 'name' | 'amount' | 'temperature' | 'time' | 'sign';

export interface Segment {
  readonly kind: SegmentKind;
  readonly text: string;
}

export type Phrase = readonly Segment[];

/** What a sentence is put together from; nothing stands for `null`. */
export type Bit = string | Segment | Phrase | null;

/**
 * Joins bits with spaces (none before a bit that opens with `,`, `:`, `;`, `.` or `)`), raises the first letter and ends with a full stop
 * unless the last bit already ends so.
 */
export function sentence(...bits: readonly Bit[]): Phrase {
  const segments = join(bits);
  if (segments.length === 0) return segments;
  const last = segments[segments.length - 1]!;
  const closed = /[.!?…]$/u.test(last.text) ? segments : [...segments, text('.')];
  const first = closed[0]!;
  return merge([{ kind: first.kind, text: capital(first.text) }, ...closed.slice(1)]);
}

/** Joins bits with spaces, without capital or full stop. */
export function join(bits: readonly Bit[]): Phrase {
  const out: Segment[] = [];
  for (const bit of bits) {
    const segments =
      bit === null
        ? []
        : typeof bit === 'string'
          ? bit === ''
            ? []
            : [text(bit)]
          : Array.isArray(bit)
            ? (bit as Phrase)
            : [bit as Segment];
    const first = segments[0];
    if (!first) continue;
    if (out.length > 0 && !/^[\s,:;.)]/u.test(first.text)) out.push(text(' '));
    out.push(...segments);
  }
  return merge(out);
}

/** `a, b and c`, the pieces being phrases. */
export function list(items: readonly Phrase[], and: string): Phrase {
  return merge(
    items.flatMap((item, index) => {
      if (index === 0) return item;
      return [text(index === items.length - 1 ? ` ${and} ` : ', '), ...item];
    }),
  );
}

export const textOf = (phrase: Phrase): string => phrase.map((segment) => segment.text).join('');

export const text = (words: string): Segment => ({ kind: 'text', text: words });
export const name = (words: string): Segment => ({ kind: 'name', text: words });
export const amount = (words: string): Segment => ({ kind: 'amount', text: words });
export const temperature = (words: string): Segment => ({ kind: 'temperature', text: words });
export const time = (words: string): Segment => ({ kind: 'time', text: words });
export const sign = (words: string): Segment => ({ kind: 'sign', text: words });

function capital(words: string): string {
  const [first = ''] = words;
  return first.toLocaleUpperCase('en') + words.slice(first.length);
}

function merge(segments: readonly Segment[]): Phrase {
  const out: Segment[] = [];
  for (const segment of segments) {
    const last = out[out.length - 1];
    if (last && last.kind === segment.kind && segment.kind === 'text') out[out.length - 1] = text(last.text + segment.text);
    else if (segment.text !== '') out.push(segment);
  }
  return out;
}
