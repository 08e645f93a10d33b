/** The extension's grammar file is the one the vocabulary makes; `npx vitest run tests/grammar/textmate-file.test.ts -u` writes it. */
import { textMateGrammar } from 'nappe-grammar';
import { expect, test } from 'vitest';

test('extension/syntaxes/nappe.tmLanguage.json is made from the vocabulary as it is', async () => {
  const made = `${JSON.stringify(textMateGrammar(), null, 2)}\n`;
  await expect(made).toMatchFileSnapshot('../../extension/syntaxes/nappe.tmLanguage.json');
});
