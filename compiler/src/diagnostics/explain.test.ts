/** Explanations: every rule in full, from the rule object. */
import { expect, test } from 'vitest';
import { codeIndex, explainMarkdown, explainText, nearestCodes, referencePage } from './explain.ts';
import { rules } from './registry.ts';

test('every rule is explained with all it knows, as text and as Markdown', () => {
  for (const { code, title, why, remedy, source, examples } of rules) {
    const markdown = explainMarkdown(code) ?? '';
    for (const words of [code, title, why, remedy, source, examples.bad.trimEnd(), examples.good.trimEnd()])
      expect(markdown).toContain(words);
    const text = (explainText(code) ?? '').replace(/\s+/g, ' ');
    for (const words of [code, title, why, remedy, source]) expect(text).toContain(words.replace(/\s+/g, ' '));
  }
});

test('text stays within a terminal, but for examples', () => {
  for (const { code } of rules)
    for (const line of (explainText(code) ?? '').split('\n').slice(1))
      if (!line.startsWith('    ')) expect(line.length, line).toBeLessThanOrEqual(96);
});

test('the reference page and the index hold every code once, in the order of the registry', () => {
  const headings = [...referencePage().matchAll(/^## `(.*)`$/gm)].map(([, code]) => code);
  expect(headings).toEqual(rules.map(({ code }) => code));
  expect(codeIndex().map(({ code }) => code)).toEqual(headings);
});

test('an unknown code has no explanation, but neighbours', () => {
  expect(explainText('fold-to-warm')).toBeNull();
  expect(explainMarkdown('fold-to-warm')).toBeNull();
  expect(nearestCodes('unknown-nam')[0]).toBe('unknown-name');
});
