/** The weigh-out for a terminal. */
import { plain } from '../card/text.ts';
import { fullName } from './data.ts';
import type { WeighOut } from './model.ts';
import { costSentences, hasPrices, orderLines, sectionsOf, title, uncheckedSentences } from './words.ts';

export function weighOutText(list: WeighOut): string {
  const lines = [title, ...orderLines(list).map((line) => `  ${line}`), ...uncheckedSentences(list).map((line) => `  ! ${line}`)];
  const priced = hasPrices(list);
  for (const section of sectionsOf(list)) {
    const rows = section.rows.map((row) => [row.amount, row.name, ...(priced ? [row.buy, row.cost, row.share] : []), row.for]);
    lines.push('', section.title, ...columns(rows, priced ? [0, 2, 3, 4] : [0]));
  }
  if (list.bags.length > 0) lines.push('', 'Bags');
  for (const { formula, component, from, lines: inside } of list.bags)
    lines.push(
      `  ${formula}: ${component}${from === null ? '' : ` (${from})`}`,
      ...columns(
        inside.map((line) => [line.written, fullName(line)]),
        [0],
      ).map((line) => `  ${line}`),
    );
  const costs = costSentences(list);
  if (costs.length > 0) lines.push('', ...costs);
  return `${lines.map((line) => plain(line).trimEnd()).join('\n')}\n`;
}

/** Rows padded to columns, two spaces in; `right` are set to the right. */
function columns(rows: readonly (readonly string[])[], right: readonly number[]): readonly string[] {
  const widths = (rows[0] ?? []).map((_, index) => Math.max(...rows.map((row) => [...(row[index] ?? '')].length)));
  return rows.map(
    (row) =>
      `  ${row
        .map((cell, index) => {
          const gap = ' '.repeat((widths[index] ?? 0) - [...cell].length);
          return right.includes(index) ? gap + cell : cell + gap;
        })
        .join('  ')}`,
  );
}
