/** The grammar files of the extension, run by the engine that editors run: over every sample, and inside Markdown. */
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import oniguruma from 'vscode-oniguruma';
import textmate, { type Registry } from 'vscode-textmate';
import { root } from '../house/sources.ts';

const { createOnigScanner, createOnigString, loadWASM } = oniguruma;

/** As much of a Markdown grammar as an injection into it needs. */
const markdown = JSON.stringify({ scopeName: 'text.html.markdown', patterns: [{ match: '^#.*$', name: 'markup.heading' }] });

let registry: Registry;
beforeAll(async () => {
  const wasm = readFileSync(createRequire(import.meta.url).resolve('vscode-oniguruma/release/onig.wasm'));
  await loadWASM({ data: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) });
  const file = (name: string) => readFileSync(join(root, 'extension/syntaxes', name), 'utf8');
  registry = new textmate.Registry({
    onigLib: Promise.resolve({ createOnigScanner, createOnigString }),
    getInjections: (scope) => (scope === 'text.html.markdown' ? ['markdown.nappe.codeblock'] : undefined),
    loadGrammar: async (scope) => {
      if (scope === 'source.nappe') return textmate.parseRawGrammar(file('nappe.tmLanguage.json'), 'nappe.json');
      if (scope === 'markdown.nappe.codeblock')
        return textmate.parseRawGrammar(file('markdown.tmLanguage.json'), 'markdown.json');
      return scope === 'text.html.markdown' ? textmate.parseRawGrammar(markdown, 'own.json') : null;
    },
  });
});

async function tokens(scope: string, text: string): Promise<readonly { readonly text: string; readonly scopes: string }[]> {
  const grammar = await registry.loadGrammar(scope);
  let state = textmate.INITIAL;
  return text.split('\n').flatMap((line) => {
    const result = grammar!.tokenizeLine(line, state);
    state = result.ruleStack;
    return result.tokens.map(({ startIndex, endIndex, scopes }) => ({
      text: line.slice(startIndex, endIndex),
      scopes: scopes.join(' '),
    }));
  });
}

const samples = readdirSync(join(root, 'samples'), { recursive: true, encoding: 'utf8' }).filter((path) =>
  path.endsWith('.nappe'),
);

test.each(samples.filter((path) => !path.startsWith('faulty')))(
  'every line of samples/%s has a colour, and no line takes the next one’s',
  async (path) => {
    const lines = readFileSync(join(root, 'samples', path), 'utf8').split('\n');
    const whole = await tokens('source.nappe', lines.join('\n'));
    const single = (await Promise.all(lines.map((line) => tokens('source.nappe', line)))).flat();
    expect(whole).toEqual(single);
    for (const line of lines.filter((one) => one.trim() !== '')) {
      const found = await tokens('source.nappe', line);
      expect(
        found.some(({ scopes }) => scopes.includes(' ')),
        line,
      ).toBe(true);
    }
  },
);

test('a fence marked nappe is coloured inside Markdown up to its end', async () => {
  const text =
    '# Lesson\n\n```nappe lesson\nformula X\n  240 g  milk\n```\nwhisk well\n\n~~~nappe\n  whisk milk\n~~~\n\n```js\nwhisk\n```';
  const found = await tokens('text.html.markdown', text);
  const of = (word: string) => found.filter((token) => token.text.trim() === word).map(({ scopes }) => scopes);
  expect(of('formula')[0]).toMatch(/meta\.embedded\.block\.nappe.*keyword\.control\.block\.nappe/);
  expect(of('240')[0]).toContain('constant.numeric.nappe');
  expect(
    found.filter((token) => token.text.includes('whisk')).map(({ scopes }) => scopes.includes('entity.name.function.nappe')),
  ).toEqual([false, true, false]);
});
