/** Numbers as people write them in recipes, of several languages: `1 1/2`, `½`, `1,5`, `2–3`, `un`, `eine halbe`. */

export interface Counted {
  /** As the notation writes it: `1.5`, `2-3`, `1/2`. */
  readonly text: string;
  readonly low: number;
  readonly high: number;
  /** Characters read. */
  readonly length: number;
}

const halves: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** Words that count; the longest are tried first. */
const words: readonly (readonly [string, number])[] = [
  ['half a', 0.5],
  ['half an', 0.5],
  ['half', 0.5],
  ['one', 1],
  ['two', 2],
  ['three', 3],
  ['four', 4],
  ['five', 5],
  ['six', 6],
  ['eight', 8],
  ['ten', 10],
  ['twelve', 12],
  ['an', 1],
  ['a', 1],
  ['une demi', 0.5],
  ['un demi', 0.5],
  ['demi', 0.5],
  ['une', 1],
  ['un', 1],
  ['deux', 2],
  ['trois', 3],
  ['quatre', 4],
  ['cinq', 5],
  ['eine halbe', 0.5],
  ['ein halber', 0.5],
  ['ein halbes', 0.5],
  ['einen', 1],
  ['eine', 1],
  ['ein', 1],
  ['zwei', 2],
  ['drei', 3],
  ['vier', 4],
  ['fünf', 5],
];

/** A number or a range at the start of the text; null where there is none. */
export function numberAt(text: string, { spelled = true } = {}): Counted | null {
  const first = oneAt(text, spelled);
  if (!first) return null;
  const join = /^\s*(?:-|–|—|\bto\b|\bor\b|à|\bbis\b|\bou\b|\boder\b)\s*/u.exec(text.slice(first.length));
  if (join) {
    const second = oneAt(text.slice(first.length + join[0].length), false);
    if (second && second.value > first.value)
      return {
        text: `${first.text}-${second.text}`,
        low: first.value,
        high: second.value,
        length: first.length + join[0].length + second.length,
      };
  }
  return { text: first.text, low: first.value, high: first.value, length: first.length };
}

interface One {
  readonly text: string;
  readonly value: number;
  readonly length: number;
}

function oneAt(text: string, spelled: boolean): One | null {
  const plain = /^\d+(?:[.,]\d+)?/u.exec(text)?.[0];
  const fraction = /^(?:(\d+)[\s-]+)?(\d+)\s?[/⁄]\s?(\d+)(?![\d/])/u.exec(text);
  if (fraction && Number(fraction[3]) > 0) {
    const [all, whole, over, under] = fraction as unknown as [string, string | undefined, string, string];
    return {
      text: `${whole ? `${whole} ` : ''}${over}/${under}`,
      value: Number(whole ?? 0) + Number(over) / Number(under),
      length: all.length,
    };
  }
  const vulgar = new RegExp(`^(\\d+)?\\s?([${Object.keys(halves).join('')}])`, 'u').exec(text);
  if (vulgar) {
    const part = halves[vulgar[2] as string] as string;
    const [over, under] = part.split('/').map(Number) as [number, number];
    return {
      text: `${vulgar[1] ? `${vulgar[1]} ` : ''}${part}`,
      value: Number(vulgar[1] ?? 0) + over / under,
      length: vulgar[0].length,
    };
  }
  if (plain) {
    // A comma before three digits parts thousands, before fewer it is a decimal comma.
    const thousands = /^[1-9]\d{0,2},\d{3}$/.test(plain);
    const dotted = thousands ? plain.replace(',', '') : plain.replace(',', '.');
    return { text: dotted, value: Number(dotted), length: plain.length };
  }
  if (!spelled) return null;
  const lower = text.toLowerCase();
  const word = words.find(([one]) => lower.startsWith(one) && /^[\s-]/u.test(lower.slice(one.length)));
  return word ? { text: String(word[1]), value: word[1], length: word[0].length } : null;
}
