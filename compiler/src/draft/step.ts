/** One sentence of a method → steps, where verb, parties and readings are all understood; else null. */
import { parseLine, shapes, singularNoun, verbs, vessels } from 'nappe-grammar';
import { numberAt } from './numbers.ts';
import type { Names } from './parties.ts';
import { around, articles, fillers, joiners, media, pronouns, verbsBySaying } from './step-words.ts';

export interface Understood {
  readonly steps: readonly string[];
  /** False where words were left out: the sentence then stands below as a note. */
  readonly whole: boolean;
}

/** Characters; a longer sentence is no single instruction. */
const longest = 400;

/** Null where anything in the sentence is not understood; `names` then is as it was. */
export function stepsOf(sentence: string, names: Names): Understood | null {
  if (sentence.length > longest) return null;
  const tried = names.copy();
  const text = sentence.normalize('NFC').replaceAll('’', "'").replace(/[.!]$/u, '').split(/\s+/).join(' ').trim();
  const steps: string[] = [];
  let whole = true;
  for (const clause of text.split(
    /(?:,|;)? (?:and then|then|puis|et puis) |; | (?:and|et) (?=(?:cool|chill|strain|whisk|mix|stir|heat|bake|add|boil|freeze|blend|melt|knead|whip|refrigerate)\b(?! (?:sugar|cream|butter)\b))/iu,
  )) {
    const step = stepOf(clause.replace(/^,\s*|,$/g, '').trim(), tried);
    if (!step) return null;
    steps.push(step.text);
    whole &&= step.whole;
  }
  if (steps.length === 0) return null;
  names.become(tried);
  return { steps, whole };
}

