/** `// allow CODE: reason` comments, each with the line it holds for. */
import type { File } from 'nappe-grammar';
import { type Grouped, placeIn } from './blocks.ts';
import { factsOf } from './line-facts.ts';
import type { Allow } from './model.ts';

/** It holds for the next line that is not blank, comment or note; that line may stand in the next block, and is counted from this one's start. */
export function allowsIn(file: File, { blocks, firsts }: Grouped): readonly Allow[] {
  return blocks.flatMap((block) =>
    factsOf(block.lines).allows.map(({ line, index }): Allow => {
      const first = firsts.get(block.id) ?? 0;
      const hides = nextLine(file, first + index + 1);
      return {
        place: placeIn(block.id, index, line.span),
        codes: (line.allow?.codes ?? []).map((code) => ({ code: code.text, place: placeIn(block.id, index, code) })),
        reason: line.allow?.reason?.text ?? null,
        hidesLine: hides === null ? null : hides - first,
      };
    }),
  );
}

function nextLine({ lines }: File, from: number): number | null {
  for (let index = from; index < lines.length; index++) {
    const kind = lines[index]?.kind;
    if (kind !== 'blank' && kind !== 'comment' && kind !== 'note') return index;
  }
  return null;
}
