/** What `card`, `weigh-out`, `timeline` and `compare` ask for, held against the files they name. */
import { nameKey, type RequestEntry, type RequestLine } from 'nappe-grammar';
import { type Group, placeIn } from './blocks.ts';
import { unknownValue } from './guards.ts';
import { factsOf } from './line-facts.ts';
import type { BlockId, Choice, Formula, Place, RawFinding, Request } from './model.ts';
import { locate } from './paths.ts';
import { missingFormula, outsideWorkspace, refusal } from './takes.ts';

/** A file as far as its text alone tells: formulas by title, with their choices. Nothing in it is resolved. */
export interface Outline {
  readonly formulas: readonly { readonly name: string; readonly choices: readonly Omit<Choice, 'place'>[] }[];
}

export interface Outlines {
  readonly root: string;
  outlineOf(path: string): Outline | { readonly refused: 'missing' | 'outside' | 'unreadable'; readonly why: string };
}

/** The requests of a file, each with the formula above it, and what is wrong with them. */
export function requestsIn(
  groups: readonly Group[],
  formulas: ReadonlyMap<BlockId, { readonly formula: Formula }>,
  path: string,
  outlines: Outlines,
): { readonly requests: readonly Request[]; readonly findings: readonly RawFinding[] } {
  const requests: Request[] = [];
  const findings: RawFinding[] = [];
  for (const { head, blocks } of groups) {
    const above = (head && formulas.get(head.id)?.formula) ?? null;
    for (const { id, lines } of head ? [head, ...blocks] : blocks)
      for (const { line, index } of factsOf(lines).requests) {
        requests.push({ place: placeIn(id, index, line.span), line, above });
        findings.push(...requestFindings(line, id, index, path, above, outlines));
      }
  }
  return { requests, findings };
}

function requestFindings(
  line: RequestLine,
  block: BlockId,
  index: number,
  from: string,
  above: Formula | null,
  outlines: Outlines,
): readonly RawFinding[] {
  return line.entries.flatMap((entry) => entryFindings(entry, line, block, index, from, above, outlines));
}

function entryFindings(
  entry: RequestEntry,
  line: RequestLine,
  block: BlockId,
  index: number,
  from: string,
  above: Formula | null,
  outlines: Outlines,
): readonly RawFinding[] {
  const { reference } = entry;
  if (reference === null) {
    if (above !== null) return valueFindings(entry, block, index, [above]);
    return [{ code: 'import-missing', place: placeIn(block, index, line.span), numbers: { what: 'above', name: line.word } }];
  }
  const place = placeIn(block, index, reference);
  const located = locate(reference.path, from, outlines.root);
  if ('outside' in located) return [outsideWorkspace(reference.path, located.outside, place)];
  const outline = outlines.outlineOf(located.path);
  if ('refused' in outline) return [refusal(reference.path, outline, place)];
  if (reference.formula === null) return valueFindings(entry, block, index, outline.formulas);
  const wanted = nameKey(reference.formula);
  const formulas = outline.formulas.filter(({ name }) => nameKey(name) === wanted);
  if (formulas.length > 0) return valueFindings(entry, block, index, formulas);
  return [
    missingFormula(
      reference,
      outline.formulas.map(({ name }) => name),
      located.path,
      place,
    ),
  ];
}

/** Values that none of the formulas meant declares. */
function valueFindings(entry: RequestEntry, block: BlockId, index: number, formulas: Outline['formulas']): readonly RawFinding[] {
  const choices = formulas.flatMap((formula) => formula.choices);
  const declared = new Set(choices.flatMap(({ values }) => values.map(nameKey)));
  const nowhere: Place = placeIn(block, index, entry);
  return entry.choices
    .filter((value) => !declared.has(value.key))
    .map((value) => ({
      ...unknownValue(
        block,
        index,
        value,
        choices.map((choice) => ({ ...choice, place: nowhere })),
      ),
      related: [],
    }));
}
