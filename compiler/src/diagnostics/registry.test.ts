/** The rules as a whole: their names, their texts, and their examples, which are run. */
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import type { Files } from '../resolve/model.ts';
import { createWorkspace } from '../resolve/workspace.ts';
import { checkUnit } from './check.ts';
import { expectedIn } from './expectations.ts';
import { ruleOf, rules } from './registry.ts';
import type { Diagnostic, FileEdit, Rule } from './rule.ts';

const folder = fileURLToPath(new URL('.', import.meta.url));
const fileNames = new Set(readdirSync(folder));

test('a code is one to four lower-case words joined by hyphens, and names what is wrong', () => {
  for (const { code } of rules) {
    expect(code).toMatch(/^[a-z]+(-[a-z]+){0,3}$/);
    expect(code, 'name the fault, not the wish').not.toMatch(/^(no|invalid|bad|prefer|require)-(?!checkpoint$)/);
  }
});

test('codes are unique', () => {
  const codes = rules.map(({ code }) => code);
  expect(codes).toEqual([...new Set(codes)]);
});

test('each rule stands in the file of its code', () => {
  for (const { code } of rules) expect(fileNames, code).toContain(`${code}.ts`);
});

test('each file that exports a rule is in the registry', async () => {
  for (const name of fileNames) {
    if (!name.endsWith('.ts') || name.endsWith('.test.ts')) continue;
    const exported: unknown[] = Object.values(await import(`./${name}`));
    for (const value of exported) if (isRule(value)) expect(rules.includes(value) || name === 'registry.ts', name).toBe(true);
  }
});

test('every text is there and reads as a sentence', () => {
  for (const rule of rules) {
    expect(rule.severities.length, rule.code).toBeGreaterThan(0);
    expect(new Set(rule.severities).size, rule.code).toBe(rule.severities.length);
    if (rule.severities.length > 1) expect(rule.decides, `${rule.code} says what decides`).toBeTruthy();
    expect(rule.title, rule.code).toMatch(/^\p{Lu}.*[^.]$/u);
    for (const words of [rule.why, rule.remedy, rule.source]) expect(words, rule.code).toMatch(/^[\p{Lu}\p{N}`“].*[.)]$/su);
    expect(ruleOf(rule.code)).toBe(rule);
  }
});

describe('examples', () => {
  for (const rule of rules) {
    test(`${rule.code}: the bad one raises it where it is marked, and nothing else`, () => {
      const expected = expectedIn(rule.examples.bad).map(({ line, code }) => `${line} ${code}`);
      expect(expected.length).toBeGreaterThan(0);
      const diagnostics = judged(check(rule.examples.bad), rule);
      expect(diagnostics.map(({ line, code }) => `${line} ${code}`)).toEqual(expected);
      for (const { severity, code } of diagnostics) expect(ruleOf(code)?.severities).toContain(severity);
    });

    test(`${rule.code}: the good one raises nothing`, () => {
      expect(judged(check(rule.examples.good), rule).map(({ line, code, message }) => `${line} ${code}: ${message}`)).toEqual([]);
    });

    test(`${rule.code}: a fix leaves the bad one without it`, () => {
      for (const { code, fixes } of check(rule.examples.bad)) {
        const [fix] = fixes;
        if (!fix || code !== rule.code) continue;
        const after = check(applied(rule.examples.bad, fix.edits));
        expect(
          after.filter((one) => one.code === rule.code || one.code === 'syntax'),
          fix.title,
        ).toEqual([]);
      }
    });
  }
});

/** Other codes' notices are cautions that many a formula carries. */
const judged = (diagnostics: readonly Diagnostic[], { code }: Rule): readonly Diagnostic[] =>
  diagnostics.filter((one) => one.severity !== 'notice' || one.code === code);

const isRule = (value: unknown): value is Rule =>
  typeof value === 'object' && value !== null && 'code' in value && 'examples' in value;

function check(text: string): readonly Diagnostic[] {
  const files: Files = {
    root: '/work',
    read: (path) => (path === '/work/example.nappe' ? { text } : { refused: 'missing', why: 'there is no such file' }),
  };
  const checked = checkUnit(createWorkspace(files), '/work/example.nappe');
  expect(checked.faults).toEqual([]);
  return checked.diagnostics;
}

/** Edits from the last to the first, so that none moves another. */
function applied(text: string, edits: readonly FileEdit[]): string {
  const lines = text.split('\n');
  const starts: number[] = [];
  let start = 0;
  for (const line of lines) {
    starts.push(start);
    start += line.length + 1;
  }
  const offset = (line: number, column: number): number => (starts[line - 1] ?? 0) + column - 1;
  return [...edits]
    .sort((a, b) => offset(b.line, b.column) - offset(a.line, a.column))
    .reduce(
      (result, edit) =>
        result.slice(0, offset(edit.line, edit.column)) + edit.text + result.slice(offset(edit.endLine, edit.endColumn)),
      text,
    );
}
