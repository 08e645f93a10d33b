/** `nappe/scale`: the edits that rewrite a formula in place at another size. */
import { type Formula, makesOf, millilitresOf, type Selection, selectionWith } from 'nappe';
import { factorFor, parseTarget } from 'nappe/scale';
import { blockAt, groupOf } from '../names/groups.ts';
import type { Analysis } from '../project.ts';
import type { Problem, ScaleAnswer, ScaleParams } from '../protocol.ts';
import { runUnder } from '../runs.ts';
import { chosenFormula, noFormula } from './card.ts';
import { scaleEdits, whyNot } from './refactor/scale-formula.ts';

export function scale(analysis: Analysis, params: ScaleParams): ScaleAnswer | Problem {
  const { unit, file, project, path, settings } = analysis;
  const formula = chosenFormula(analysis, params);
  const first = formula ? unit.blockLines.get(formula.id) : undefined;
  if (!formula || first === undefined) return { problem: noFormula(analysis, params) };
  const reason = whyNot(formula);
  if (reason !== null) return { problem: `The formula cannot be scaled in place: ${reason}.` };
  const { selection } = selectionWith(formula, params.choices ?? settings.choices);
  const wanted = factorOf(formula, selection, params);
  if ('problem' in wanted) return wanted;
  const made = makesOf(formula, selection);
  const line = made ? (unit.blockLines.get(made.place.block) ?? first) + made.place.line : null;
  const anew = line !== null && wanted.text !== null ? { line, text: wanted.text } : undefined;
  const edits = scaleEdits(groupOf(file, blockAt(file, first)), wanted.factor, anew);
  return { factor: wanted.factor, edit: { changes: { [project.uriOf(path)]: edits } } };
}

/** `text` is what `makes` is to say then, where a yield of another size was asked for. */
function factorOf(
  formula: Formula,
  selection: Selection,
  params: ScaleParams,
): { factor: number; text: string | null } | Problem {
  if (params.factor !== undefined) {
    const fits = Number.isFinite(params.factor) && params.factor > 0 && params.factor <= largest;
    return fits ? { factor: params.factor, text: null } : { problem: 'A factor is a number above zero, such as 2 or 0.5.' };
  }
  if (params.for === undefined) return { problem: 'Say how much: a yield such as “24 glasses” or “2.4 kg”, or a factor.' };
  const target = parseTarget(params.for);
  if ('problem' in target) return target;
  const { result } = runUnder(formula, selection).run;
  const written = makesOf(formula, selection)?.yield ?? null;
  const volume = result ? millilitresOf(result) : null;
  const scaling = factorFor(target, {
    written,
    grams: result ? (result.grams.low + result.grams.high) / 2 : null,
    millilitres: volume ? (volume.low + volume.high) / 2 : null,
  });
  if ('problem' in scaling) return scaling;
  const isOtherSize = target.size !== null || target.lengths !== null || target.quantity !== null;
  return { factor: scaling.factor, text: isOtherSize ? params.for.trim() : null };
}

const largest = 100_000;
