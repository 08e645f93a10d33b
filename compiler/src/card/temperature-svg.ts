/** Draws the temperature line: time across (long waits compressed), °C up, written windows, fold additions as stairs, the 5–57 °C band. */
import { scaleLinear } from 'd3-scale';
import { curveStepAfter, line } from 'd3-shape';
import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Language } from './languages/language.ts';
import type { Measures } from './measures.ts';
import type { Move, Strand, TemperatureLine } from './model.ts';
import { plain } from './text.ts';

const width = 720;
const height = 320;
const edge = { left: 50, right: 16, top: 36, bottom: 52 } as const;
const floor = height - edge.bottom;

/** Bacteria grow between these: 57 °C and 5 °C (FDA Food Code 2022, 3-501.14 and 3-501.16). */
const danger = { low: 5, high: 57 } as const;

export function temperatureSvg(data: TemperatureLine, language: Language, measures: Measures, prefix: string): Element {
  const { labels } = language;
  const chart = chartOf(data);
  const id = `${prefix}temperature`;
  const main = data.strands[data.strands.length - 1];
  const band = `${measures.degrees(danger.low, danger.high)}: ${labels.danger}`;
  const { x, y } = chart;
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
      ...chart.ticks.map((celsius) =>
        s('line', { x1: edge.left, x2: width - edge.right, y1: y(celsius), y2: y(celsius), className: ['grid'] }),
      ),
      ...chart.ticks.map((celsius) => label(chart, edge.left - 7, y(celsius) + 5, 'end', axisText(celsius, measures))),
      label(chart, edge.left - 7, 15, 'end', measures.units === 'us' ? '°F' : '°C'),
      ...timeAxis(data, chart, language, measures),
      ...data.strands.flatMap((strand) => drawStrand(strand, strand === main, x, y)),
      ...(main ? stepNumbers(main, chart) : []),
      label(chart, width - edge.right - 6, y(danger.high) + 18, 'end', band, {
        or: [
          [edge.left + 8, y(danger.low) - 8, 'start'],
          [edge.left + 8, y(danger.high) + 18, 'start'],
        ],
      }),
      ...data.strands.slice(0, -1).flatMap((strand) => strandName(strand, chart)),
    ].flat(),
  );
}

interface Chart {
  /** Of an index into the line's points. */
  readonly x: (index: number) => number;
  /** Of °C. */
  readonly y: (celsius: number) => number;
  readonly ticks: readonly number[];
  /** Rooms already written in. */
  readonly taken: Box[];
}

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

function chartOf(data: TemperatureLine): Chart {
  const readings = data.strands.flatMap(({ moves }) =>
    moves.flatMap(({ start, end, window }) => [start, end, window].flatMap((pair) => pair ?? [])),
  );
  const low = Math.min(0, Math.floor(Math.min(...readings) / 10) * 10);
  const high = Math.max(70, Math.ceil((Math.max(...readings) + 6) / 10) * 10);
  const y = scaleLinear().domain([low, high]).range([floor, edge.top]);
  const at = positions(data);
  return { x: (index) => tenth(at[index] ?? edge.left), y: (celsius) => tenth(y(celsius)), ticks: y.ticks(6), taken: [] };
}

/** Tenths are finer than print. */
const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Widths go with the square root of a stretch's length, so that ten minutes show beside twelve hours. */
function positions(data: TemperatureLine): readonly number[] {
  const stretches = data.points.map(({ seconds }, index) => Math.sqrt(seconds - (data.points[index - 1]?.seconds ?? seconds)));
  const total = stretches.reduce((sum, stretch) => sum + stretch, 0) || 1;
  const room = width - edge.left - edge.right;
  // A third of the room is shared out evenly, so that the shortest step still has a width.
  const even = room / 3 / Math.max(1, data.points.length - 1);
  let at: number = edge.left;
  return stretches.map((stretch, index) => {
    at += index === 0 ? 0 : even + (stretch / total) * ((room * 2) / 3);
    return at;
  });
}

type Anchor = 'start' | 'middle' | 'end';

/** A text where it is free, else at the first other place that is, else none. Figures of the axes always stand: nothing is there before them. */
function label(
  { taken }: Chart,
  x: number,
  y: number,
  anchor: Anchor,
  words: string,
  elsewhere: { readonly or: readonly (readonly [number, number, Anchor])[] } = { or: [] },
): Element[] {
  for (const [left, top, side] of [[x, y, anchor] as const, ...elsewhere.or]) {
    const box = boxOf(left, top, side, words);
    if (box.left < 0 || box.right > width || taken.some((other) => overlaps(box, other))) continue;
    taken.push(box);
    return [s('text', { x: left, y: top, className: ['label', side, ...(elsewhere.or.length > 0 ? ['halo'] : [])] }, words)];
  }
  return [];
}

/** Room of a text of 14 units, at the generous end of what fonts need. */
function boxOf(x: number, y: number, anchor: Anchor, words: string): Box {
  const wide = [...words].length * 8.2;
  const left = anchor === 'end' ? x - wide : anchor === 'middle' ? x - wide / 2 : x;
  return { left, right: left + wide, top: y - 13, bottom: y + 4 };
}

const overlaps = (a: Box, b: Box): boolean => a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

type Scale = (value: number) => number;

function drawStrand({ moves }: Strand, isMain: boolean, x: Scale, y: Scale): readonly Element[] {
  const path = line<readonly [number, number]>()(moves.flatMap((move) => corners(move, x, y)).map(([a, b]) => [a, b]));
  const windows = moves.flatMap(({ window, to }) => {
    if (!window) return [];
    const [low, high] = [y(window[0]) + 2, y(window[1]) - 2];
    return [
      s('rect', {
        x: Math.min(width - edge.right - 9, x(to) - 9),
        width: 18,
        y: high,
        height: low - high,
        className: ['window'],
      }),
    ];
  });
  return [
    ...(path ? [s('path', { d: path, className: [isMain ? 'main' : 'side'] })] : []),
    ...moves.flatMap((move) => stairs(move, x, y)),
    ...(isMain ? windows : []),
  ];
}

