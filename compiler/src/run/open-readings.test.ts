/** Readings with an open end (`below 5 °C`, `above 80 °C`) run to an end and stay finite, wherever they stand. */
import { expect, it } from 'vitest';
import { checkUnit } from '../diagnostics/check.ts';
import { defaultSelection } from '../resolve/choices.ts';
import { createWorkspace } from '../resolve/workspace.ts';
import { runFormula } from './run.ts';

const text = `formula Open readings
  100 g  whole milk, below 8 °C
   50 g  cream, above 4 °C
  heat whole milk, cream to above 80 °C
  check above 60 °C
  cool to below 30 °C in ice bath
  chill at below 5 °C for 2 h
  bake at above 150 °C for 20 min
  freeze at below -18 °C for 6 h
`;

it('a formula of open readings has finite temperatures and nothing wrong with them', () => {
  const workspace = createWorkspace({ root: '/', read: () => ({ text }) });
  const [formula] = workspace.unit('/open.nappe').formulas;
  const { records } = runFormula(formula!, defaultSelection(formula!));
  expect(records).toHaveLength(6);
  for (const { result } of records) {
    expect(Number.isFinite(result.heat.celsius.low)).toBe(true);
    expect(Number.isFinite(result.heat.celsius.high)).toBe(true);
  }
  const { diagnostics, faults } = checkUnit(workspace, '/open.nappe');
  expect(faults).toEqual([]);
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
});
