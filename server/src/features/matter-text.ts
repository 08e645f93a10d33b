/** The state of matter in words: temperature, mass, composition, gelatin, foam, lethality, as a hover shows it. */
import {
  formatCelsius,
  formatDuration,
  formatGrams,
  formatMillilitres,
  formatNumber,
  formatPercent,
  type Matter,
  type StepRecord,
} from 'nappe';
import type { StepState } from '../runs.ts';
import { asText, bullets } from './markup.ts';

type Trace = StepState['trace'];

/** What a step leaves, one fact a line. */
export function stateLines({ record, trace, ran }: StepState): string {
  const { result } = record;
  const conditions = ran.with === '' ? '' : ` (with ${asText(ran.with)})`;
  const name = trace.result === null ? '' : `**${asText(trace.result)}** `;
  return `${name}after this step${conditions}:\n\n${bullets([
    massLine(result, trace),
    temperatureLine(record),
    compositionLine(trace),
    gelatinLine(result),
    foamLine(trace),
    lethalityLine(trace),
    trace.allergens.length > 0 && `Allergens: ${trace.allergens.join(', ')}`,
    timeLine(record),
    ...record.additions.map(
      ({ celsius, grams }, i) => `Addition ${i + 1}: ${formatCelsius(rounded(celsius))}, ${formatGrams(grams)}`,
    ),
    ...trace.assumptions.map((assumption) => `Assumed: ${asText(assumption)}`),
  ])}`;
}

/** Matter as it goes into a step. */
export function matterLines(matter: Matter): string {
  return bullets([
    `${formatGrams(matter.grams)}, ${matter.phase}`,
    heatWords(matter),
    gelatinLine(matter),
    matter.foam &&
      `Foam: ${matter.foam.kind}, ${matter.foam.low === matter.foam.high ? matter.foam.low : `${matter.foam.low} to ${matter.foam.high}`}`,
  ]);
}

function massLine(result: Matter, { millilitres, phase }: Trace): string {
  const volume = millilitres ? `, ${formatMillilitres({ low: millilitres[0], high: millilitres[1] })}` : '';
  return `${formatGrams(result.grams)}${volume}, ${phase}`;
}

function temperatureLine({ result }: StepRecord): string {
  return heatWords(result);
}

/** How a temperature is known. */
const bases = {
  written: 'as written',
  computed: 'computed',
  stored: 'as stored',
  unknown: 'only bounded by the surroundings',
} as const;

function heatWords({ heat }: Matter): string {
  return `Temperature ${formatCelsius(rounded(heat.written && heat.basis === 'written' ? heat.written : heat.celsius))} (${bases[heat.basis]})`;
}

/** One decimal is more than a probe shows. */
const rounded = ({ low, high }: { low: number; high: number }) => ({
  low: Math.round(low * 10) / 10,
  high: Math.round(high * 10) / 10,
});

/** Shares of the whole, the largest first; what is less than half a per cent is left out. */
function compositionLine({ composition, grams }: Trace): string | null {
  const whole = grams ? (grams[0] + grams[1]) / 2 : 0;
  if (whole <= 0) return null;
  const parts = shown
    .map(([key, word]) => [word, (composition[key] ?? 0) / whole] as const)
    .filter(([, share]) => share >= 0.005)
    .sort((a, b) => b[1] - a[1])
    .map(([word, share]) => `${word} ${formatPercent(share)}`);
  return parts.length === 0 ? null : parts.join(' · ');
}

const shown: readonly (readonly [string, string])[] = [
  ['water', 'water'],
  ['fat', 'fat'],
  ['sugars', 'sugars'],
  ['starch', 'starch'],
  ['protein', 'protein'],
  ['fibre', 'fibre'],
  ['ash', 'minerals'],
  ['alcohol', 'alcohol'],
  ['unknown', 'unknown'],
];

function gelatinLine({ gelatin, gelatin200, grams }: Matter): string | null {
  if (gelatin === 'none' || gelatin200 <= 0) return null;
  const share = (2 * gelatin200) / Math.max(1e-9, grams.low + grams.high);
  return `Gelatin ${gelatin}: ${formatGrams(gelatin200)} as 200 bloom, ${formatPercent(share)}`;
}

function foamLine({ foam }: Trace): string | null {
  if (!foam) return null;
  const overrun = foam.overrun ? `, ${formatNumber(foam.overrun[0], 0)}–${formatNumber(foam.overrun[1], 0)} % overrun` : '';
  return `Foam: ${foam.kind}, ${foam.stage}${overrun}`;
}

function lethalityLine({ lethality }: Trace): string | null {
  if (!lethality || lethality.log10 === null) return null;
  return `${lethality.organism} in the least heated egg: ${formatNumber(lethality.log10)} powers of ten killed at least. This is no food-safety plan.`;
}

function timeLine({ seconds }: StepRecord): string | null {
  return seconds ? `Takes ${formatDuration(seconds.range)}${seconds.estimated ? ' (estimated)' : ''}` : null;
}
