/** Anchors and contents: a name for every heading as forges make them, and the list of what is in the handout. */

/** Anchors of one page: lower case, punctuation gone, spaces as hyphens; the second of a name ends in `-1`. */
export class Anchors {
  private readonly taken = new Map<string, number>();

  of(text: string): string {
    const base = [...text.toLowerCase()]
      .filter((character) => /[\p{L}\p{M}\p{N}_\- ]/u.test(character))
      .join('')
      .replaceAll(' ', '-');
    for (;;) {
      const count = this.taken.get(base) ?? 0;
      this.taken.set(base, count + 1);
      const anchor = count === 0 ? base : `${base}-${count}`;
      if (count === 0 || !this.taken.has(anchor)) {
        this.taken.set(anchor, this.taken.get(anchor) ?? 1);
        return anchor;
      }
    }
  }
}

export interface Entry {
  /** 0 for chapters, 1 for what is in them. */
  readonly depth: number;
  readonly text: string;
  readonly anchor: string;
  readonly children: readonly Entry[];
}

/** A flat run of entries as a tree; an entry deeper than the first hangs under the one before it. */
export function nested(flat: readonly Omit<Entry, 'children'>[]): readonly Entry[] {
  const roots: (Omit<Entry, 'children'> & { children: Entry[] })[] = [];
  for (const entry of flat) {
    const last = roots.at(-1);
    if (entry.depth === 0 || !last) roots.push({ ...entry, children: [] });
    else last.children.push({ ...entry, children: [] });
  }
  return roots;
}

/** Titles an author may have given a list of contents of their own. */
export const isContents = (heading: string): boolean => ['contents', 'table of contents'].includes(heading.toLowerCase());
