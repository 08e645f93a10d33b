/** Draws the temperature line: time across (long waits compressed), °C up, written windows, fold additions as steps, the 5–57 °C band. */
import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import type { Move, Strand, TemperatureLine } from './model.ts';

const width = 720;
const height = 300;
const edge = { left: 52, right: 14, top: 22, bottom: 46 } as const;

/** Bacteria grow between these: 57 °C and 5 °C (FDA Food Code 2022, 3-501.14 and 3-501.16). */
const danger = { low: 5, high: 57 } as const;

export function temperatureSvg(data: TemperatureLine, language: Language, measures: Measures, prefix: string): Element {
  const { labels } = language;
  const readings = data.strands.flatMap(({ moves }) =>
    moves.flatMap(({ start, end, window }) => [start, end, window].flatMap((pair) => pair ?? [])),
  );
  const low = Math.min(0, Math.floor(Math.min(...readings) / 10) * 10);
  const high = Math.max(70, Math.ceil((Math.max(...readings) + 4) / 10) * 10);
  const y = scaleLinear()
    .domain([low, high])
    .range([height - edge.bottom, edge.top]);
  const at = positions(data);
  const x = (index: number): number => at[index] ?? edge.left;
  const id = `${prefix}temperature`;
  const main = data.strands[data.strands.length - 1];
  return s(
    'svg',
    { viewBox: `0 0 ${width} ${height}`, role: 'img', ariaLabelledBy: `${id}-title ${id}-description`, className: ['line'] },
    [
      s('title', { id: `${id}-title` }, labels.temperatureLine),
      s(
        'desc',
        { id: `${id}-description` },
        main ? main.moves.map((move) => summary(move, measures, labels.step)).join(' ') : '',
      ),
      s('rect', {
        x: edge.left,
        y: y(danger.high),
        width: width - edge.left - edge.right,
        height: y(danger.low) - y(danger.high),
        className: ['danger'],
      }),
      s(
        'text',
        { x: width - edge.right - 6, y: y(danger.high) + 17, className: ['label', 'end'] },
        `${measures.degrees(danger.low, danger.high)}: ${labels.danger}`,
      ),
      ...y
        .ticks(6)
        .map((celsius) =>
          s('g', [
            s('line', { x1: edge.left, x2: width - edge.right, y1: y(celsius), y2: y(celsius), className: ['grid'] }),
            s('text', { x: edge.left - 7, y: y(celsius) + 5, className: ['label', 'end'] }, axisText(celsius, measures)),
          ]),
        ),
      s('text', { x: edge.left - 7, y: 14, className: ['label', 'end'] }, measures.units === 'us' ? '°F' : '°C'),
      ...timeTicks(data, x, language, measures),
      ...data.strands.flatMap((strand) => drawStrand(strand, strand === main, x, y)),
      ...(main ? stepNumbers(main, x, y) : []),
    ],
  );
}

/** Widths go with the square root of a stretch's length, so that ten minutes show beside twelve hours. */
function positions(data: TemperatureLine): readonly number[] {
  const stretches = data.points.map(({ seconds }, index) => Math.sqrt(seconds - (data.points[index - 1]?.seconds ?? seconds)));
  const total = stretches.reduce((sum, stretch) => sum + stretch, 0) || 1;
  const room = width - edge.left - edge.right;
  // A third of the room is shared out evenly, so that the shortest step still has a width.
  const even = room / 3 / Math.max(1, data.points.length - 1);
  let at = edge.left;
  return stretches.map((stretch, index) => {
    at += index === 0 ? 0 : even + (stretch / total) * ((room * 2) / 3);
    return at;
  });
}

type Scale = (value: number) => number;

function drawStrand({ moves }: Strand, isMain: boolean, x: Scale, y: Scale): readonly Element[] {
  const points = moves.flatMap((move) => corners(move, x, y));
  const path = line<readonly [number, number]>()(points.map(([a, b]) => [a, b]));
  const windows = moves.flatMap(({ window, to, from }) => {
    if (!window) return [];
    const [a, b] = window;
    const right = x(to);
    const wide = Math.min(14, Math.max(6, right - x(from)));
    return [
      s('rect', {
        x: right - wide,
        width: wide,
        y: y(b) - (a === b ? 2 : 0),
        height: Math.max(4, y(a) - y(b)),
        className: ['window'],
      }),
    ];
  });
  return [
    ...windows,
    ...(path ? [s('path', { d: path, className: [isMain ? 'main' : 'side'] })] : []),
    ...moves.flatMap((move) => stairs(move, x, y)),
  ];
}

