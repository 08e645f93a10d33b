/** Code lens over each formula, and the same for a line of status: what it makes and weighs (worked out when shown), and its card. */
import type { CodeLens } from 'vscode-languageserver';
import type { Analysis } from '../project.ts';
import { openCard, type StatusAnswer } from '../protocol.ts';
import { rangeOn } from '../ranges.ts';
import { formulaAt, runOf } from '../runs.ts';
import { yieldText } from './yield-text.ts';

/** What an unresolved lens carries. */
export interface LensData {
  readonly uri: string;
  readonly line: number;
}

export function codeLenses({ settings, file, uri }: Analysis): CodeLens[] {
  if (!settings.codeLens.enabled) return [];
  return file.blocks.flatMap(({ heading, first }) => {
    if (heading?.word !== 'formula') return [];
    const range = rangeOn(first, heading.span);
    const data: LensData = { uri, line: first };
    const card = { title: 'Open the card', command: openCard, arguments: [{ uri, formula: heading.name?.text.trim() ?? '' }] };
    return [
      { range, data },
      { range, command: card },
    ];
  });
}

export function resolveLens(analysis: Analysis, lens: CodeLens, { line }: LensData): CodeLens {
  const { makes } = status(analysis, line);
  return { ...lens, command: { title: makes === '' ? 'makes nothing that can be weighed yet' : makes, command: '' } };
}

/** The formula a line stands in, or the file's first, and what it makes. */
export function status(analysis: Analysis, line: number): StatusAnswer {
  const formula = formulaAt(analysis, line) ?? analysis.unit.formulas[0];
  const makes = formula && !formula.unreadable ? yieldText(analysis, runOf(formula, analysis.settings.choices)) : '';
  return { formula: formula?.name ?? '', makes };
}
