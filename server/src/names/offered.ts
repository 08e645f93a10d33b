/** What a file declares by headings: kept small, so that thousands of files can be asked without their trees. */
import type { File, Name } from 'nappe-grammar';
import { groupsOf } from './groups.ts';
import { isOneComponent } from './things.ts';

export interface Offered {
  readonly word: 'formula' | 'component' | 'ingredient';
  readonly name: Name;
  readonly line: number;
  /** The title of the formula it belongs to; null above any formula. */
  readonly formula: string | null;
  /** Another file may take it by this name. */
  readonly takeable: boolean;
}

export function offeredIn(file: File): readonly Offered[] {
  return groupsOf(file).flatMap((group): Offered[] => {
    const title = group.head?.heading?.name?.text.trim() ?? null;
    return group.blocks.flatMap(({ heading, first }): Offered[] => {
      if (!heading?.name) return [];
      const base = { name: heading.name, line: first };
      if (heading.word === 'formula') return [{ word: 'formula', ...base, formula: null, takeable: isOneComponent(group) }];
      if (heading.word !== 'component' && heading.word !== 'ingredient') return [];
      return [{ word: heading.word, ...base, formula: heading.word === 'component' ? title : null, takeable: true }];
    });
  });
}
