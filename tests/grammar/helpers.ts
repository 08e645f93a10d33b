/** What the grammar's tests share: the design's whole formula, fixes applied, trees without their places. */

import { type File, type Line, type LineFix, parse, parseLine } from 'nappe-grammar';

/** The whole formula of the notation's own page. */
export const example = `formula Hojicha bavarois
  by Harbour Road evening school
  version 4
  makes 12 glasses of 100 ml                                       when glass
  makes 2 rings of 16 x 3 cm                                       when mould, cut
  choice serving: glass, mould, cut
  choice flavour: tea, raspberry
  served at 4-6 °C
  keeps 2 d at 0-4 °C
  free from nuts
  | A custard set with gelatin and lightened with whipped cream.

component custard
  240 g                         whole milk, 4 °C
  160 g (raspberry 60 g)        cream, 35 % fat, 4 °C
  100 g                         raspberry purée, pasteurised, 20 °C   when raspberry
   12 g                         roasted green tea, is tea leaf        when tea
  110 g                         egg yolk
   90 g                         caster sugar
    9 g (mould 11 g, cut 13 g)  gelatin, sheet, 200 bloom
   54 g (mould 66 g, cut 78 g)  cold water, 10 °C
  bloom gelatin in cold water for 10 min
  heat whole milk, cream to 80-85 °C as dairy
  infuse roasted green tea in dairy for 6 min                      when tea
  strain dairy                                                     when tea
  whisk egg yolk, caster sugar until dissolved as liaison
  temper dairy into liaison
  cook to 82-84 °C until nappe
    | A finger drawn across the spoon leaves a clean track.
  add gelatin
  add raspberry purée                                              when raspberry
  blend
  cool to 30-34 °C (cut 27-30 °C)

component whipped cream
  320 g  cream, 35 % fat, 4 °C
  whip to soft-medium peak

assembly
  1 pc each  raspberry                                             when raspberry
  fold whipped cream into custard in 4 additions: whisk, whisk, spatula
  portion 100 ml into glass                                        when glass
  pour into ring                                                   when mould, cut
  chill to 4 °C for 4 h (mould 6 h, cut 12 h)
  garnish with raspberry                                           when raspberry
`;

/** A line after a fix. */
export function fixed(text: string, fix: LineFix): string {
  let result = text;
  for (const edit of [...fix.edits].sort((one, other) => other.start - one.start)) {
    result = result.slice(0, edit.start) + edit.text + result.slice(edit.end);
  }
  return result;
}

export function problemsOf(text: string): string[] {
  return parse(text).lines.flatMap((line, index) =>
    line.problems.map((problem) => `${index + 1} ${problem.code}: ${problem.message}`),
  );
}

/** A line of a formula, narrowed to its kind. */
export function lineOf<Kind extends Line['kind']>(kind: Kind, text: string): Extract<Line, { kind: Kind }> {
  const line = parseLine(text, 'formula');
  if (line.kind !== kind)
    throw new Error(`${text}: ${line.kind} instead of ${kind} (${line.problems[0]?.message ?? 'no problem'})`);
  return line as Extract<Line, { kind: Kind }>;
}

/** What lines mean: the tree without places, layout and blank lines. */
export function meaning(file: File): unknown[] {
  return file.lines.filter((line) => line.kind !== 'blank').map(bare);
}

const places = new Set(['start', 'end', 'span', 'wordSpan', 'verbSpan']);

export function bare(node: unknown): unknown {
  if (Array.isArray(node)) return node.map(bare);
  if (typeof node !== 'object' || node === null) return node;
  const isLine = 'problems' in node;
  const kept = Object.entries(node).filter(([key]) => !places.has(key) && !(isLine && key === 'text'));
  return Object.fromEntries(kept.map(([key, value]) => [key, bare(value)]));
}
