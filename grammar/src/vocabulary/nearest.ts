/** The nearest word of a list: edit distance with swapped neighbours, within a third of the word's length. */

/** Longest word worth comparing; longer ones are no typing slips. */
const longest = 40;

export interface Near {
  readonly word: string;
  readonly distance: number;
}

/** The candidate nearest to `word`, or null where none is within max(1, length / 3) slips. The first of equals wins. */
export function nearest(word: string, candidates: Iterable<string>): string | null {
  return nearestWithin(word, candidates, Math.max(1, Math.floor(word.length / 3)))?.word ?? null;
}

export function nearestWithin(word: string, candidates: Iterable<string>, limit: number): Near | null {
  if (word.length > longest) return null;
  const folded = word.toLowerCase();
  let best: Near | null = null;
  for (const candidate of candidates) {
    const within = best === null ? limit : best.distance - 1;
    if (within < 0) break;
    const found = distance(folded, candidate.toLowerCase(), within);
    if (found <= within) best = { word: candidate, distance: found };
  }
  return best;
}

/** The last three rows of the distance table, kept between calls. */
const rows = [0, 1, 2].map(() => new Uint16Array(longest + 1));

/** Optimal string alignment distance of words of at most 40 characters; anything above `limit` is reported as `limit + 1`. */
export function distance(a: string, b: string, limit = longest): number {
  if (Math.abs(a.length - b.length) > limit || Math.max(a.length, b.length) > longest) return limit + 1;
  for (let j = 0; j <= b.length; j++) rows[0]![j] = j;
  for (let i = 1; i <= a.length; i++) {
    const current = rows[i % 3]!;
    const previous = rows[(i + 2) % 3]!;
    const before = rows[(i + 1) % 3]!;
    current[0] = i;
    let smallest = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a.charCodeAt(i - 1) === b.charCodeAt(j - 1);
      let cost = Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + (same ? 0 : 1));
      const swapped =
        i > 1 && j > 1 && a.charCodeAt(i - 1) === b.charCodeAt(j - 2) && a.charCodeAt(i - 2) === b.charCodeAt(j - 1);
      if (swapped) cost = Math.min(cost, before[j - 2]! + 1);
      current[j] = cost;
      if (cost < smallest) smallest = cost;
    }
    if (smallest > limit) return limit + 1;
  }
  return Math.min(rows[a.length % 3]![b.length]!, limit + 1);
}