function stepOf(said: string, names: Names): { readonly text: string; readonly whole: boolean } | null {
  let text = said;
  const clauses: string[] = [];
  let whole = true;
  /** Takes what a clause says out of the sentence. */
  const take = (pattern: RegExp, say: (found: RegExpExecArray) => string | null): boolean => {
    const found = pattern.exec(text);
    const clause = found && say(found);
    if (!found || clause === null || clause === undefined) return false;
    if (clause !== '') clauses.push(clause);
    text = `${text.slice(0, found.index)} ${text.slice(found.index + found[0].length)}`
      .split(/\s+/)
      .join(' ')
      .replace(/ ,/g, ',')
      .replace(/,\s*$/, '')
      .trim();
    return true;
  };
  const verb = verbOf(text);
  if (!verb) return null;
  text = verb.rest;
  // The other scale, and marks of a gas oven, beside the reading that counts.
  if (take(/ ?[(/,] ?\d{2,3} ?°? ?F\b[^)]*\)?|\(gas(?: mark)? \d\)/iu, () => '')) whole = false;
  if (
    take(
      /\b(?:to|until|for) (?:very )?(soft|medium|stiff|firm)(?:[ -](medium|stiff))? peaks?(?: form)?\b/iu,
      ([, low, high]) => `to ${word(low)}${high ? `-${word(high)}` : ''} peak`,
    )
  )
    verb.word = verb.word === 'whisk' ? 'whip' : verb.word;
  const temperature = (found: RegExpExecArray): string | null => {
    const count = numberAt(found[2] ?? '', { spelled: false });
    if (!count || count.length < (found[2] ?? '').trim().length) return null;
    const at = ['bake', 'toast', 'proof'].includes(verb.word) || /^(?:at|in|bei)/iu.test(found[1] ?? '');
    return `${at ? 'at' : 'to'} ${count.text} °${(found[3] ?? 'C').toUpperCase()}`;
  };
  take(
    /(?<!\p{L})(to|until it reaches|until it reads|until|at|in an oven at|in a preheated oven at|jusqu'à|bei|auf|à)\s(?:between )?((?:-?\d+(?:[.,]\d+)?)(?:\s?(?:-|–|to|and|à)\s?\d+(?:[.,]\d+)?)?)\s?(?:°|º|degrees )? ?([CF])(?![\p{L}])/iu,
    (found) => temperature([found[0], found[1], (found[2] ?? '').replace(/ and /, '-'), found[3]] as unknown as RegExpExecArray),
  );
  take(
    /\b(?:(?:for|pendant|für)\s(?:about |approximately |at least |environ )?)((?:\d[\d.,/½¼¾ ]*|½|an?|one|two|three|half an)(?:\s?(?:-|–|to|à)\s?\d+)?)\s?(seconds?|secs?|s|minutes?|mins?|min|hours?|hrs?|h|heures?|days?|jours?|stunden?|minuten)\b(?:\s(?:and\s)?(\d+)\s?(minutes?|mins?|min))?/iu,
    ([all, count, unit, more]) => {
      const number = numberAt(`${(count ?? '').trim()} `.replace(/^(half an) $/i, 'half an hour'));
      if (!number) return null;
      if (/about|approx|at least|environ/i.test(all)) whole = false;
      return `for ${number.text} ${unitOf(unit ?? '')}${more ? ` ${more} min` : ''}`;
    },
  );
  take(/\b(?:overnight|toute la nuit)\b/iu, () => 'for overnight');
  for (const [pattern, medium] of media) take(pattern, () => medium);
  take(/\b(?:on|over) (?:a )?(low|medium|high) (?:heat|speed)\b/iu, ([, level]) => `on ${word(level)}`);
  take(
    /\bin (two|three|four|\d) (?:additions|goes|parts|batches)\b/iu,
    ([, count]) => `in ${numberAt(`${count} `)?.text} additions`,
  );
  take(
    /\bwith (?:a|an|the) (balloon whisk|whisk|spatula|immersion blender|stick blender|hand blender|wooden spoon|spoon|mixer|paddle|rubber spatula)\b/iu,
    ([, tool]) => `with ${word(tool)}`,
  );
  // A sign runs to the end: it is kept as written.
  take(/(?:^|,? )(?:until|jusqu'à ce que|bis) (?!it reaches)([^,]+)$/iu, ([, sign]) => `until ${signOf(sign ?? '')}`);
  for (let left = true; left; ) {
    left = fillers.some((filler) => take(filler, () => ''));
    if (left) whole = false;
  }
  const other = /\s?\b(into|over|in|onto|dans|sur)\s(.+)/iu.exec(` ${text}`);
  let target: string | null = null;
  if (other) {
    const into = word(other[1]) === 'over' || word(other[1]) === 'sur' || word(other[1]) === 'onto' ? 'over' : 'into';
    const steeps = ['bloom', 'dissolve', 'infuse', 'soak'].includes(verb.word);
    const matter = names.find(other[2] ?? '');
    const vessel = vesselOf(other[2] ?? '');
    if (matter) target = `${steeps ? 'in' : into} ${matter}`;
    else if (vessel && !steeps) target = `into ${vessel}`;
    else return null;
    text = ` ${text}`.slice(0, other.index).trim();
    if (matter && !names.acted(matter)) return null;
  }
  const parties = partiesIn(text, names);
  if (!parties) return null;
  const line = [verb.word, parties.length > 0 ? parties.map(named).join(', ') : '', target ? targetWords(target) : '', ...clauses]
    .filter((part) => part !== '')
    .join(' ');
  const read = parseLine(line, 'formula');
  if (read.kind !== 'step' || read.problems.length > 0 || read.verb !== verb.word) return null;
  if (/^(?:grease|line|reserve|discard|check|do)$/.test(verb.word)) return null;
  return names.after(verb.word, parties, other ? (names.find(other[2] ?? '') ?? null) : null) ? { text: line, whole } : null;
}

function verbOf(text: string): { word: string; rest: string } | null {
  const lower = text.toLowerCase();
  for (const { before, after, verb } of around) {
    const end = after.exec(text);
    if (before.test(text) && end)
      return {
        word: verb,
        rest: `${text.slice(0, end.index)}${text.slice(end.index + end[0].length)}`.replace(before, '').trim(),
      };
  }
  const found = [...verbsBySaying]
    .sort((a, b) => b[0].length - a[0].length)
    .find(([saying]) => lower === saying || lower.startsWith(`${saying} `) || lower.startsWith(`${saying},`));
  if (!found || !verbs.some(({ word: known }) => known === found[1])) return null;
  return { word: found[1], rest: text.slice(found[0].length).trim() };
}

/** Names of all that is acted on; an empty list is the current matter. Null where a word is no known party. */
function partiesIn(text: string, names: Names): readonly string[] | null {
  const clean = text.replace(/^,|,$/g, '').trim();
  if (clean === '' || pronouns.test(clean)) return names.hasCurrent() ? [] : null;
  const words = clean
    .replace(/,/g, ' , ')
    .split(/\s+/)
    .filter((one) => one !== '');
  const parties: string[] = [];
  for (let at = 0; at < words.length; ) {
    if (joiners.test(words[at] as string) || articles.test(words[at] as string)) {
      at += 1;
      continue;
    }
    // The longest run of words that names something.
    let end = words.length;
    let name: string | null = null;
    for (; end > at; end--) {
      name = names.find(words.slice(at, end).join(' '));
      if (name) break;
    }
    if (!name || parties.includes(name)) return null;
    parties.push(name);
    at = end;
  }
  return parties.length > 0 ? parties : null;
}

function vesselOf(text: string): string | null {
  const noun = singularNoun(
    text
      .replace(/^(?:the|a|an|your|each|\d+|six|eight|ten|twelve|four)\s+/iu, '')
      .replace(/^(?:prepared|small|individual|serving|clean)\s+/iu, ''),
  );
  const known = [...vessels.flatMap(({ word: one, also }) => [one, ...also]), ...shapes.map(({ word: one }) => one)];
  return known.includes(noun) ? noun : null;
}

const named = (name: string): string => {
  const bare = parseLine(`heat ${name}`, 'formula');
  return bare.kind === 'step' && bare.problems.length === 0 && bare.operands.length === 1 && bare.clauses.length === 0
    ? name
    : `"${name}"`;
};

function targetWords(target: string): string {
  const space = target.indexOf(' ');
  return `${target.slice(0, space)} ${named(target.slice(space + 1))}`;
}

const word = (text: string | undefined): string => (text ?? '').toLowerCase().replace('firm', 'stiff');

function unitOf(text: string): string {
  const first = text.toLowerCase();
  if (/^s/.test(first) && !/^st/.test(first)) return 's';
  if (/^m/.test(first)) return 'min';
  return /^(?:d|j)/.test(first) ? 'd' : 'h';
}

/** Quoted wherever the notation would read on or stop. */
function signOf(text: string): string {
  const sign = text.trim().replaceAll('"', '”');
  const read = parseLine(`whisk until ${sign}`, 'formula');
  const same =
    read.kind === 'step' &&
    read.problems.length === 0 &&
    read.clauses.length === 1 &&
    read.clauses[0]?.word === 'until' &&
    read.clauses[0].sign.text === sign;
  return same ? sign : `"${sign}"`;
}
