/** Gelling agents: figures that must agree with each other and with what is published. */
import { describe, expect, it } from 'vitest';
import { agarSetsBelow, gellingAgents, highMethoxylNeeds } from './gelling.ts';

describe('gelling agents', () => {
  it('heats to more than what dissolves', () => {
    for (const { dissolvesFrom, advised } of Object.values(gellingAgents))
      if (dissolvesFrom !== null) expect(advised?.low).toBeGreaterThan(dissolvesFrom);
  });

  // McGee 2004 (from memory): agar sets between 32 and 43 °C.
  it('has agar set within the published range', () => {
    expect(agarSetsBelow).toBeGreaterThanOrEqual(32);
    expect(agarSetsBelow).toBeLessThanOrEqual(43);
  });

  // JECFA and confectionery texts (from memory): high-methoxyl pectin gels with 55-80 % of solids at pH 2.0-3.5.
  it('asks of high-methoxyl pectin the published least of solids and acid', () => {
    expect(highMethoxylNeeds).toEqual({ solidsPercent: 55, pH: 3.5 });
  });
});
