/** Refactoring: a whole formula rewritten in place at another size: lines, parts in steps, what it makes. */
import type { Component, Formula } from 'nappe';
import type { Line, Operand, Quantity, Span, Varying, Yield } from 'nappe-grammar';
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import { blockAt, type Group, groupOf, linesOf } from '../../names/groups.ts';
import type { Analysis } from '../../project.ts';
import { rangeOn } from '../../ranges.ts';
import { formulaAt } from '../../runs.ts';
import { numberText, quantityText } from './quantity-text.ts';

const offered: readonly (readonly [string, number])[] = [
  ['×2', 2],
  ['×3', 3],
  ['×½', 0.5],
];

/** Offered on a formula's first line; a count that would not stay whole is not offered. */
export function scaleActions(analysis: Analysis, number: number): CodeAction[] {
  const { file, project, path } = analysis;
  const block = blockAt(file, number);
  if (block.heading?.word !== 'formula' || block.first !== number) return [];
  const group = groupOf(file, block);
  const formula = formulaAt(analysis, number);
  return offered.flatMap(([title, factor]): CodeAction[] => {
    if (!keepsCountsWhole(group, factor)) return [];
    const reason = formula ? whyNot(formula) : 'the formula cannot be read';
    const base = { title: `Scale the whole formula ${title}`, kind: CodeActionKind.RefactorRewrite };
    if (reason !== null) return [{ ...base, disabled: { reason } }];
    const edits = scaleEdits(group, factor);
    return edits.length > 0 ? [{ ...base, edit: { changes: { [project.uriOf(path)]: edits } } }] : [];
  });
}

/** Why the text cannot simply be scaled, in words for a cook; null where it can. */
export function whyNot(formula: Formula): string | null {
  if (formula.unreadable) return 'a line of the formula cannot be read';
  const taken = [...formula.components, ...(formula.assembly ? [formula.assembly] : [])].flatMap(wholeBases)[0];
  return taken === undefined ? null : `“${taken}” is taken whole from another file; weigh it on a line of its own first`;
}

/** Bases that a step names and no line weighs: their size stands in another file. */
function wholeBases({ scope, steps, lines }: Component): readonly string[] {
  const weighed = new Set(lines.map(({ key }) => key));
  const named = new Set(
    steps.flatMap(({ node }) =>
      [...node.operands, ...node.clauses.flatMap((clause) => (clause.word === 'with' ? clause.operands : []))].map(
        ({ name }) => name.key,
      ),
    ),
  );
  return [...scope].flatMap(([key, entry]) =>
    entry.is === 'taken' && named.has(key) && !weighed.has(key) ? [entry.taken.component.name] : [],
  );
}

function keepsCountsWhole(group: Group, factor: number): boolean {
  for (const { line } of linesOf(group))
    for (const { count } of yieldsIn(line)) if (count !== null && !Number.isInteger(count * factor)) return false;
  return true;
}

/** One edit a number that follows the size; `makes` itself may be given anew. */
export function scaleEdits(group: Group, factor: number, makes?: { readonly line: number; readonly text: string }): TextEdit[] {
  const edits: TextEdit[] = [];
  for (const { line, number } of linesOf(group)) {
    const put = (span: Span, newText: string) => edits.push({ range: rangeOn(number, span), newText });
    for (const quantity of quantitiesIn(line))
      put(quantity, quantityText(quantity.low * factor, quantity.high * factor, quantity));
    for (const made of yieldsIn(line)) {
      if (makes?.line === number) put(made, makes.text);
      else if (made.count !== null) put(countSpan(line.text, made), numberText(made.count * factor, 2));
    }
  }
  return edits;
}

/** Amounts that grow with the batch: not per cent, not per piece, not what goes into each vessel. */
function quantitiesIn(line: Line): readonly Quantity[] {
  const found: Quantity[] = [];
  const put = ({ base, overrides }: Varying<Quantity>) => found.push(base, ...overrides.map(({ then }) => then));
  const parts = (operands: readonly Operand[]) => {
    for (const { part } of operands) if (part?.kind === 'quantity') put(part.quantity);
  };
  if (line.kind === 'ingredient') put(line.quantity);
  if (line.kind === 'step') {
    parts(line.operands);
    for (const clause of line.clauses) {
      if (clause.word === 'with') parts(clause.operands);
      if (clause.word === 'to')
        for (const value of [clause.target.base, ...clause.target.overrides.map(({ then }) => then)])
          if (value.kind === 'quantity') found.push(value);
    }
  }
  if (line.kind === 'header' && line.word === 'makes' && line.yield.quantity) found.push(line.yield.quantity);
  return found.filter(({ unit, each }) => unit !== '%' && unit !== 'some' && !each);
}

/** Counted yields: `makes 12 glasses`, `cut into 24 bars`. */
function yieldsIn(line: Line): readonly Yield[] {
  if (line.kind === 'header' && line.word === 'makes') return line.yield.count === null ? [] : [line.yield];
  if (line.kind !== 'step') return [];
  return line.clauses.flatMap((clause) =>
    clause.word === 'into' && 'kind' in clause.target && clause.target.count !== null ? [clause.target] : [],
  );
}

/** The number at a yield's start. */
function countSpan(text: string, { start, end }: Yield): Span {
  const number = /^[\d\s.,/½¼¾⅓⅔⅛⅜⅝⅞]+/.exec(text.slice(start, end))?.[0].trimEnd() ?? '';
  return { start, end: start + number.length };
}
