/** References: every place that names the thing under the cursor, over all files. */
import type { Location, Position } from 'vscode-languageserver';
import { occurrencesOf, pointedAt } from '../names/occurrences.ts';
import type { Analysis } from '../project.ts';
import { locationOf, within } from '../ranges.ts';

export function references(analysis: Analysis, position: Position, withDeclaration: boolean): Location[] {
  const { line, character } = within(analysis, position);
  const thing = pointedAt(analysis, line, character)?.thing;
  if (!thing) return [];
  return occurrencesOf(analysis.project, thing)
    .filter(({ declares }) => withDeclaration || !declares)
    .map(({ path, line: at, name }) => locationOf(analysis.project, path, at, name));
}
