/** What someone types wrong in the first lesson, line by line: one fault is one message, and its fix leads back to the lesson. */

import { describe, expect, test } from 'vitest';
import { checkUnit, createWorkspace, type Diagnostic } from '../../compiler/src/index.ts';
import { custard } from '../cli/nappe.ts';

function check(text: string): readonly Diagnostic[] {
  const workspace = createWorkspace({
    root: '/kitchen',
    read: (path) => (path === '/kitchen/custard.nappe' ? { text } : { refused: 'missing', why: 'is not there' }),
  });
  return checkUnit(workspace, '/kitchen/custard.nappe').diagnostics;
}

/** The first fix of a diagnostic carried out. */
function fixed(text: string, { fixes }: Diagnostic): string {
  const lines = text.split('\n');
  for (const { line, column, endColumn, text: put } of fixes[0]?.edits ?? []) {
    const old = lines[line - 1] as string;
    lines[line - 1] = old.slice(0, column - 1) + put + old.slice(endColumn - 1);
  }
  return lines.join('\n');
}

/** As it stands in the lesson, as it was typed, and the code it raises. */
const slips: readonly (readonly [right: string, wrong: string, code: string])[] = [
  ['formula Pouring', 'formla Pouring', 'syntax'],
  ['makes 570 g', 'make 570 g', 'syntax'],
  ['makes 570 g', 'yield 570 g', 'syntax'],
  ['keeps 2 d', 'keep 2 d', 'syntax'],
  ['400 g  whole', '- 400 g  whole', 'syntax'],
  ['400 g  whole', '400,5 g  whole', 'syntax'],
  ['whisk egg yolk', 'wisk egg yolk', 'syntax'],
  ['heat whole milk', 'heat milk', 'unknown-name'],
  ['heat whole milk to', 'heat whole milk until', 'syntax'],
  ['to 80-85 °C', 'to 80-85', 'syntax'],
  ['to 80-85 °C', 'to 85-80 °C', 'range-reversed'],
  ['temper whole milk into', 'temper whole milk in', 'wrong-clause'],
  ['into liaison', 'to liaison', 'syntax'],
  ['into liaison', 'into liason', 'unknown-name'],
  ['temper whole milk', 'pour whole milk', 'needs-tempering'],
  ['cook to 82-84 °C until', 'cook until', 'no-checkpoint'],
  ['chill to', 'refrigerate to', 'syntax'],
];

test('the lesson itself raises nothing', () => expect(check(custard)).toEqual([]));

describe.each(slips)('%s typed as %s', (right, wrong, code) => {
  const typed = custard.replace(right, wrong);

  test(`is one message, ${code}, on its line`, () => {
    expect(custard).toContain(right);
    const line = custard.slice(0, custard.indexOf(right)).split('\n').length;
    expect(check(typed).map((found) => `${found.code} ${found.line}`)).toEqual([`${code} ${line}`]);
  });

  test('and its fix leads back to a formula with nothing wrong', () => {
    const [found] = check(typed);
    expect(check(fixed(typed, found as Diagnostic))).toEqual([]);
  });
});
