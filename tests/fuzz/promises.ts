/** What holds for every text whatever: no throw, places inside the file, answers that neither line ends nor layout change. */
import {
  type Checked,
  type CheckOptions,
  checkUnit,
  combinations,
  createWorkspace,
  runFormula,
  traceJson,
  type Workspace,
} from 'nappe';
import { createCache, format, parse } from 'nappe-grammar';
import { expect } from 'vitest';
import { positionsIn } from '../../compiler/src/cli/formula.ts';

const path = '/fuzz/a.nappe';

function workspaceOf(text: string): Workspace {
  return createWorkspace({
    root: '/fuzz',
    read: (asked) => (asked === path ? { text } : { refused: 'missing', why: 'there is no such file' }),
  });
}

function checked(text: string, options: CheckOptions = {}): Checked {
  const answer = checkUnit(workspaceOf(text), path, options);
  expect(answer.faults).toEqual([]);
  return answer;
}

/** The tree is whole: its lines are the text's, and laying it out settles at once. */
export function parsesWhole(text: string): void {
  const file = parse(text, createCache());
  expect(file.lines.map((line) => line.text).join('\n')).toBe(
    text
      .replace(/^\uFEFF/, '')
      .split(/\r\n?|\n/)
      .join('\n'),
  );
  const once = format(file);
  expect(format(parse(once, createCache()))).toBe(once);
}

/** Line and column of every diagnostic, related place and edit. */
export function placesInside(text: string): void {
  const lines = text.split('\n');
  const inside = (line: number, column: number): void => {
    expect(line).toBeGreaterThanOrEqual(1);
    expect(line).toBeLessThanOrEqual(lines.length);
    expect(column).toBeGreaterThanOrEqual(1);
    expect(column).toBeLessThanOrEqual((lines[line - 1]?.length ?? 0) + 1);
  };
  for (const one of checked(text).diagnostics) {
    inside(one.line, one.column);
    inside(one.endLine, one.endColumn);
    for (const related of one.related) inside(related.line, related.column);
    for (const fix of one.fixes)
      for (const edit of fix.edits) {
        inside(edit.line, edit.column);
        inside(edit.endLine, edit.endColumn);
      }
    expect(one.message).not.toMatch(/undefined|NaN|\[object/);
  }
}

export function sameOnCrlf(text: string): void {
  const unix = checked(text);
  const other = checked(text.replaceAll('\n', '\r\n'));
  const withUnixEnds = JSON.parse(JSON.stringify(other.diagnostics).replaceAll('\\r\\n', '\\n'));
  expect(withUnixEnds).toEqual(JSON.parse(JSON.stringify(unix.diagnostics)));
}

/** Layout moves words; what is wrong with them, and what becomes of them, stays. */
export function sameWhenLaidOut(text: string): void {
  const laidOut = format(parse(text, createCache()));
  const said = (one: string): readonly string[] =>
    checked(one)
      .diagnostics.map(({ code, severity, message, when }) => JSON.stringify([code, severity, message, when]))
      .sort();
  // A line that cannot be read stays as it is and may be quoted as it stands.
  expect(said(laidOut)).toEqual(said(text));
  expect(traces(laidOut)).toEqual(traces(text));
}

function traces(text: string): unknown {
  const workspace = workspaceOf(text);
  const unit = workspace.unit(path);
  const positions = positionsIn(workspace, unit);
  return unit.formulas.slice(0, 4).map((formula) =>
    combinations(formula.choices)
      .slice(0, 3)
      .map((selection) => placeless(traceJson(runFormula(formula, selection), positions))),
  );
}

/** Without places, which layout moves, and without what is quoted as written. */
const placeless = (trace: unknown): unknown =>
  JSON.parse(
    JSON.stringify(trace, (key, value) =>
      /^(line|column|endLine|endColumn|start|end|text|place|id)$/.test(key) ? undefined : value,
    ),
  );

/** Trees to answers: every combination, every rule. */
export function checksWhole(text: string): void {
  checked(text);
}
