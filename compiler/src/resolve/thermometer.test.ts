/** A workspace's thermometer: how far a single written reading may be off. */
import { expect, test } from 'vitest';
import { runFormula } from '../run/run.ts';
import { createWorkspace, type WorkspaceOptions } from './workspace.ts';

const milk = 'formula Warm milk\n  makes 1 l\n  1 l  whole milk, 4 °C\n  heat whole milk to 80 °C\n';

function heatedTo(options?: WorkspaceOptions): readonly [number, number] | undefined {
  const workspace = createWorkspace({ root: '/work', read: () => ({ text: milk }) }, options);
  const celsius = runFormula(workspace.unit('/work/milk.nappe').formulas[0]!, {}).records[0]?.result?.heat.celsius;
  return celsius && [celsius.low, celsius.high];
}

test('a single reading is taken give or take the thermometer, 1 K where nobody says otherwise', () => {
  expect(heatedTo()).toEqual([79, 81]);
  expect(heatedTo({ thermometer: 2.5 })).toEqual([77.5, 82.5]);
  expect(heatedTo({ thermometer: 0 })).toEqual([80, 80]);
});
