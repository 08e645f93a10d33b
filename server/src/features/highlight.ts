/** Document highlight: the places in this file that name what the cursor stands on. */
import { type DocumentHighlight, DocumentHighlightKind, type Position } from 'vscode-languageserver';
import { occurrencesOf, pointedAt } from '../names/occurrences.ts';
import type { Analysis } from '../project.ts';
import { rangeOn, within } from '../ranges.ts';

/** A declaration is a write, a use a read. */
export function highlights(analysis: Analysis, position: Position): DocumentHighlight[] {
  const { line, character } = within(analysis, position);
  const thing = pointedAt(analysis, line, character)?.thing;
  if (!thing) return [];
  return occurrencesOf(analysis.project, thing, analysis.path).map(({ line: at, name, declares }) => ({
    range: rangeOn(at, name),
    kind: declares ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
  }));
}
