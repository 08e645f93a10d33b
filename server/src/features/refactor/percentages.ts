/** Refactoring: a component's amounts turned into percentages of its basis, and back into grams. */
import { type Component, type Formula, isMass } from 'nappe';
import type { IngredientLine } from 'nappe-grammar';
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import { blockAt } from '../../names/groups.ts';
import type { Analysis } from '../../project.ts';
import { rangeOn } from '../../ranges.ts';
import { blockOf, runOf, standingOf } from '../../runs.ts';
import { numberText, quantityText } from './quantity-text.ts';

export function percentageActions(analysis: Analysis, number: number): CodeAction[] {
  const line = analysis.file.lines[number];
  const standing = line?.kind === 'ingredient' || line?.kind === 'block' ? standingOf(analysis, number) : null;
  if (!standing?.component || standing.formula.unreadable) return [];
  const { component, formula } = standing;
  const first = blockAt(analysis.file, number).first;
  const rows = component.lines.flatMap(({ place, amount, key }) => {
    const node = analysis.file.lines[first + place.line];
    return node?.kind === 'ingredient' ? [{ node, number: first + place.line, amount: amount.base, key }] : [];
  });
  const written = rows.filter(({ node }) => node.quantity.base.unit !== 'some');
  if (written.length < 2) return [];
  return [toPercent(analysis, component, written), toGrams(analysis, formula, component, written)].flatMap((one) => one ?? []);
}

interface Row {
  readonly node: IngredientLine;
  readonly number: number;
  readonly amount: Component['lines'][number]['amount']['base'];
  readonly key: string;
}

const varies = ({ node }: Row): boolean => node.quantity.overrides.length > 0 || node.guard !== null;

/** Of the basis line where there is one; else of the total, the largest line staying in grams so that the size is kept. */
function toPercent(analysis: Analysis, { basis }: Component, rows: readonly Row[]): CodeAction | null {
  if (rows.some(({ node }) => node.quantity.base.unit === '%') || !rows.every(({ node }) => isMass(node.quantity.base.unit)))
    return null;
  const title = 'Turn amounts into percentages';
  if (rows.some(varies)) return disabled(title, 'an amount differs between choices');
  const grams = ({ amount }: Row) => (amount.value.low + amount.value.high) / 2;
  const largest = rows.reduce((a, b) => (grams(b) > grams(a) ? b : a));
  const kept = basis.kind === 'line' ? rows.find(({ key }) => key === basis.key) : largest;
  const whole = basis.kind === 'line' ? (kept ? grams(kept) : 0) : rows.reduce((sum, row) => sum + grams(row), 0);
  if (!kept || whole <= 0) return null;
  const edits = rows.filter((row) => row !== kept).map((row) => edit(row, `${numberText((100 * grams(row)) / whole, 3)} %`));
  return action(analysis, `${title} of ${basis.kind === 'line' ? kept.node.name.text : 'the total'}`, edits);
}

/** What each line weighs in the formula as it stands. */
function toGrams(analysis: Analysis, formula: Formula, component: Component, rows: readonly Row[]): CodeAction | null {
  if (!rows.some(({ node }) => node.quantity.base.unit === '%')) return null;
  const title = 'Turn percentages into grams';
  if (rows.some(varies) || (formula.makes.length > 1 && formula.choices.length > 0))
    return disabled(title, 'an amount differs between choices');
  const block = blockOf(runOf(formula, []).run, component);
  const edits = rows.flatMap((row) => {
    const weighed = block?.lines.find(({ line }) => line.place.line === row.number - blockAt(analysis.file, row.number).first);
    if (row.node.quantity.base.unit !== '%' || !weighed) return [];
    const grams = (weighed.grams.low + weighed.grams.high) / 2;
    return grams > 0 ? [edit(row, quantityText(grams, grams, { unit: 'g', unitWritten: true, each: false }))] : [];
  });
  return edits.length > 0 ? action(analysis, title, edits) : disabled(title, 'nothing says how large the component is');
}

const edit = ({ node, number }: Row, newText: string): TextEdit => ({ range: rangeOn(number, node.quantity.base), newText });

const action = ({ project, path }: Analysis, title: string, edits: TextEdit[]): CodeAction => ({
  title,
  kind: CodeActionKind.RefactorRewrite,
  edit: { changes: { [project.uriOf(path)]: edits } },
});

const disabled = (title: string, reason: string): CodeAction => ({
  title,
  kind: CodeActionKind.RefactorRewrite,
  disabled: { reason },
});
