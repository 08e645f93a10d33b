/** A recipe in plain text or Markdown: title, yield, lists of ingredients, paragraphs of method, by line. */
import { looksMeasured } from './ingredient.ts';
import type { Found, Part, Written } from './model.ts';

/** Headings that say what follows and name nothing. */
const ingredientWords = /^(?:ingredients?|ingrédients?|zutaten|you (?:will )?need|what you need)$/iu;
const methodWords =
  /^(?:method|directions?|instructions?|steps?|preparation|préparation|étapes?|recette|zubereitung|anleitung|what to do)$/iu;
const yieldLine =
  /^(?:(?:makes|serves|yields?|for|pour|donne|für|ergibt|portions?|servings?) ?:? ?(?:about )?\d.*|\d+ (?:portions?|servings?|personnes|portionen|personen))$/iu;

export function foundInText(text: string): Found {
  const parts: Open[] = [];
  const notes: string[] = [];
  let title: string | null = null;
  let by: string | null = null;
  let makes: string | null = null;
  let section: 'before' | 'ingredients' | 'method' = 'before';
  let last: Written | null = null;
  const part = (): Open => parts.at(-1) ?? open(parts, null);
  for (const [index, raw] of text
    .replace(/^\ufeff/, '')
    .split(/\r\n|\n|\r/)
    .entries()) {
    const line = index + 1;
    const { words, heading, numbered, bulleted } = bare(raw);
    if (words === '') {
      last = null;
      continue;
    }
    const name = words.endsWith(':') ? words.slice(0, -1).trimEnd() : words;
    if (
      title === null &&
      (heading || section === 'before') &&
      !looksMeasured(words) &&
      !isHeadingWord(name) &&
      !yieldLine.test(words)
    ) {
      title = name;
      continue;
    }
    if (makes === null && yieldLine.test(words) && section !== 'method') {
      makes = words;
      continue;
    }
    const author = /^(?:[Bb]y|[Pp]ar|[Vv]on)\s+(\p{Lu}.*)$/u.exec(words);
    if (by === null && section === 'before' && author) {
      by = author[1] as string;
      continue;
    }
    if (ingredientWords.test(name)) section = 'ingredients';
    else if (methodWords.test(name)) section = 'method';
    else if (isHeading(words, heading, numbered, section)) {
      open(parts, partName(name));
      // Below a new heading the list begins again.
      if (section === 'method')
        section = parts.some(({ heading: one, prose }) => one !== null && prose.length > 0) ? 'ingredients' : section;
    } else if (
      !numbered &&
      section !== 'method' &&
      (looksMeasured(words) || (section === 'ingredients' && (bulleted || isItem(words))))
    ) {
      section = 'ingredients';
      part().ingredients.push({ text: words, line });
      last = null;
    } else if (!numbered && section === 'method' && bulleted && looksMeasured(words)) {
      part().ingredients.push({ text: words, line });
    } else if (section === 'before') notes.push(words);
    else {
      section = 'method';
      // A paragraph that is broken over lines is one.
      if (last && !numbered && !bulleted) {
        const whole: Written = { text: `${last.text} ${words}`, line: last.line };
        part().prose.splice(-1, 1, whole);
        last = whole;
      } else {
        last = { text: words, line };
        part().prose.push(last);
      }
    }
  }
  return { title, by, yield: makes, notes, parts };
}

interface Open extends Part {
  readonly ingredients: Written[];
  readonly prose: Written[];
}

function open(parts: Open[], heading: string | null): Open {
  const known = heading === null ? undefined : parts.find((one) => one.heading?.toLowerCase() === heading.toLowerCase());
  const part = known ?? { heading, ingredients: [], prose: [] };
  if (known) parts.splice(parts.indexOf(known), 1);
  parts.push(part);
  return part;
}

/** Without marks of Markdown, bullets and numbers. */
function bare(raw: string): { words: string; heading: boolean; numbered: boolean; bulleted: boolean } {
  let words = raw.trim().split(/\s+/).join(' ');
  const hashes = /^#{1,6} /.exec(words);
  if (hashes) words = words.slice(hashes[0].length);
  const bullet = /^[-*•·–+] (?:\[[ xX]\] )?/u.exec(words);
  if (bullet) words = words.slice(bullet[0].length);
  const number = /^(?:\d{1,2}[.)]|step \d{1,2}[.:]|étape \d{1,2}\s?[.:])\s/iu.exec(words);
  if (number) words = words.slice(number[0].length);
  if (/^(?:[-*_=] ?){3,}$/.test(words)) words = '';
  words = words.replace(/\*\*|__|`/g, '').trim();
  const italic = /^([*_])([^*_]+)\1$/.exec(words);
  if (italic) words = italic[2] as string;
  return {
    words,
    heading: hashes !== null || /^\*\*[^*]+\*\*:?$/.test(raw.trim()),
    numbered: number !== null,
    bulleted: bullet !== null,
  };
}

const isHeadingWord = (name: string): boolean => ingredientWords.test(name) || methodWords.test(name);

/** `For the custard:`, `## Custard`. */
const isHeading = (words: string, marked: boolean, numbered: boolean, section: string): boolean =>
  marked ||
  (!numbered && words.endsWith(':') && words.length < 60 && section !== 'before' && !looksMeasured(words)) ||
  (/^(?:for the|pour (?:la|le|les|l')|für (?:den|die|das))\s?\p{L}[^.]{0,40}$/iu.test(words) &&
    !numbered &&
    !/[.!]$/.test(words));

const partName = (name: string): string =>
  name.replace(/^(?:for the|for|pour (?:la |le |les |l')|für (?:den|die|das))\s?/iu, '').trim();

/** A short line without a full stop, in a list of ingredients: `Salt`, `Icing sugar, for dusting`. */
const isItem = (words: string): boolean => words.length < 60 && !/[.!?]$/.test(words);
