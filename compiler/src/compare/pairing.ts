/** Pairing of two lists: what is the same by the strictest test first, then by the next. */

export interface Pairing<T> {
  readonly pairs: readonly (readonly [T, T])[];
  /** Without a partner. */
  readonly left: readonly T[];
  readonly come: readonly T[];
}

/** Each of `old` with the first of `next` still free that the test accepts; a later test sees only what earlier ones left. */
export function paired<T>(
  old: readonly T[],
  next: readonly T[],
  ...tests: readonly ((a: T, b: T, free: { readonly left: readonly T[]; readonly come: readonly T[] }) => boolean)[]
): Pairing<T> {
  const pairs: (readonly [T, T])[] = [];
  let left = old;
  let come = next;
  for (const test of tests) {
    const free = { left, come };
    const taken = new Set<T>();
    for (const a of left) {
      const b = come.find((candidate) => !taken.has(candidate) && test(a, candidate, free));
      if (b === undefined) continue;
      taken.add(a).add(b);
      pairs.push([a, b]);
    }
    left = left.filter((one) => !taken.has(one));
    come = come.filter((one) => !taken.has(one));
  }
  return { pairs, left, come };
}
