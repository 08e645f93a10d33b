/** Figures as messages write them. */
import { describe, expect, test } from 'vitest';
import { formatCelsius, formatDuration, formatGrams, formatMillilitres, formatNumber, formatPercent } from './format.ts';
import { interval } from './interval.ts';

const cases = (name: string, rows: readonly (readonly [string, string])[]): void => {
  describe(name, () => {
    for (const [shown, wanted] of rows) test(wanted, () => expect(shown).toBe(wanted));
  });
};

cases('numbers', [
  [formatNumber(3), '3'],
  [formatNumber(2.5), '2.5'],
  [formatNumber(2.04), '2'],
  [formatNumber(-0.01), '0'],
  [formatNumber(-4), '−4'],
  [formatNumber(100), '100'],
  [formatNumber(Number.NaN), '?'],
]);

cases('readings', [
  [formatCelsius(interval(82, 84)), '82–84 °C'],
  [formatCelsius(35), '35 °C'],
  [formatCelsius(82.2222), '82.2 °C'],
  [formatCelsius(interval(-20, -15)), '−20 to −15 °C'],
  [formatCelsius(interval(-2, 4)), '−2 to 4 °C'],
  [formatCelsius(interval(Number.NEGATIVE_INFINITY, 5)), 'below 5 °C'],
  [formatCelsius(interval(80, Number.POSITIVE_INFINITY)), 'above 80 °C'],
  [formatCelsius(interval(Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)), 'any temperature'],
]);

cases('masses and volumes', [
  [formatGrams(0.45), '0.45 g'],
  [formatGrams(12.5), '12.5 g'],
  [formatGrams(240), '240 g'],
  [formatGrams(1240), '1.24 kg'],
  [formatGrams(interval(580, 612)), '580–612 g'],
  [formatMillilitres(40), '40 ml'],
  [formatMillilitres(1500), '1.5 l'],
]);

cases('shares', [
  [formatPercent(0.014), '1.4 %'],
  [formatPercent(0.0085), '0.85 %'],
  [formatPercent(interval(0.25, 0.6)), '25–60 %'],
]);

cases('durations', [
  [formatDuration(45), '45 s'],
  [formatDuration(60), '1 min'],
  [formatDuration(600), '10 min'],
  [formatDuration(9000), '2 h 30 min'],
  [formatDuration(43_200), '12 h'],
  [formatDuration(259_200), '3 d'],
  [formatDuration(interval(300, 600)), '5–10 min'],
  [formatDuration(interval(2700, 7200)), '45 min to 2 h'],
  [formatDuration(interval(0, 600)), 'up to 10 min'],
  [formatDuration(Number.POSITIVE_INFINITY), 'without end'],
]);
