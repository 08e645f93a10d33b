/** `foam-waits`: a foam stands longer than it holds before it is folded. */

import { holdsMinutes } from '../matter/foam.ts';
import { formatDuration } from '../quantities/format.ts';
import type { Foam, Run } from '../run/trace.ts';
import { isFold, placeOfStep } from './look.ts';
import { pairsOf } from './look-fold.ts';
import { spoken } from './repair.ts';
import type { Report, Rule } from './rule.ts';

/** Seconds it holds; null where no limit is known. */
function holdsSeconds(foam: Foam): number | null {
  const minutes = foam.kind in holdsMinutes ? holdsMinutes[foam.kind as keyof typeof holdsMinutes] : undefined;
  return minutes === undefined ? null : minutes * 60;
}

function check(run: Run, report: Report): void {
  for (const record of run.records) {
    if (!isFold(record)) continue;
    for (const { foam: party } of pairsOf(record)) {
      const { foam, gelatin200 } = party.matter;
      const limit = foam ? holdsSeconds(foam) : null;
      if (!foam || limit === null || gelatin200 > 0 || foam.waited.low <= limit) continue;
      const waiting = party.matter.made;
      report({
        severity: 'notice',
        place: placeOfStep(record.step),
        numbers: { foam: spoken(party, 'foam'), seconds: foam.waited.low, limit },
        related: [
          { place: foam.whipped.place, message: 'whipped here' },
          ...(waiting && waiting.step !== foam.whipped ? [{ place: waiting.step.place, message: 'waits here' }] : []),
        ],
      });
      break;
    }
  }
}

const fool = `  200 g  cream, 35 % fat, 4 °C
  300 g  mango purée, pasteurised, 4 °C
  whip cream to soft-medium peak
`;

export const foamWaits: Rule = {
  code: 'foam-waits',
  severities: ['notice'],
  title: 'The foam waits longer than it holds',
  why: 'A foam drains as it stands: whipped cream weeps within the hour even in the refrigerator, uncooked whites within minutes. What is folded later has less air and brings its water with it. Gelatin in the cream holds it longer.',
  remedy: 'Whip last, just before folding.',
  source: 'Common practice, no source: cream 45 min chilled, French meringue 5 min.',
  examples: {
    bad: `formula Fool on cream whipped in the morning
${fool}  chill cream to 4 °C for 5 h
  fold cream into mango purée in 3 additions: whisk, spatula   // expect: foam-waits
  pour into glass
`,
    good: `formula Fool
${fool}  chill cream to 4 °C for 20 min
  fold cream into mango purée in 3 additions: whisk, spatula
  pour into glass
`,
  },
  message: (n) =>
    `Whipped ${formatDuration(Number(n.seconds))} before it is folded, the foam “${n.foam}” holds only about ${formatDuration(Number(n.limit))}. Whip it just before.`,
  check,
};
