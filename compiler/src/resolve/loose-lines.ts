/** Lines that need a block above them, and an assembly that needs a formula. */
import { type Group, headingPlace, placeIn, problemsIn } from './blocks.ts';
import type { RawFinding } from './model.ts';
import { isLineOfComponent } from './scopes.ts';

/** Of the blocks above any formula; a row of such lines is one finding. */
export function looseFindings({ blocks }: Group): readonly RawFinding[] {
  const findings: RawFinding[] = [];
  for (const block of blocks) {
    if (block.heading?.word === 'assembly') {
      const message = 'An assembly brings the components of a formula together; no `formula` stands above it.';
      findings.push({ code: 'syntax', place: headingPlace(block), numbers: { message } }, ...problemsIn(block));
    }
    if (block.heading !== null) continue;
    const index = block.lines.findIndex((line) => isLineOfComponent(line) || line.kind === 'header');
    const line = block.lines[index];
    if (line === undefined) continue;
    const message = 'This line stands under no `formula` and no `component`; begin with a line `formula` and its name.';
    const place = placeIn(block.id, index, line.span);
    const edits = [{ block: block.id, line: index, start: 0, end: 0, text: 'formula Untitled\n' }];
    findings.push({ code: 'syntax', place, numbers: { message }, fixes: [{ title: 'Begin a formula here', edits }] });
  }
  return findings;
}