const mid = ([low, high]: readonly [number, number]): number => (low + high) / 2;

/** A step's line: from where its matter starts to where it ends; a fold's goes down in stairs. */
function corners({ start, end, from, to, additions }: Move, x: Scale, y: Scale): readonly (readonly [number, number])[] {
  if (additions.length > 1) return stairPoints(additions, x(from), x(to), y);
  return [...(start ? [[x(from), y(mid(start))] as const] : []), ...(end ? [[x(to), y(mid(end))] as const] : [])];
}

function stairPoints(
  additions: Move['additions'],
  left: number,
  right: number,
  y: Scale,
): readonly (readonly [number, number])[] {
  const wide = (right - left) / additions.length;
  return additions.flatMap((celsius, index) => [
    [left + index * wide, y(mid(celsius))] as const,
    [left + (index + 1) * wide, y(mid(celsius))] as const,
  ]);
}

/** The additions of a fold once more, heavier, one stair each. */
function stairs({ additions, from, to }: Move, x: Scale, y: Scale): readonly Element[] {
  if (additions.length < 2) return [];
  const path = line<readonly [number, number]>().curve(curveStepAfter)(
    stairPoints(additions, x(from), x(to), y).map(([a, b]) => [a, b]),
  );
  return path ? [s('path', { d: path, className: ['stairs'] })] : [];
}

function timeAxis(data: TemperatureLine, chart: Chart, language: Language, measures: Measures): readonly Element[] {
  const marks: Element[] = [s('line', { x1: edge.left, x2: width - edge.right, y1: floor, y2: floor, className: ['axis'] })];
  const said = new Set<string>();
  const last = data.points.length - 1;
  // The end first: it says how long everything takes.
  for (const index of [0, last, ...data.points.keys()]) {
    const seconds = data.points[index]?.seconds ?? 0;
    const at = chart.x(index);
    const anchor: Anchor = index === last && last > 0 ? 'end' : index === 0 ? 'start' : 'middle';
    const figure = seconds === 0 ? '0' : measures.duration({ low: roundTime(seconds), high: roundTime(seconds) });
    if (said.has(figure)) continue;
    const words = label(chart, index === last && last > 0 ? width - edge.right : at, floor + 22, anchor, figure);
    if (words.length > 0) said.add(figure);
    if (words.length > 0) marks.push(s('line', { x1: at, x2: at, y1: floor, y2: floor + 6, className: ['axis'] }), ...words);
  }
  return [...marks, ...label(chart, edge.left, height - 8, 'start', language.labels.timeCompressed)];
}

/** To the minute within the hour, to ten minutes beyond. */
const roundTime = (seconds: number): number =>
  seconds < 3600 ? Math.max(60, Math.round(seconds / 60) * 60) : Math.round(seconds / 600) * 600;

/** Numbers of the steps with a written reading and of the folds, above their place on the line where that is free. */
function stepNumbers({ moves }: Strand, chart: Chart): readonly Element[] {
  return moves.flatMap(({ step, to, from, window, additions }) => {
    const isFold = additions.length > 1;
    if (!window && !isFold) return [];
    const across = Math.min(width - edge.right - 12, isFold ? (chart.x(from) + chart.x(to)) / 2 : chart.x(to));
    const warmest = isFold ? Math.max(...additions.map(([, high]) => high)) : (window?.[1] ?? 0);
    const coldest = isFold ? Math.min(...additions.map(([low]) => low)) : (window?.[0] ?? 0);
    for (const up of [chart.y(warmest) - 20, chart.y(coldest) + 20]) {
      const box = { left: across - 12, right: across + 12, top: up - 12, bottom: up + 12 };
      if (box.top < 0 || box.bottom > floor || chart.taken.some((other) => overlaps(box, other))) continue;
      chart.taken.push(box);
      return [
        s('g', { className: ['number'] }, [
          s('circle', { cx: across, cy: up, r: 11 }),
          s('text', { x: across, y: up + 5, className: ['label', 'middle'] }, String(step)),
        ]),
      ];
    }
    return [];
  });
}

/** What joins is named over its line. */
function strandName({ name, moves }: Strand, chart: Chart): readonly Element[] {
  const first = moves[0];
  const last = moves[moves.length - 1];
  const reading = last?.end ?? last?.start;
  if (!first || !last || !reading) return [];
  const [left, right, up] = [chart.x(first.from), chart.x(last.to), chart.y(mid(reading))];
  const words = [...plain(name)].length > 28 ? `${[...plain(name)].slice(0, 27).join('')}…` : plain(name);
  return label(chart, right, up - 8, 'end', words, {
    or: [
      [left, up - 8, 'start'],
      [right, up + 20, 'end'],
      [left, up + 20, 'start'],
    ],
  });
}

function axisText(celsius: number, measures: Measures): string {
  return measures.number(measures.units === 'us' ? (celsius * 9) / 5 + 32 : celsius, 0);
}

function summary({ step, start, end, additions }: Move, measures: Measures, word: string): string {
  const reading = (pair: readonly [number, number] | null): string =>
    pair ? measures.degrees(Math.round(pair[0]), Math.round(pair[1])) : '?';
  const way = additions.length > 1 ? additions.map(reading) : [reading(start), reading(end)];
  return `${word} ${step}: ${way.join(' → ')}.`;
}
