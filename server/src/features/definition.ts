/** Go to definition: where the thing under the cursor is declared; from a file reference, the file. */
import type { Location, LocationLink, Position } from 'vscode-languageserver';
import { occurrencesOf, pointedAt } from '../names/occurrences.ts';
import type { Analysis } from '../project.ts';
import { locationOf, rangeOn, within } from '../ranges.ts';
import { linkAt } from './document-links.ts';

/** Every declaration: a name may be declared once for each of several choices. */
export function definition(analysis: Analysis, position: Position): Location[] {
  const { line, character } = within(analysis, position);
  const link = linkAt(analysis, line, character);
  if (link?.target) return [{ uri: link.target, range: rangeOn(link.line ?? 0, { start: 0, end: 0 }) }];
  const pointed = pointedAt(analysis, line, character);
  if (!pointed?.thing) return [];
  const { thing } = pointed;
  const all = occurrencesOf(analysis.project, thing, thing.path).filter(({ declares }) => declares);
  if (all.length > 0) return all.map(({ path, line: at, name }) => locationOf(analysis.project, path, at, name));
  return [locationOf(analysis.project, thing.path, thing.line, thing.name)];
}

/** The same with the name it starts from, for clients that show it. */
export function definitionLinks(analysis: Analysis, position: Position): LocationLink[] {
  const { line, character } = within(analysis, position);
  const origin = pointedAt(analysis, line, character)?.use.name ?? linkAt(analysis, line, character)?.span;
  return definition(analysis, position).map(({ uri, range }) => ({
    targetUri: uri,
    targetRange: range,
    targetSelectionRange: range,
    ...(origin && { originSelectionRange: rangeOn(line, origin) }),
  }));
}
