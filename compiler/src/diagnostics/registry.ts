/** The rules: every diagnostic code there is. A new rule is its file, one import and one line here; nothing else lists them. */

import { acidDairy } from './acid-dairy.ts';
import { alcoholLeft } from './alcohol-left.ts';
import { buttercreamTemperature } from './buttercream-temperature.ts';
import { checkpointContradicted } from './checkpoint-contradicted.ts';
import { chocolateSeizes } from './chocolate-seizes.ts';
import { chocolateTooHot } from './chocolate-too-hot.ts';
import { claimBroken } from './claim-broken.ts';
import { coolingTooSlow } from './cooling-too-slow.ts';
import { creamTooLean } from './cream-too-lean.ts';
import { creamTooWarm } from './cream-too-warm.ts';
import { custardCurdles } from './custard-curdles.ts';
import { duplicateName } from './duplicate-name.ts';
import { eggUndercooked } from './egg-undercooked.ts';
import { enzymeFruit } from './enzyme-fruit.ts';
import { foamBroken } from './foam-broken.ts';
import { foamWaits } from './foam-waits.ts';
import { foldAtOnce } from './fold-at-once.ts';
import { foldNeedsFoam } from './fold-needs-foam.ts';
import { foldTooCold } from './fold-too-cold.ts';
import { foldTooWarm } from './fold-too-warm.ts';
import { foldTool } from './fold-tool.ts';
import { frozenTexture } from './frozen-texture.ts';
import { ganacheSplits } from './ganache-splits.ts';
import { gelatinBoiled } from './gelatin-boiled.ts';
import { gelatinDry } from './gelatin-dry.ts';
import { gelatinNotMelted } from './gelatin-not-melted.ts';
import { gelatinShare } from './gelatin-share.ts';
import { gelatinShock } from './gelatin-shock.ts';
import { gelatinStrengthUnknown } from './gelatin-strength-unknown.ts';
import { gelatinUnderhydrated } from './gelatin-underhydrated.ts';
import { gellingAgent } from './gelling-agent.ts';
import { glazeTemperature } from './glaze-temperature.ts';
import { heatTreat } from './heat-treat.ts';
import { hotSugar } from './hot-sugar.ts';
import { importCycle } from './import-cycle.ts';
import { importMissing } from './import-missing.ts';
import { impossibleTemperature } from './impossible-temperature.ts';
import { keepsTooLong } from './keeps-too-long.ts';
import { leftover } from './leftover.ts';
import { needsDensity } from './needs-density.ts';
import { needsMass } from './needs-mass.ts';
import { needsPieceMass } from './needs-piece-mass.ts';
import { needsTempering } from './needs-tempering.ts';
import { noCheckpoint } from './no-checkpoint.ts';
import { outOfTemper } from './out-of-temper.ts';
import { outsideWorkspace } from './outside-workspace.ts';
import { overCapacity } from './over-capacity.ts';
import { overWhipped } from './over-whipped.ts';
import { overdrawn } from './overdrawn.ts';
import { percentTotal } from './percent-total.ts';
import { rangeReversed } from './range-reversed.ts';
import { rawEgg } from './raw-egg.ts';
import { restBeforeWhipping } from './rest-before-whipping.ts';
import type { Rule } from './rule.ts';
import { setTooShort } from './set-too-short.ts';
import { setsWhileFolding } from './sets-while-folding.ts';
import { starchUndercooked } from './starch-undercooked.ts';
import { syntax } from './syntax.ts';
import { syrupStage } from './syrup-stage.ts';
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
import { yieldMismatch } from './yield-mismatch.ts';

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
  checkpointContradicted,
  impossibleTemperature,
  foldTooWarm,
  foldTooCold,
  setsWhileFolding,
  foldNeedsFoam,
  foldAtOnce,
  foldTool,
  overWhipped,
  foamBroken,
  foamWaits,
  creamTooLean,
  creamTooWarm,
  needsTempering,
  custardCurdles,
  noCheckpoint,
  eggUndercooked,
  rawEgg,
  starchUndercooked,
  gelatinDry,
  gelatinUnderhydrated,
  gelatinNotMelted,
  gelatinShock,
  gelatinBoiled,
  gelatinStrengthUnknown,
  gelatinShare,
  gellingAgent,
  enzymeFruit,
  acidDairy,
  restBeforeWhipping,
  buttercreamTemperature,
  syrupStage,
  chocolateTooHot,
  chocolateSeizes,
  outOfTemper,
  ganacheSplits,
  glazeTemperature,
  frozenTexture,
  setTooShort,
  coolingTooSlow,
  keepsTooLong,
  claimBroken,
  yieldMismatch,
  overCapacity,
  hotSugar,
  heatTreat,
  alcoholLeft,
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
