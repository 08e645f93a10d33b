/** Parsing, checking, formatting and card making beside peers of general use on as many bytes, in one process. */
import { checkUnit, createWorkspace, defaultSelection, type Formula, type Unit, type Workspace } from 'nappe';
import { cardHtml, makeCard } from 'nappe/card';
import { createCache, format, parse } from 'nappe-grammar';
import { check as checkLayout } from 'prettier';
import remarkParse from 'remark-parse';
import { Bench } from 'tinybench';
import { unified } from 'unified';
import { parseDocument } from 'yaml';
import { positionsIn } from '../../compiler/src/cli/formula.ts';
import { parseJson } from './chevrotain-json.ts';
import { type Figures, median } from './figures.ts';
import { jsonOfBytes, markdownOfBytes, nappeOfBytes, yamlOfBytes } from './inputs.ts';

/** Rounds over all tasks: what else the machine does falls on each alike. */
const rounds = 3;
const iterations = { small: 12, large: 3 } as const;

const kB = 1000;
const path = '/bench/formulas.nappe';

function opened(text: string): { readonly workspace: Workspace; readonly unit: Unit } {
  const workspace = createWorkspace({ root: '/bench', read: () => ({ text }) });
  return { workspace, unit: workspace.unit(path) };
}

interface Task {
  readonly name: string;
  readonly bytes: number;
  /** Made anew before each turn and not timed. */
  readonly input: (bytes: number) => string;
  readonly run: (text: string) => unknown;
}

const remark = unified().use(remarkParse);

const tasks = (bytes: number): readonly Task[] => [
  { name: 'nappe: text to tree', bytes, input: nappeOfBytes, run: (text) => parse(text, createCache()) },
  { name: 'nappe: text to diagnostics', bytes, input: nappeOfBytes, run: (text) => checkUnit(opened(text).workspace, path) },
  { name: 'nappe: format', bytes, input: nappeOfBytes, run: (text) => format(parse(text, createCache())) },
  { name: 'JSON.parse', bytes, input: jsonOfBytes, run: (text) => JSON.parse(text) },
  { name: 'Chevrotain, JSON', bytes, input: jsonOfBytes, run: parseJson },
  { name: 'yaml: parseDocument', bytes, input: yamlOfBytes, run: (text) => parseDocument(text) },
  { name: 'remark-parse', bytes, input: markdownOfBytes, run: (text) => remark.parse(text) },
  { name: 'prettier: check YAML', bytes, input: yamlOfBytes, run: (text) => checkLayout(text, { parser: 'yaml' }) },
];

export async function inProcess(figures: Figures): Promise<void> {
  const sizes = [
    { label: '25 kB', bytes: 25 * kB, turns: iterations.small },
    { label: '250 kB', bytes: 250 * kB, turns: iterations.large },
  ];
  for (const { label, bytes, turns } of sizes) {
    const samples = new Map<string, { ms: number[]; bytes: number; lines: number }>();
    for (let round = 0; round < rounds; round++) {
      const bench = new Bench({ time: 0, iterations: turns, warmupTime: 0, warmupIterations: 1, retainSamples: true });
      for (const task of tasks(bytes)) {
        let text = '';
        const known = samples.get(task.name) ?? { ms: [], bytes: 0, lines: 0 };
        samples.set(task.name, known);
        bench.add(task.name, async () => void (await task.run(text)), {
          beforeEach: () => {
            text = task.input(bytes);
            known.bytes = Buffer.byteLength(text);
            known.lines = text.split('\n').length;
          },
        });
      }
      await bench.run();
      for (const { name, result } of bench.tasks)
        if ('latency' in result) samples.get(name)?.ms.push(...(result.latency.samples ?? []));
    }
    for (const [name, { ms, bytes: size, lines }] of samples)
      figures.put({
        name: `${name}, ${label}`,
        median: (median(ms) / size) * 1e6,
        unit: 'ms/MB',
        perLine: (median(ms) / lines) * 1000,
      });
  }
  cards(figures);
  targets(figures);
}

/** One card to print, from text, of a formula seen for the first time. */
function cards(figures: Figures): void {
  const ms: number[] = [];
  let lines = 0;
  for (let turn = 0; turn < 60; turn++) {
    const text = nappeOfBytes(1);
    lines = text.split('\n').length;
    const start = performance.now();
    card(text);
    ms.push(performance.now() - start);
  }
  figures.put({
    name: 'nappe: text to card, one formula',
    median: median(ms.slice(10)),
    unit: 'ms',
    perLine: (median(ms) / lines) * 1000,
  });
}

function card(text: string): string {
  const { workspace, unit } = opened(text);
  const formula = unit.formulas[0] as Formula;
  const { diagnostics, allowed } = checkUnit(workspace, path);
  const made = makeCard(
    {
      workspace,
      unit,
      formula,
      selection: defaultSelection(formula),
      positions: positionsIn(workspace, unit),
      diagnostics,
      allowed,
    },
    { date: '2026-01-31' },
  );
  if ('problem' in made) throw new Error(JSON.stringify(made));
  return cardHtml(made);
}

function targets(figures: Figures): void {
  const yaml = 'yaml: parseDocument, 250 kB';
  figures.ratio('text to tree, of yaml’s parseDocument', 'nappe: text to tree, 250 kB', yaml, 0.25, reading);
  figures.ratio(
    'text to tree a byte, 250 kB of 25 kB',
    'nappe: text to tree, 250 kB',
    'nappe: text to tree, 25 kB',
    1.3,
    reading,
  );
  figures.ratio(
    'text to every diagnostic over every choice, of yaml’s parseDocument',
    'nappe: text to diagnostics, 250 kB',
    yaml,
    1,
    checking,
  );
}

const reading = 'scanning a line and running Chevrotain’s rules over its tokens take about as long as each other.';

/** Also of many files. */
export const checking =
  'a formula is run step by step under every combination of its choices (2.7 here on average) and judged by some fifty rules each time; half of the time goes into the runs, a third into the rules, the rest into reading and resolving, and a fifth of all is collecting garbage; a first run, not yet compiled, takes three times as long as a later one.';
