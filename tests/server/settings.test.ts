/** Settings that change what is shown and what is reckoned with: severities by code, the thermometer; and the line of status. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import type { StatusAnswer } from '../../server/src/protocol.ts';
import { type Editor, edit } from './editor.ts';

const custard = readFileSync(new URL('../../extension/walkthrough/pouring-custard.nappe', import.meta.url), 'utf8');
const hot = custard.replaceAll('82-84', '95');

const withSettings = (text: string, settings: object) => edit(text, { capabilities: {}, initializationOptions: { settings } });
const found = async (editor: Editor) => (await editor.diagnostics()).map(({ code, severity }) => [code, severity]);

test('a fault is shown as the settings say, by its code, or not at all', async () => {
  const shown = await withSettings(hot, {
    severities: { 'custard-curdles': 'warning', 'no-such-code': 'error', 'raw-egg': 'loud' },
  });
  expect(await found(shown)).toEqual([['custard-curdles', 2]]);
  shown.client.notify('workspace/didChangeConfiguration', { settings: { nappe: { severities: { 'custard-curdles': 'off' } } } });
  expect(await found(shown)).toEqual([]);
  shown.client.notify('workspace/didChangeConfiguration', { settings: { nappe: {} } });
  expect(await found(shown)).toEqual([['custard-curdles', 1]]);
  await shown.stop();
});

/** The base is at 19 °C as it is folded, where its gelatin sets at once; read on a thermometer that may be 4 °C off, that is not sure. */
const cold = `formula Raspberry mousse
  makes 600 g
  300 g  raspberry purée, pasteurised, 20 °C
   50 g  caster sugar
    6 g  gelatin, sheet, 200 bloom
   36 g  water, 10 °C
  250 g  cream, 35 % fat, 4 °C
  bloom gelatin in water for 10 min
  heat raspberry purée, caster sugar to 60-65 °C as base
  add gelatin
  cool to 19 °C
  whip cream to soft-medium peak
  fold cream into base in 3 additions: whisk, spatula
  pour into ring
  chill to 4 °C for 6 h
`;

test('a single reading is taken give or take the thermometer, no earlier check kept', async () => {
  const editor = await withSettings(cold, {});
  const codes = async (settings: object) => {
    editor.client.notify('workspace/didChangeConfiguration', { settings: { nappe: settings } });
    return (await editor.diagnostics()).map(({ code }) => code);
  };
  expect(await codes({})).toContain('sets-while-folding');
  expect(await codes({ thermometer: 4 })).not.toContain('sets-while-folding');
  expect(await codes({ thermometer: 40 })).toContain('sets-while-folding');
  await editor.stop();
});

test('a line of status says what the formula around a line makes, or the first one', async () => {
  const editor = await edit(
    `${custard}\nformula Other\n  makes 100 g\n  100 g  water\n  boil for 1 min\n--- none.nappe\n// nothing\n`,
  );
  const status = (line: number, name?: string) =>
    editor.client.request<StatusAnswer>('nappe/status', { uri: editor.uri(name), line });
  expect((await status(0)).formula).toBe('Pouring custard');
  expect((await status(8)).makes).toContain('570 g');
  expect((await status(18)).formula).toBe('Other');
  expect(await status(0, 'none.nappe')).toEqual({ formula: '', makes: '' });
  await editor.stop();
});
