/** The order of ingredient lines never matters to what is found. */
import { join } from 'node:path';
import fc from 'fast-check';
import { checkUnit, createWorkspace } from 'nappe';
import { parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { workspaceAt } from '../diagnostics/corpora.ts';
import { generated, seed, textOf, type Written, written } from './formulas.ts';

/** What is found, told by the line's text, since lines move: a later twin is only later in one order. */
const ofOrder: ReadonlySet<string> = new Set(['duplicate-name']);

function findings(root: string, path: string, text: string): readonly string[] {
  const onDisk = workspaceAt(root).files;
  const files = { root, read: (asked: string) => (asked === path ? { text } : onDisk.read(asked)) };
  const lines = text.split('\n');
  return checkUnit(createWorkspace(files), path)
    .diagnostics.filter(({ code, file }) => !ofOrder.has(code) && join(root, file) === path)
    .map(
      ({ code, severity, line, when }) => `${severity} ${code} ${(lines[line - 1] ?? '').trim()} ${JSON.stringify(when ?? null)}`,
    )
    .sort();
}

/** The text with the ingredient lines of each block in another order; notes go with their line. */
function shuffled(text: string, order: (count: number) => readonly number[]): string {
  const lines = text.split('\n');
  const groups: { at: number[]; block: number }[] = [];
  let block = 0;
  parse(text).lines.forEach((line, i) => {
    if (line.kind === 'block' || line.kind === 'bad') block++;
    if (line.kind === 'ingredient') groups.push({ at: [i], block });
    else if (line.kind === 'note' && groups.at(-1)?.at.at(-1) === i - 1) groups.at(-1)!.at.push(i);
    // An allow hides codes on the line below it, which must stay below it.
    else if (line.kind === 'comment') block++;
  });
  for (const one of new Set(groups.map((group) => group.block))) {
    const places = groups.filter((group) => group.block === one);
    const first = places[0]!.at[0]!;
    const last = places.at(-1)!.at.at(-1)!;
    const count = places.reduce((sum, { at }) => sum + at.length, 0);
    // Only where the lines stand together can they change places without moving a step.
    if (last - first + 1 !== count) continue;
    const texts = places.map(({ at }) => at.map((i) => lines[i]!));
    lines.splice(first, count, ...order(places.length).flatMap((n) => texts[n]!));
  }
  return lines.join('\n');
}

const permutation = (count: number, numbers: readonly number[]): readonly number[] => {
  const rest = [...Array(count).keys()];
  return Array.from({ length: count }, (_, i) => rest.splice((numbers[i % numbers.length] ?? 0) % rest.length, 1)[0]!);
};

const numbers = fc.array(fc.nat(1000), { minLength: 1, maxLength: 12 });

describe('the order of ingredient lines', () => {
  test('in generated formulas', () => {
    fc.assert(
      fc.property(generated, numbers, (formula, choice) => {
        const text = textOf(formula);
        const other = shuffled(text, (count) => permutation(count, choice));
        expect(findings('/f', '/f/a.nappe', other)).toEqual(findings('/f', '/f/a.nappe', text));
      }),
      { seed, numRuns: 150 },
    );
  });

  test('in the written formulas', () => {
    fc.assert(
      fc.property(fc.constantFrom(...written), numbers, ({ root, path, text }: Written, choice) => {
        const other = shuffled(text, (count) => permutation(count, choice));
        expect(findings(root, path, other), path).toEqual(findings(root, path, text));
      }),
      { seed, numRuns: 200 },
    );
  });

  test('the shuffle does move lines', () => {
    const text = 'formula Test\n  1 g  a\n    | a note\n  2 g  b\n  stir a, b\n';
    expect(shuffled(text, (count) => permutation(count, [1]))).toBe(
      'formula Test\n  2 g  b\n  1 g  a\n    | a note\n  stir a, b\n',
    );
  });
});
