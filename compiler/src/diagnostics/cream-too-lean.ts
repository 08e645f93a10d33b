/** `cream-too-lean`: cream with too little fat to hold air is whipped. */

import { fatToWhip } from '../matter/foam.ts';
import { formatNumber } from '../quantities/format.ts';
import type { Run } from '../run/trace.ts';
import { placeOfStep } from './look.ts';
import { creamWhippings, fatPercentToWhip } from './look-cream.ts';
import type { Report, Rule } from './rule.ts';

/** A label gives whole per cents: half a point below is as good as on the mark. */
const labelRounds = 0.5;

function check(run: Run, report: Report): void {
  for (const { record, cream } of creamWhippings(run)) {
    const fat = fatPercentToWhip(cream);
    if (fat >= fatToWhip.good - labelRounds) continue;
    const lines = cream.parts.filter(({ line }) => line.substance.is === 'kind' && line.substance.kind.traits.includes('cream'));
    report({
      severity: fat < fatToWhip.least - labelRounds ? 'error' : 'warning',
      place: placeOfStep(record.step),
      numbers: { fat, limit: fatToWhip.good, least: fatToWhip.least },
      related: lines.map(({ line }) => ({ place: line.place, message: 'the cream' })),
    });
  }
}

const whipped = (fat: number, mark: string): string => `formula Sweet cream
  500 g  cream, ${fat} % fat, 4 °C
   40 g  icing sugar
  whip cream, icing sugar to soft-medium peak${mark}
  pipe into glass
`;

export const creamTooLean: Rule = {
  code: 'cream-too-lean',
  severities: ['error', 'warning'],
  title: 'The cream is too lean to whip',
  decides: 'Below 25 % of fat it does not whip: an error. Between 25 and 30 % it hardly does: a warning.',
  why: 'The bubbles of whipped cream are held by fat globules that stick together round them. With less than 30 % of fat there are too few; milk, juice or a liqueur stirred in thin it further. Cocoa butter counts as fat, sugar is not counted against it. Gelatin, gums and mascarpone hold the foam in another way, and plant creams are made to whip lean.',
  remedy: 'Take cream of 30 to 36 % fat, stir less into it, or hold it with mascarpone or gelatin.',
  source:
    'At least 30 % of fat to whip (Gisslen, Professional Cooking; Penfield & Campbell); below 25 % not at all: common practice, no source.',
  examples: { bad: whipped(27, '   // expect: cream-too-lean'), good: whipped(30, '') },
  message: (n) =>
    `What is whipped here holds ${formatNumber(Number(n.fat))} % of fat; cream ${Number(n.fat) < Number(n.least) ? `does not whip below ${n.least} %` : `needs ${n.limit} % to hold its air`}.`,
  check,
};
