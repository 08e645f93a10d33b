/** Code actions: fixes for what is wrong here, fix-all, and refactorings of the line, the component and the formula. */
import { type CodeAction, type CodeActionContext, CodeActionKind, type Range } from 'vscode-languageserver';
import { fixAllKind } from '../capabilities.ts';
import type { Analysis } from '../project.ts';
import { fixAll, quickFixes } from './quick-fixes.ts';
import { convertUnits } from './refactor/convert-units.ts';
import { extractComponent } from './refactor/extract-component.ts';
import { nameResult } from './refactor/name-result.ts';
import { percentageActions } from './refactor/percentages.ts';
import { scaleActions } from './refactor/scale-formula.ts';

export interface ActionAbilities {
  /** The client can make files from an edit. */
  readonly createFiles: boolean;
  /** The client shows actions that cannot be had, with the reason. */
  readonly disabled: boolean;
}

export function codeActions(
  analysis: Analysis,
  range: Range,
  { only, diagnostics }: CodeActionContext,
  can: ActionAbilities,
): CodeAction[] {
  const wants = (kind: string) => only === undefined || only.some((one) => kind === one || kind.startsWith(`${one}.`));
  const { line } = range.start;
  const refactorings = [
    ...(can.createFiles ? extractComponent(analysis, line) : []),
    ...nameResult(analysis, line),
    ...percentageActions(analysis, line),
    ...scaleActions(analysis, line),
    ...convertUnits(analysis, line),
  ];
  return [
    ...(wants(CodeActionKind.QuickFix) ? quickFixes(analysis, range, diagnostics) : []),
    ...(wants(CodeActionKind.Refactor) || only ? refactorings.filter(({ kind }) => wants(kind ?? '')) : []),
    // Asked for by name only: an editor's lamp need not offer it on every line.
    ...(only?.some((one) => fixAllKind === one || fixAllKind.startsWith(`${one}.`)) ? fixAll(analysis) : []),
  ].filter(({ disabled }) => disabled === undefined || can.disabled);
}
