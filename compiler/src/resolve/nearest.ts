/** Nearest names: what a mistyped name may have meant. */
import { distance } from 'nappe-grammar';

/** Longer names are no slip of the finger, and comparing them costs the square of their length. */
const longestName = 80;

/** At most `most` candidates within a third of the name's length in edits (at least one), nearest first. Compared by key. */
export function nearestNames(
  key: string,
  candidates: Iterable<{ readonly key: string; readonly text: string }>,
  most = 3,
): readonly string[] {
  if (key.length > longestName) return [];
  const allowed = Math.max(1, Math.floor(key.length / 3));
  const found: { text: string; slips: number }[] = [];
  const seen = new Set<string>();
  for (const candidate of candidates) {
    if (seen.has(candidate.key) || candidate.key === key) continue;
    seen.add(candidate.key);
    const slips = distance(key, candidate.key, allowed);
    if (slips <= allowed) found.push({ text: candidate.text, slips });
  }
  found.sort((a, b) => a.slips - b.slips || (a.text < b.text ? -1 : 1));
  return found.slice(0, most).map(({ text }) => text);
}
