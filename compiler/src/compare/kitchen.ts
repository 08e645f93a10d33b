/** What a file says outside formulas: house ingredients, equipment and prices of two versions, line by line. */
import type { EquipmentLine, FactLine, File, PriceLine } from 'nappe-grammar';
import type { Change } from './model.ts';
import { paired } from './pairing.ts';
import { shapeOf, written } from './shape.ts';

interface Said {
  /** `equipment`, `prices`, or the house ingredient. */
  readonly block: string;
  /** From 1. */
  readonly number: number;
  readonly line: FactLine | EquipmentLine | PriceLine;
}

export function kitchenChanges(old: File, next: File): readonly Change[] {
  const { pairs, left, come } = paired(
    saidIn(old),
    saidIn(next),
    (a, b) => a.block === b.block && shape(a) === shape(b),
    (a, b) => a.block === b.block && nameOf(a) === nameOf(b),
  );
  const change = (a: Said | null, b: Said | null): Change => ({
    kind: kindOf((b ?? (a as Said)).line),
    component: (b ?? (a as Said)).block,
    name: nameOf(b ?? (a as Said)),
    old: a && written(a.line.text, a.line.span),
    new: b && written(b.line.text, b.line.span),
    oldLine: a?.number ?? null,
    newLine: b?.number ?? null,
  });
  return [
    ...pairs.filter(([a, b]) => shape(a) !== shape(b)).map(([a, b]) => change(a, b)),
    ...left.map((one) => change(one, null)),
    ...come.map((one) => change(null, one)),
  ];
}

function saidIn({ blocks }: File): readonly Said[] {
  return blocks.flatMap(({ heading, first, lines }) =>
    lines.flatMap((line, index): Said[] => {
      if (line.kind !== 'fact' && line.kind !== 'equipment' && line.kind !== 'price') return [];
      const block = heading?.word === 'ingredient' ? (heading.name?.text ?? heading.word) : (heading?.word ?? '');
      return [{ block, number: first + index + 1, line }];
    }),
  );
}

/** Without the text itself: spacing means nothing. */
const shape = ({ line: { text: _, ...said } }: Said): string => shapeOf(said, new Map());

const nameOf = ({ line }: Said): string =>
  line.kind === 'fact' ? line.word : line.kind === 'price' ? `${line.name.text}, per ${line.per}` : line.name.text;

const kindOf = (line: Said['line']): Change['kind'] =>
  line.kind === 'fact'
    ? line.word === 'allergen'
      ? 'allergen'
      : 'share'
    : line.kind === 'equipment' && line.temperature
      ? 'celsius'
      : 'step';
