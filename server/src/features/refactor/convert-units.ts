/** Refactoring: the quantities or readings of one line in other units. */
import { gramsPer, isMass, isVolume, millilitresPer, type SourceLine } from 'nappe';
import type { Line, Quantity, Reading } from 'nappe-grammar';
import { type CodeAction, CodeActionKind, type TextEdit } from 'vscode-languageserver';
import type { Analysis } from '../../project.ts';
import { rangeOn } from '../../ranges.ts';
import { standingOf } from '../../runs.ts';
import { quantityText, readingText } from './quantity-text.ts';

export function convertUnits(analysis: Analysis, number: number): CodeAction[] {
  const line = analysis.file.lines[number];
  if (!line || line.problems.length > 0) return [];
  const quantities = nodesOf(line, isQuantity);
  const readings = nodesOf(line, isReading);
  const source = sourceOf(analysis, number);
  return [
    convertQuantities(
      'grams',
      quantities,
      (unit) => (isVolume(unit) || unit === 'pc' ? gramsPerUnit(source, unit) : unit === 'g' ? null : perGram(unit)),
      'g',
    ),
    convertQuantities(
      'ounces',
      quantities,
      (unit) => (isMass(unit) && unit !== 'oz' && unit !== 'lb' ? gramsPer[unit] / gramsPer.oz : null),
      'oz',
    ),
    convertQuantities('millilitres', quantities, (unit) => (isVolume(unit) && unit !== 'ml' ? millilitresPer[unit] : null), 'ml'),
    convertQuantities(
      'US cups',
      quantities,
      (unit) => (isVolume(unit) && unit !== 'cup' ? millilitresPer[unit] / millilitresPer.cup : null),
      'cup',
    ),
    convertReadings('C', readings),
    convertReadings('F', readings),
  ].flatMap((found) => (found ? [action(analysis, number, found)] : []));
}

interface Conversion {
  readonly title: string;
  readonly edits: readonly { readonly start: number; readonly end: number; readonly text: string }[];
}

/** All quantities of the line that have a factor; null where none has, or where they are not all alike. */
function convertQuantities(
  name: string,
  quantities: readonly Quantity[],
  factorOf: (unit: Quantity['unit']) => number | null,
  unit: Quantity['unit'],
): Conversion | null {
  const edits = quantities.flatMap((quantity) => {
    const factor = factorOf(quantity.unit);
    if (factor === null) return [];
    const { start, end, low, high, each } = quantity;
    return [{ start, end, text: quantityText(low * factor, high * factor, { unit, unitWritten: true, each }) }];
  });
  return edits.length > 0 && edits.length === quantities.length ? { title: `Write this line in ${name}`, edits } : null;
}

function convertReadings(unit: Reading['unit'], readings: readonly Reading[]): Conversion | null {
  const others = readings.filter((reading) => reading.unit !== unit);
  if (others.length === 0) return null;
  const convert = (value: number) => (unit === 'C' ? ((value - 32) * 5) / 9 : (value * 9) / 5 + 32);
  return {
    title: `Write this line in °${unit}`,
    edits: others.map(({ low, high, start, end }) => ({
      start,
      end,
      text: readingText({ low: convert(low), high: convert(high) }, unit),
    })),
  };
}

function action({ project, path }: Analysis, number: number, { title, edits }: Conversion): CodeAction {
  const changes: TextEdit[] = edits.map(({ start, end, text }) => ({ range: rangeOn(number, { start, end }), newText: text }));
  return { title, kind: CodeActionKind.RefactorRewrite, edit: { changes: { [project.uriOf(path)]: changes } } };
}

const perGram = (unit: string): number | null => (isMass(unit) ? gramsPer[unit] : null);

/** Through the density or the piece mass that the line's own unit already went through. */
const gramsPerUnit = (source: SourceLine | null, unit: string): number | null =>
  source && source.amount.base.unit === unit ? source.amount.base.gramsPerUnit : null;

function sourceOf(analysis: Analysis, number: number): SourceLine | null {
  const standing = standingOf(analysis, number);
  return standing?.component?.lines.find(({ place }) => place.line === standing.index) ?? null;
}

const isQuantity = (value: object): value is Quantity =>
  'kind' in value && value.kind === 'quantity' && 'unit' in value && value.unit !== '%' && value.unit !== 'some';

const isReading = (value: object): value is Reading =>
  'kind' in value && value.kind === 'temperature' && 'unit' in value && 'low' in value;

/** Every node of a kind in the line's tree, by where it stands. */
export function nodesOf<T extends { readonly start: number }>(line: Line, is: (value: object) => value is T): readonly T[] {
  const found: T[] = [];
  visit(line, 0);
  return found.sort((a, b) => a.start - b.start);

  function visit(value: unknown, depth: number): void {
    if (typeof value !== 'object' || value === null || depth > 8) return;
    if (!Array.isArray(value) && is(value)) found.push(value);
    else for (const inner of Object.values(value)) visit(inner, depth + 1);
  }
}