const mid = ([low, high]: readonly [number, number]): number => (low + high) / 2;

/** A step's line: from where its matter starts to where it ends; a fold's is drawn as stairs instead. */
function corners({ start, end, from, to, additions }: Move, x: Scale, y: Scale): readonly (readonly [number, number])[] {
  const points: (readonly [number, number])[] = [];
  if (additions.length < 2) {
    if (start) points.push([x(from), y(mid(start))]);
    if (end) points.push([x(to), y(mid(end))]);
    return points;
  }
  const width = (x(to) - x(from)) / additions.length;
  return additions.flatMap((celsius, index) => [
    [x(from) + index * width, y(mid(celsius))] as const,
    [x(from) + (index + 1) * width, y(mid(celsius))] as const,
  ]);
}

/** The additions of a fold once more, heavier, one stair each. */
function stairs({ additions, from, to }: Move, x: Scale, y: Scale): readonly Element[] {
  if (additions.length < 2) return [];
  const width = (x(to) - x(from)) / additions.length;
  const steps = [...additions, additions[additions.length - 1]!].map(
    (celsius, index) => [x(from) + index * width, y(mid(celsius))] as const,
  );
  const path = line<readonly [number, number]>().curve(curveStepAfter)(steps.map(([a, b]) => [a, b]));
  return path ? [s('path', { d: path, className: ['stairs'] })] : [];
}

function timeTicks(data: TemperatureLine, x: Scale, language: Language, measures: Measures): readonly Element[] {
  const ticks: Element[] = [];
  let last = Number.NEGATIVE_INFINITY;
  data.points.forEach(({ seconds }, index) => {
    const at = x(index);
    const isLast = index === data.points.length - 1;
    if (at - last < 74 || (!isLast && width - edge.right - at < 80)) return;
    last = at;
    const words = seconds === 0 ? '0' : measures.duration({ low: roundTime(seconds), high: roundTime(seconds) });
    ticks.push(s('line', { x1: at, x2: at, y1: height - edge.bottom, y2: height - edge.bottom + 6, className: ['axis'] }));
    ticks.push(
      s(
        'text',
        { x: isLast ? width - edge.right : at, y: height - edge.bottom + 22, className: ['label', isLast ? 'end' : 'middle'] },
        words,
      ),
    );
  });
  ticks.push(
    s('line', { x1: edge.left, x2: width - edge.right, y1: height - edge.bottom, y2: height - edge.bottom, className: ['axis'] }),
  );
  ticks.push(s('text', { x: edge.left, y: height - 6, className: ['label'] }, language.labels.timeCompressed));
  return ticks;
}

/** To the minute within the hour, to ten minutes beyond. */
const roundTime = (seconds: number): number =>
  seconds < 3600 ? Math.max(60, Math.round(seconds / 60) * 60) : Math.round(seconds / 600) * 600;

/** Numbers of the steps with a written reading, at the end of their line, where there is room. */
function stepNumbers({ moves }: Strand, x: Scale, y: Scale): readonly Element[] {
  const placed: { readonly x: number; readonly y: number }[] = [];
  return moves.flatMap(({ step, to, end, window }) => {
    if (!end || !window) return [];
    const place = { x: x(to), y: y(mid(window)) };
    if (placed.some((other) => Math.abs(other.x - place.x) < 26 && Math.abs(other.y - place.y) < 26)) return [];
    placed.push(place);
    return [
      s('g', { className: ['number'] }, [
        s('circle', { cx: place.x, cy: place.y, r: 10 }),
        s('text', { x: place.x, y: place.y + 5, className: ['label', 'middle'] }, String(step)),
      ]),
    ];
  });
}

function axisText(celsius: number, measures: Measures): string {
  return measures.number(measures.units === 'us' ? (celsius * 9) / 5 + 32 : celsius, 0);
}

function summary({ step, start, end, additions }: Move, measures: Measures, label: string): string {
  const reading = (pair: readonly [number, number] | null): string =>
    pair ? measures.degrees(Math.round(pair[0]), Math.round(pair[1])) : '?';
  const way = additions.length > 1 ? additions.map(reading) : [reading(start), reading(end)];
  return `${label} ${step}: ${way.join(' → ')}.`;
}
