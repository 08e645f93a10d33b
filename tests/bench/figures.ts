/** What a run of the bench leaves: figures, targets, the machine; as a table to read and as JSON to compare. */

export interface Figure {
  readonly name: string;
  /** Milliseconds, unless the unit says otherwise. */
  readonly median: number;
  readonly p95?: number;
  readonly unit: 'ms' | 'ms/MB' | 'MB';
  /** Microseconds a line, where lines were counted. */
  readonly perLine?: number;
}

export interface Target {
  readonly what: string;
  /** What was measured, and the most it may be; both ratios, or both in the same unit. */
  readonly value: number;
  readonly most: number;
  /** Where the time or the memory goes, as last looked into: printed where the target is not met. */
  readonly why: string;
}

export class Figures {
  readonly all: Figure[] = [];
  readonly targets: Target[] = [];

  put(figure: Figure): void {
    this.all.push(figure);
  }

  of(name: string): number {
    const found = this.all.find((figure) => figure.name === name);
    if (!found) throw new Error(`no figure ${name}`);
    return found.median;
  }

  target(what: string, value: number, most: number, why: string): void {
    this.targets.push({ what, value, most, why });
  }

  /** A target that is a ratio of two figures. */
  ratio(what: string, one: string, other: string, most: number, why: string): void {
    this.target(what, this.of(one) / this.of(other), most, why);
  }
}

export function sorted(samples: readonly number[]): readonly number[] {
  return [...samples].sort((a, b) => a - b);
}

export const median = (samples: readonly number[]): number => quantile(samples, 0.5);
export const quantile = (samples: readonly number[], share: number): number =>
  sorted(samples)[Math.min(samples.length - 1, Math.floor(samples.length * share))] ?? Number.NaN;

const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value >= 10 ? value.toFixed(1) : value.toFixed(2));

export function table({ all, targets }: Figures, machine: string): string {
  const rows = all.map(({ name, median: value, p95, unit, perLine }) => [
    name,
    `${figure(value)} ${unit}`,
    p95 === undefined ? '' : `${figure(p95)} ${unit}`,
    perLine === undefined ? '' : `${figure(perLine)} µs`,
  ]);
  const goals = targets.map(({ what, value, most }) => [
    what,
    figure(value),
    figure(most),
    value <= most ? 'met' : `NOT MET: ${figure(value / most)} times as much as it may be`,
  ]);
  const missed = targets.filter(({ value, most }) => !(value <= most));
  return [
    machine,
    '',
    ...columns([['measured', 'median', 'p95', 'a line'], ...rows]),
    '',
    ...columns([['target', 'is', 'at most', ''], ...goals]),
    '',
    ...missed.map(({ what, why }) => `${what}: ${why}`),
    ...(missed.length > 0 ? [''] : []),
  ].join('\n');
}

function columns(rows: readonly (readonly string[])[]): readonly string[] {
  const widths = rows[0]!.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0)));
  return rows.map((row) =>
    row
      .map((cell, i) => (i === 0 || i === 3 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
      .join('  ')
      .trimEnd(),
  );
}
