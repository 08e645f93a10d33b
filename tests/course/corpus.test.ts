/** Lists, timelines and labels of every formula of the corpora: nothing throws, and a well-made formula has no conflict. */
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Order } from '../../compiler/src/card/order.ts';
import { labelHtml, labelOf, labelText } from '../../compiler/src/label/index.ts';
import { timeline, timelineHtml, timelineText } from '../../compiler/src/timeline/index.ts';
import { weighOut, weighOutHtml, weighOutText } from '../../compiler/src/weigh-out/index.ts';
import { order, root } from './support.ts';

const filesIn = (folder: string): string[] =>
  readdirSync(`${root}/${folder}`)
    .filter((name) => name.endsWith('.nappe'))
    .map((name) => `${folder}/${name}`);

/** Every formula of a file that can be read. */
function ordersOf(file: string): readonly Order[] {
  const orders: Order[] = [];
  for (let formula = 0; ; formula++) {
    try {
      orders.push(order(file, { formula }));
    } catch {
      return orders;
    }
  }
}

describe('a well-made formula', () => {
  it('can be laid out for one cook without a conflict', () => {
    const conflicts: string[] = [];
    let count = 0;
    for (const file of filesIn('tests/corpus/well-made'))
      for (const one of ordersOf(file)) {
        count++;
        for (const { message } of timeline([one], { ready: '18:00' }).conflicts) conflicts.push(`${file}: ${message}`);
      }
    expect(count).toBeGreaterThan(50);
    expect(conflicts).toEqual([]);
  });
});

it.each(['tests/corpus/well-made', 'tests/corpus/faulty', 'tests/corpus/hostile', 'samples/faulty'])(
  'every formula of %s has its list, timeline and labels',
  (folder) => {
    for (const file of filesIn(folder))
      for (const one of ordersOf(file)) {
        const list = weighOut([one]);
        const plan = timeline([one]);
        const labels = (['eu', 'us'] as const).map((region) => labelOf(one, { region, made: '2025-11-25' }));
        const out = [weighOutText(list), weighOutHtml(list), timelineText(plan), timelineHtml(plan)];
        for (const label of labels) out.push(labelText(label), labelHtml(label));
        for (const text of out) expect(text, file).not.toMatch(/\bNaN\b|\bundefined\b|\bInfinity\b|\[object/u);
      }
  },
);
