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

/** Optimal string alignment distance; anything above `limit` is reported as `limit + 1`. */
export function distance(a: string, b: string, limit = longest): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const current = [i];
    let smallest = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let cost = Math.min(previous[j]! + 1, current[j - 1]! + 1, previous[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) cost = Math.min(cost, before[j - 2]! + 1);
      current.push(cost);
      if (cost < smallest) smallest = cost;
    }
    if (smallest > limit) return limit + 1;
    before = previous;
    previous = current;
  }
  return Math.min(previous[b.length]!, limit + 1);
}
