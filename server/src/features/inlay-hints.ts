/** Inlay hints: each line's share of the whole, the temperature after each fold addition, how long cooling will take. */
import { formatCelsius, formatDuration, formatPercent, holds, type SourceLine, type Step } from 'nappe';
import { type InlayHint, InlayHintKind, type Range } from 'vscode-languageserver';
import { blockAt } from '../names/groups.ts';
import type { Analysis } from '../project.ts';
import { type Ran, runOf, type Standing, standingOf, stateIn, weighedIn } from '../runs.ts';

/** Only for the lines asked for: what is not shown is not worked out. */
export function inlayHints(analysis: Analysis, range: Range): InlayHint[] {
  const { file } = analysis;
  const hints: InlayHint[] = [];
  const to = Math.min(file.lines.length - 1, range.end.line);
  for (let from = Math.max(0, range.start.line); from <= to; ) {
    const block = blockAt(file, from);
    const standing = standingOf(analysis, from);
    const end = Math.min(to + 1, Math.max(from + 1, block.end));
    if (standing?.component) hints.push(...blockHints(analysis, standing, block.first, from, end));
    from = end;
  }
  return hints;
}

function blockHints(analysis: Analysis, { formula, component }: Standing, first: number, from: number, to: number): InlayHint[] {
  const { settings } = analysis;
  const ran = runOf(formula, settings.choices);
  if (!component || !holds(component.condition, ran.selection)) return [];
  const isShown = ({ place, condition }: SourceLine | Step) =>
    first + place.line >= from && first + place.line < to && holds(condition, ran.selection);
  const shares = settings.inlayHints.shares ? component.lines.filter(isShown) : [];
  return [
    ...shares.flatMap((line) => shareHint(analysis, ran, component, line, first)),
    ...component.steps.filter(isShown).flatMap((step) => stepHints(analysis, ran, step, first)),
  ];
}

/** Of everything the formula weighs, what batches of bases weigh counted once, in their takers. */
function shareHint(
  { file }: Analysis,
  ran: Ran,
  component: NonNullable<Standing['component']>,
  line: SourceLine,
  first: number,
): InlayHint[] {
  const { weighed } = weighedIn(ran, component, line);
  const total = wholeOf(ran);
  if (!weighed || total <= 0 || line.substance.is === 'own component') return [];
  const share = (weighed.grams.low + weighed.grams.high) / 2 / total;
  if (share <= 0) return [];
  const number = first + line.place.line;
  const character = file.lines[number]?.kind === 'ingredient' ? line.quantityPlace.end : line.place.end;
  const tooltip = `Of all that is weighed${ran.with === '' ? '' : `, with ${ran.with}`}`;
  return [
    {
      position: { line: number, character },
      label: formatPercent(share),
      kind: InlayHintKind.Parameter,
      paddingLeft: true,
      tooltip,
    },
  ];
}

const wholes = new WeakMap<Ran, number>();

function wholeOf(ran: Ran): number {
  let whole = wholes.get(ran);
  if (whole === undefined) {
    whole = ran.run.blocks
      .filter(({ batchOf }) => batchOf === null)
      .flatMap(({ lines }) => lines)
      .filter(({ line }) => line.substance.is !== 'own component')
      .reduce((sum, { grams }) => sum + (grams.low + grams.high) / 2, 0);
    wholes.set(ran, whole);
  }
  return whole;
}

/** `33 → 28 → 25 °C` after a fold; `about 40–70 min` where a step that cools says no time. */
function stepHints({ settings }: Analysis, ran: Ran, step: Step, first: number): InlayHint[] {
  const state = stateIn(ran, step);
  if (!state) return [];
  const { additions, seconds, written } = state.record;
  const position = { line: first + step.place.line, character: step.node.guard?.start ?? step.place.end };
  const at = { ...position, character: trimmedEnd(step.node.text, position.character) };
  const hints: InlayHint[] = [];
  if (
    settings.inlayHints.temperatures &&
    additions.length > 0 &&
    additions.every(({ celsius }) => Number.isFinite(celsius.low) && Number.isFinite(celsius.high))
  ) {
    const readings = additions.map(({ celsius }) => Math.round((celsius.low + celsius.high) / 2));
    const tooltip = additions
      .map(
        ({ celsius }, i) =>
          `After addition ${i + 1}: ${formatCelsius({ low: Math.round(celsius.low), high: Math.round(celsius.high) })}`,
      )
      .join('\n');
    hints.push({ position: at, label: `${readings.join(' → ')} °C`, paddingLeft: true, tooltip });
  }
  const cools = coolers.has(step.node.verb) && written !== null && !step.node.clauses.some(({ word }) => word === 'for');
  if (settings.inlayHints.times && cools && seconds?.estimated && Number.isFinite(seconds.range.high)) {
    const tooltip = ['Estimated.', ...state.trace.assumptions].join(' ');
    hints.push({ position: at, label: `about ${formatDuration(seconds.range)}`, paddingLeft: true, tooltip });
  }
  return hints;
}

const coolers: ReadonlySet<string> = new Set(['cool', 'chill', 'freeze']);

function trimmedEnd(text: string, end: number): number {
  let at = end;
  while (at > 0 && text[at - 1]?.trim() === '') at -= 1;
  return at;
}
