/** The compiler's door: a workspace of files, what is wrong with one, how a formula runs, and what the checker's words mean. */

export * from './catalogue/index.ts';
export { type Allowed, type Checked, type CheckOptions, checkUnit, type Summary, summaryOf } from './diagnostics/check.ts';
export { codeIndex, explainMarkdown, explainText, nearestCodes, referencePage } from './diagnostics/explain.ts';
export type { Fault } from './diagnostics/formula-findings.ts';
export { ruleOf, rules } from './diagnostics/registry.ts';
export { type Lines, plain, renderText, type Style } from './diagnostics/render-text.ts';
export { type CheckJson, checkJson, merged } from './diagnostics/report-json.ts';
export type { Diagnostic, FileEdit, Rule } from './diagnostics/rule.ts';
export * from './quantities/format.ts';
export type { Interval } from './quantities/interval.ts';
export { gramsPer, isMass, isVolume, millilitresPer } from './quantities/units.ts';
export {
  combinations,
  countCombinations,
  defaultSelection,
  holds,
  pick,
  selectionFor,
  selectionWith,
} from './resolve/choices.ts';
export { fencesOf, isMarkdown } from './resolve/markdown.ts';
export type * from './resolve/model.ts';
export { type Located, locate } from './resolve/paths.ts';
export {
  createWorkspace,
  type Position,
  type Refused,
  type Source as SourceText,
  type Workspace,
  type WorkspaceOptions,
} from './resolve/workspace.ts';
export { runsCounted } from './run/kitchen.ts';
export { makesOf } from './run/makes.ts';
export { type RunOptions, runFormula } from './run/run.ts';
export type * from './run/trace.ts';
export { type Positions, type TraceJson, type TraceStep, traceJson, traceStep } from './run/trace-json.ts';
export { millilitresOf } from './run/volume-of.ts';
