/** What an unreadable line, a doubtful name or an unknown amount leaves unsure, so that one fault does not raise a row of others. */
import { nameKey } from 'nappe-grammar';
import type { BlockId, Component, Formula, Place, RawFinding } from '../resolve/model.ts';
import { namesIn } from '../resolve/needs.ts';
import { undone } from '../run/bench.ts';
import type { Run } from '../run/trace.ts';

export interface Unsure {
  /** Whether a rule's finding there rests on what could not be read. */
  clouds(place: Place): boolean;
  /** Folded texts of a block's lines with something unreadable in them, and names that stand for two things. */
  unreadable(block: BlockId): readonly { readonly line: number; readonly text: string }[];
}

const noLines: readonly { readonly line: number; readonly text: string }[] = [];

/** Findings after which the amount or nature of something in the block is not known. */
const unknowing: ReadonlySet<string> = new Set([
  'syntax',
  'wrong-clause',
  'duplicate-name',
  'unknown-unit',
  'needs-density',
  'needs-piece-mass',
  'needs-mass',
  'percent-total',
]);

/** Those that leave unsure only what stands below them. */
const ofLines: ReadonlySet<string> = new Set(['syntax', 'wrong-clause', 'duplicate-name']);

/**
 * Below an unreadable line its block is unsure, and with it every block that uses its result; a block with an unknown amount is
 * unsure as a whole.
 */
export function unsureOf(formula: Formula, more: readonly RawFinding[]): Unsure {
  const from = new Map<BlockId, number>();
  const texts = new Map<BlockId, { line: number; text: string }[]>();
  for (const { code, place, numbers, unreadable } of [...formula.findings, ...more]) {
    if (!unknowing.has(code) && !undone.has(code)) continue;
    const start = ofLines.has(code) || undone.has(code) ? place.line : 0;
    from.set(place.block, Math.min(from.get(place.block) ?? start, start));
    const text = unreadable ?? (code === 'duplicate-name' && typeof numbers.name === 'string' ? numbers.name : null);
    if (text !== null) texts.set(place.block, [...(texts.get(place.block) ?? []), { line: place.line, text: nameKey(text) }]);
  }
  if (from.size > 0) spread(formula, from);
  return {
    clouds: ({ block, line }) => line >= (from.get(block) ?? Number.POSITIVE_INFINITY),
    unreadable: (block) => texts.get(block) ?? noLines,
  };
}

/** Blocks that name an unsure component are unsure; so until nothing changes. */
function spread(formula: Formula, from: Map<BlockId, number>): void {
  const blocks: readonly Component[] = [...formula.components, ...(formula.assembly ? [formula.assembly] : [])];
  for (let grown = true; grown; ) {
    grown = false;
    const unsure = new Set(blocks.filter(({ id }) => from.has(id)).map(({ key }) => key));
    for (const block of blocks) {
      if (from.has(block.id) || !names(block, unsure)) continue;
      from.set(block.id, 0);
      grown = true;
    }
  }
}

const names = (block: Component, keys: ReadonlySet<string>): boolean =>
  block.lines.some(({ substance }) => substance.is === 'own component' && keys.has(substance.component.key)) ||
  block.steps.some(({ node }) => namesIn(node).some(({ key }) => keys.has(key)));

/** Codes of the run that an unreadable line may cause: what it declared is unknown, what it used is left over. */
const ofNames: ReadonlySet<string> = new Set([
  'unknown-name',
  'used-before-made',
  'used-up',
  'overdrawn',
  'leftover',
  'unused-ingredient',
]);

/** Whether a finding of the run is only there because a line of its block that holds the name could not be read. */
export function hiddenBehind({ code, place, numbers }: RawFinding, unsure: Unsure): boolean {
  if (!ofNames.has(code)) return false;
  const lines = unsure.unreadable(place.block);
  if (lines.length === 0) return false;
  if (typeof numbers.name !== 'string') return code === 'used-before-made' && lines.some(({ line }) => line < place.line);
  const key = nameKey(numbers.name);
  return lines.some(({ text }) => text.includes(key));
}

/**
 * Names whose remainder is no fault of its own: the nearest to a name nobody knows, and what a step names that cannot be done.
 * Of the run's findings under one combination.
 */
export function excusedNames(findings: readonly RawFinding[], run: Run): ReadonlySet<string> {
  const excused = new Set<string>();
  const failed = findings.filter(({ code }) => undone.has(code));
  for (const { code, numbers } of findings)
    if (code === 'unknown-name' && typeof numbers.nearest === 'string') excused.add(nameKey(numbers.nearest));
    else if (code === 'used-up' && typeof numbers.now === 'string') excused.add(nameKey(numbers.now));
  if (failed.length === 0) return excused;
  const lines = new Set(failed.map(({ place }) => `${place.block} ${place.line}`));
  for (const { component } of run.blocks)
    for (const { place, node } of component.steps)
      if (lines.has(`${place.block} ${place.line}`)) for (const name of namesIn(node)) excused.add(name.key);
  return excused;
}

/** Whether a finding says no more than that something excused is not used. */
export const isExcused = ({ code, numbers }: RawFinding, excused: ReadonlySet<string>): boolean =>
  (code === 'unused-ingredient' || code === 'leftover') && typeof numbers.name === 'string' && excused.has(nameKey(numbers.name));

/** What the run could not do, nor guess: below it the block is as unsure as below a line that cannot be read. */
export const notDone = ({ findings }: Run): readonly RawFinding[] =>
  findings.filter(
    ({ code, numbers, readOn }) => undone.has(code) && readOn !== true && typeof numbers.coat !== 'string' && numbers.now !== '',
  );

/** Whether a rule's finding is only about the amount made, while a step of the same run could not be done. */
export const restsOnUndone = ({ code }: RawFinding, ofRun: readonly RawFinding[]): boolean =>
  code === 'yield-mismatch' && ofRun.some((finding) => undone.has(finding.code));
