/** The corpora against the checker: well-made formulas are left in peace, broken ones raise what is marked in them and nothing else. */
import { join } from 'node:path';
import { rules } from 'nappe';
import { describe, expect, test } from 'vitest';
import { expectedIn } from '../../compiler/src/diagnostics/expectations.ts';
import {
  applied,
  checked,
  checkText,
  disagreements,
  faulty,
  formulasIn,
  isGrave,
  lineOf,
  samples,
  shortName,
  wellMade,
  workspaceAt,
} from './corpora.ts';

/** `checker.md` lists these codes; one by one they must be there. */
const codes = rules.map(({ code }) => code);

describe.each([
  ['samples', workspaceAt(samples), [...formulasIn(samples), ...formulasIn(join(samples, 'course'))]],
  ['the well-made corpus', workspaceAt(wellMade), formulasIn(wellMade)],
] as const)('%s: no error and no warning, whatever is chosen', (_, workspace, paths) => {
  test.each(paths.map((path) => [shortName(path), path]))('%s', (_name, path) => {
    expect(checked(workspace, path).filter(isGrave).map(lineOf)).toEqual([]);
  });
});

test('the well-made corpus has at least forty formulas', () => {
  expect(formulasIn(wellMade).length).toBeGreaterThanOrEqual(40);
});

describe.each([
  ['samples/faulty', workspaceAt(samples), formulasIn(join(samples, 'faulty'))],
  ['tests/corpus/faulty', workspaceAt(faulty), formulasIn(faulty)],
] as const)('%s: what is marked, and no other error or warning', (_, workspace, paths) => {
  test.each(paths.map((path) => [shortName(path), path]))('%s', (_name, path) => {
    expect(disagreements(workspace, path)).toEqual([]);
  });
});

test('every code but those about the number of combinations has a sample and three broken formulas', () => {
  const counted = (code: string) => ({
    code,
    sample: formulasIn(join(samples, 'faulty')).filter((path) => path.endsWith(`/${code}.nappe`)).length,
    corpus: formulasIn(faulty).filter((path) => new RegExp(`/${code}-\\d+\\.nappe$`).test(path)).length >= 3,
  });
  for (const code of codes.filter((one) => one !== 'too-many-combinations'))
    expect(counted(code)).toEqual({ code, sample: 1, corpus: true });
});

describe.each(rules.map((rule) => [rule.code, rule] as const))('%s', (code, rule) => {
  test('its bad example raises it where it is marked, and no other error or warning', () => {
    const found = checkText(rule.examples.bad).filter((one) => isGrave(one) || one.code === code);
    expect(found.map((one) => `${one.line} ${one.code}`)).toEqual(
      expectedIn(rule.examples.bad).map((mark) => `${mark.line} ${mark.code}`),
    );
    for (const { severity } of found.filter((one) => one.code === code)) expect(rule.severities).toContain(severity);
  });

  test('its good example raises neither it nor any error or warning', () => {
    expect(
      checkText(rule.examples.good)
        .filter((one) => isGrave(one) || one.code === code)
        .map(lineOf),
    ).toEqual([]);
  });

  test('each fix, applied to the bad example, leaves it clean', () => {
    for (const { code: found, fixes } of checkText(rule.examples.bad)) {
      if (found !== code) continue;
      for (const { title, edits } of fixes) {
        const after = checkText(applied(rule.examples.bad, edits));
        expect(after.filter((one) => isGrave(one) || one.code === code).map(lineOf), title).toEqual([]);
      }
    }
  });
});
