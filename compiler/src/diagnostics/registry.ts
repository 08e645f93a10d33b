/** The rules: every diagnostic code there is. A new rule is its file, one import and one line here; nothing else lists them. */
import { duplicateName } from './duplicate-name.ts';
import { importCycle } from './import-cycle.ts';
import { importMissing } from './import-missing.ts';
import { leftover } from './leftover.ts';
import { needsDensity } from './needs-density.ts';
import { needsMass } from './needs-mass.ts';
import { needsPieceMass } from './needs-piece-mass.ts';
import { outsideWorkspace } from './outside-workspace.ts';
import { overdrawn } from './overdrawn.ts';
import { percentTotal } from './percent-total.ts';
import { rangeReversed } from './range-reversed.ts';
import type { Rule } from './rule.ts';
import { syntax } from './syntax.ts';
import { tooManyCombinations } from './too-many-combinations.ts';
import { unknownChoice } from './unknown-choice.ts';
import { unknownIngredient } from './unknown-ingredient.ts';
import { unknownName } from './unknown-name.ts';
import { unknownUnit } from './unknown-unit.ts';
import { unusedAllow } from './unused-allow.ts';
import { unusedIngredient } from './unused-ingredient.ts';
import { usedBeforeMade } from './used-before-made.ts';
import { usedUp } from './used-up.ts';
import { wrongClause } from './wrong-clause.ts';

/** In the order of the reference page. */
export const rules: readonly Rule[] = [
  syntax,
  unknownName,
  duplicateName,
  usedBeforeMade,
  usedUp,
  overdrawn,
  leftover,
  unusedIngredient,
  unknownUnit,
  needsDensity,
  needsPieceMass,
  unknownIngredient,
  wrongClause,
  needsMass,
  unusedAllow,
  unknownChoice,
  rangeReversed,
  percentTotal,
  importMissing,
  importCycle,
  outsideWorkspace,
  tooManyCombinations,
];

let byCode: ReadonlyMap<string, Rule> | undefined;

export function ruleOf(code: string): Rule | undefined {
  byCode ??= new Map(rules.map((rule) => [rule.code, rule]));
  return byCode.get(code);
}
