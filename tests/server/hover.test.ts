/** Hover: what stands under the cursor, in words. */
import { expect, test } from 'vitest';
import { edit } from './editor.ts';

interface Hover {
  readonly contents: { readonly kind: string; readonly value: string };
  readonly range: unknown;
}

async function hoverOn(fixture: string, options = {}): Promise<string> {
  const editor = await edit(fixture, options);
  const hover = await editor.ask<Hover | null>('textDocument/hover');
  expect(editor.faults()).toEqual([]);
  await editor.stop();
  return hover?.contents.value ?? '';
}

const custard = (mark: (text: string) => string) =>
  mark(`formula Custard
  makes 500 g
  choice size: small, large
  300 g (large 600 g)  whole milk, 4 °C
   90 g                egg yolk
   80 g                caster sugar
    8 g                gelatin, sheet, 200 bloom
   48 g                water, 10 °C
  bloom gelatin in water for 10 min
  heat whole milk to 80-85 °C as dairy
  whisk egg yolk, caster sugar until dissolved as liaison
  temper dairy into liaison
  cook to 82-84 °C until nappe
  add gelatin
  cool to 30-34 °C in ice bath
  pour into jar                 when small
`);

const at = (found: string, offset = 1) =>
  custard((text) => {
    const place = text.indexOf(found) + offset;
    return `${text.slice(0, place)}<|>${text.slice(place)}`;
  });

test('a verb says what it needs and what the step leaves', async () => {
  const text = await hoverOn(at('cook to'));
  expect(text).toContain('**cook** · heat');
  expect(text).toContain('`until`');
  expect(text).toMatch(/\*\*liaison\*\* after this step/);
  expect(text).toContain('Temperature 82–84 °C (as written)');
  expect(text).toMatch(/water 6\d(\.\d)? %/);
  expect(text).toMatch(/Salmonella in the least heated egg: \d/);
  expect(text).toContain('no food-safety plan');
});

test('an ingredient shows its row of the catalogue with the source, and its share', async () => {
  const text = await hoverOn(at('whole milk'));
  expect(text).toContain('**whole milk** · dairy');
  expect(text).toContain('Source: USDA SR28');
  expect(text).toMatch(/Here 300 g, 57 % of all that is weighed/);
});

test('gelatin and its share are shown once it is in', async () => {
  expect(await hoverOn(at('cool to'))).toMatch(/Gelatin dissolved: 8 g as 200 bloom, 1\.\d+ %/);
});

test('a name in a step shows the matter as it goes in', async () => {
  expect(await hoverOn(at('temper dairy', 8))).toMatch(
    /\*\*dairy\*\* going into this step:\n\n- 2\d\d(\.\d)?–3\d\d(\.\d)? g, liquid\n- Temperature 80–85 °C/,
  );
});

test('clauses, signs, media, units, headers and choices say what they mean', async () => {
  expect(await hoverOn(at('until nappe'))).toContain('What the cook sees');
  expect(await hoverOn(at('nappe\n'))).toContain('clean track');
  expect(await hoverOn(at('ice bath'))).toContain('Ice and water');
  expect(await hoverOn(at('g                egg', 0))).toContain('gram');
  expect(await hoverOn(at('makes 500'))).toContain('The yield');
  expect(await hoverOn(at('small\n'))).toContain('Choice **size**: small (unless another is chosen), large');
  expect(await hoverOn(at('sheet'))).toContain('Thin flat sheets');
});

test('a formula says what it makes', async () => {
  const text = await hoverOn(at('Custard'));
  expect(text).toContain('makes 500 g');
  expect(text).toMatch(/5\d\d g$/);
});

test('what no kitchen knows is said to be unknown', async () => {
  expect(await hoverOn('formula A\n  10 g  moon <|>dust\n  mix moon dust\n')).toContain('not in the catalogue');
});

test('there is no hover where there is nothing', async () => {
  expect(await hoverOn('formula A\n<|>\n  10 g  water\n')).toBe('');
  expect(await hoverOn('formula A\n  | a no<|>te\n')).toBe('');
});

test('a name of the author is text, never markup', async () => {
  const text = await hoverOn('formula A\n  10 g  "*<b>*"\n  mix "<|>*<b>*" as x\n');
  expect(text).not.toContain('*<b>*');
});

test('a client without Markdown gets plain words', async () => {
  const text = await hoverOn(at('cook to'), { capabilities: {} });
  expect(text).toContain('cook · heat');
  expect(text).not.toContain('**');
});

test('in a fence of a Markdown file, at its own line', async () => {
  const editor = await edit(
    '--- course.md\n# Lesson\n\n```nappe\nformula A\n  100 g  who<|>le milk\n  heat whole milk to 40 °C\n```\n',
  );
  const hover = await editor.ask<Hover>('textDocument/hover', {}, 'course.md');
  expect(hover.contents.value).toContain('**whole milk**');
  expect(hover.range).toEqual({ start: { line: 4, character: 9 }, end: { line: 4, character: 19 } });
  await editor.stop();
});

test('the code of an allow says what it stands for', async () => {
  expect(await hoverOn('formula A\n  10 g  water\n  // allow raw-<|>egg: pasteurised elsewhere\n  mix water\n')).toContain('**');
});
