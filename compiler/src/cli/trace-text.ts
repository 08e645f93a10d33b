/** The trace as a table for people: one row a step, with the additions of a fold beneath it. */
import { formatCelsius, formatDuration, formatGrams, formatMillilitres, formatNumber } from '../quantities/format.ts';
import type { Range, TraceJson, TraceStep } from '../run/trace-json.ts';

type Row = readonly string[];

const heads: Row = ['line', 'step', 'grams', 'temperature', 'volume', 'time', 'state'];
/** Columns, the last as wide as it needs. */
const widest = 46;
const unknown = '?';

export function traceText(trace: TraceJson): string {
  const choices = Object.entries(trace.choices).map(([choice, value]) => `${choice}: ${value}`);
  const title = [`${trace.formula} (${trace.file})`, ...(choices.length > 0 ? [choices.join(', ')] : [])];
  const blocks = [...new Set(trace.steps.map(({ block }) => block))];
  const rows = blocks.map((block) => ({ block, rows: trace.steps.filter((step) => step.block === block).flatMap(rowsOf) }));
  const widths = heads.map((_, column) =>
    Math.max(...[heads, ...rows.flatMap((one) => one.rows)].map((row) => lengthOf(row[column] ?? ''))),
  );
  const line = (row: Row) =>
    row
      .map((cell, column) => pad(cell, widths[column] ?? 0, column))
      .join('  ')
      .trimEnd();
  return [
    ...title,
    '',
    line(heads),
    ...rows.flatMap((one) => [`-- ${one.block}`, ...one.rows.map(line)]),
    ...assumptions(trace),
    '',
  ].join('\n');
}

function rowsOf(step: TraceStep): Row[] {
  const additions = (step.additions ?? []).map((addition, index) => [
    '',
    `  after addition ${index + 1}`,
    grams(addition.grams),
    celsius(addition.celsius),
  ]);
  const time = step.seconds?.range ? formatDuration(pair(step.seconds.range)) + (step.seconds.estimated ? ' (est.)' : '') : '';
  const volume = step.millilitres ? formatMillilitres(pair(step.millilitres)) : '';
  return [
    [String(step.line), cut(step.text), grams(step.grams), celsius(step.celsius), volume, time, stateOf(step)],
    ...additions,
  ];
}

function stateOf({ phase, foam, gelatin, lethality, result }: TraceStep): string {
  return [
    result ? `${result}: ${phase}` : phase,
    foam ? `${foam.kind} foam, ${foam.stage}` : '',
    gelatin.state === 'none' ? '' : `gelatin ${gelatin.state}, ${formatGrams(gelatin.grams200)} as 200 bloom`,
    lethality?.log10 ? `${lethality.organism} down by ${killed(lethality.log10)} powers of ten` : '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}

/** What is beyond counting is said so. */
const killed = (log10: number): string => (log10 > 9 ? 'more than 9' : formatNumber(log10));

function assumptions(trace: TraceJson): string[] {
  const lines = trace.steps.flatMap((step) => step.assumptions.map((text) => `line ${step.line}: ${text}`));
  const different = [...new Set(lines)];
  return different.length > 0 ? ['', 'Assumed:', ...different.map((line) => `  ${line}`)] : [];
}

const grams = (range: Range): string => (range ? formatGrams(pair(range)) : unknown);

const celsius = (range: Range): string => (range ? formatCelsius(pair(range)) : unknown);

const pair = ([low, high]: readonly [number, number]) => ({ low, high });

const cut = (text: string): string => (lengthOf(text) > widest ? `${[...text].slice(0, widest - 1).join('')}…` : text);

const lengthOf = (text: string): number => [...text].length;

function pad(text: string, width: number, column: number): string {
  const room = ' '.repeat(width - lengthOf(text));
  return column === 0 ? room + text : text + room;
}
