/** What must not matter to the checker: how much is made, and in what order the ingredients stand. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { combinations, createWorkspace, type Formula, type Run, rules, runFormula, type Selection, type Workspace } from 'nappe';
import { describe, expect, test } from 'vitest';
import { checked, faulty, formulasIn, lineOf, samples, shortName, wellMade, workspaceAt } from './corpora.ts';

/** These compare with a vessel, a clock or a scale that does not grow with the batch. */
const dependOnSize: ReadonlySet<string> = new Set([
  ...['over-capacity', 'cooling-too-slow', 'leftover', 'unused-ingredient', 'overdrawn', 'yield-mismatch', 'alcohol-left'],
]);

const corpora = [
  [
    workspaceAt(samples),
    [...formulasIn(samples), ...formulasIn(join(samples, 'faulty')), ...formulasIn(join(samples, 'course'))],
  ],
  [workspaceAt(wellMade), formulasIn(wellMade)],
  [workspaceAt(faulty), formulasIn(faulty)],
] as const;

const files = corpora.flatMap(([workspace, paths]) => paths.map((path) => [shortName(path), workspace, path] as const));

describe('scaling a formula changes no diagnostic but those of size', () => {
  test.each(files)('%s', (_, workspace, path) => {
    for (const formula of workspace.unit(path).formulas)
      for (const selection of combinations(formula.choices)) {
        const asWritten = raised(formula, selection, 1);
        for (const factor of [0.2, 7]) expect(raised(formula, selection, factor), `times ${factor}`).toEqual(asWritten);
      }
  });
});

/** What the run and the rules find at a size: code, severity and place. */
function raised(formula: Formula, selection: Selection, factor: number): readonly string[] {
  const run: Run = runFormula(formula, selection, { factor });
  const found: string[] = run.findings.map(({ code, place }) => `${code} ${place.block}:${place.line}`);
  for (const rule of rules)
    rule.check?.(run, ({ severity = rule.severities[0], place }) => {
      found.push(`${rule.code} ${severity} ${place.block}:${place.line}`);
    });
  return found.filter((one) => !dependOnSize.has(one.split(' ')[0] ?? '')).sort();
}

describe('the order of ingredient lines never matters', () => {
  test.each(files)('%s', (_, workspace, path) => {
    const text = readFileSync(path, 'utf8');
    const other = upsideDown(text);
    expect(said(withText(workspace, path, other), path, other)).toEqual(said(workspace, path, text));
  });
});

/** Of two things of one name the later is named; which that is, order decides. */
const ofOrder: ReadonlySet<string> = new Set(['duplicate-name']);

function said(workspace: Workspace, path: string, text: string): readonly string[] {
  const lines = text.split('\n');
  return checked(workspace, path)
    .filter(({ code }) => !ofOrder.has(code))
    .map((one) => `${one.severity} ${one.code} at ${lines[one.line - 1]?.trim() ?? lineOf(one)}`)
    .sort();
}

/** Every unbroken run of ingredient lines (with the notes and comments below a line) from last to first. */
function upsideDown(text: string): string {
  const result: string[] = [];
  let together: string[][] = [];
  for (const line of text.split('\n')) {
    const belongs = together.length > 0 && /^\s*(\||\/\/ expect-above)/.test(line);
    if (belongs) together.at(-1)!.push(line);
    else if (/^\s*(\d|½|some\b)/.test(line)) together.push([line]);
    else {
      result.push(...together.reverse().flat(), line);
      together = [];
    }
  }
  return [...result, ...together.reverse().flat()].join('\n');
}

/** The same files, but for one text. */
function withText(workspace: Workspace, path: string, text: string): Workspace {
  const { root, read } = workspace.files;
  return createWorkspace({ root, read: (asked) => (asked === path ? { text } : read.call(workspace.files, asked)) });
}
