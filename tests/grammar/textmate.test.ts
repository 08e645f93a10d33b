/** The TextMate grammar, run by the engine that editors run. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { textMateGrammar } from 'nappe-grammar';
import { expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate from 'vscode-textmate';
import { example } from './helpers.ts';

const { createOnigScanner, createOnigString, loadWASM } = oniguruma;

async function scopes(text: string): Promise<[string, string][]> {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await loadWASM({ data: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) });
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    loadGrammar: async () => textmate.parseRawGrammar(JSON.stringify(textMateGrammar()), 'nappe.json'),
  });
  const grammar = await registry.loadGrammar('source.nappe');
  let state = textmate.INITIAL;
  return text.split('\n').flatMap((line) => {
    const result = grammar!.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens.map((token): [string, string] => [
      line.slice(token.startIndex, token.endIndex),
      token.scopes.slice(1).join(' '),
    ]);
  });
}

test('words have the scopes editors colour', async () => {
  const found = await scopes(`${example}// allow raw-egg: x\n  5 g "cream of tartar" // mine\n  cream butter, glaze\n`);
  const scopeOf = (word: string): string[] => [
    ...new Set(found.filter(([text]) => text.trim() === word).map(([, scope]) => scope)),
  ];
  expect(scopeOf('component')).toEqual(['keyword.control.block.nappe']);
  expect(scopeOf('whipped cream')[0]).toBe('entity.name.section.nappe');
  expect(scopeOf('Hojicha bavarois')).toEqual(['entity.name.section.nappe']);
  expect(scopeOf('makes')).toEqual(['keyword.other.header.nappe']);
  expect(scopeOf('bloom')).toContain('entity.name.function.nappe');
  expect(scopeOf('240')).toEqual(['constant.numeric.nappe']);
  expect(scopeOf('80-85')).toEqual(['constant.numeric.nappe']);
  expect(scopeOf('°C')).toEqual(['keyword.other.unit.nappe']);
  expect(scopeOf('when')).toEqual(['keyword.control.conditional.nappe']);
  expect(scopeOf('into')).toEqual(['keyword.operator.word.nappe']);
  expect(scopeOf('pasteurised')).toEqual(['storage.modifier.attribute.nappe']);
  expect(scopeOf('soft-medium')).toEqual(['constant.language.peak.nappe']);
  expect(scopeOf('nuts')).toEqual(['constant.language.allergen.nappe']);
  expect(scopeOf('"cream of tartar"')).toEqual(['string.quoted.double.nappe']);
  expect(scopeOf('// mine')).toEqual(['comment.line.double-slash.nappe']);
  expect(scopeOf('// allow raw-egg: x')).toEqual(['comment.line.double-slash.nappe']);
  expect(scopeOf('cream')).toEqual(['entity.name.function.nappe']);
  expect(scopeOf('A custard set with gelatin and lightened with whipped cream.')).toEqual(['markup.quote.nappe']);
});
