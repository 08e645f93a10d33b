/** Numbers, readings, masses and durations as a message writes them: `82–84 °C`, `2 h 30 min`, `1.24 kg`. */
import { type Interval, interval } from './interval.ts';

const asInterval = (x: Interval | number): Interval => (typeof x === 'number' ? interval(x) : x);

/** At most `digits` decimals, no trailing zeros, a true minus sign. */
export function formatNumber(value: number, digits = 1): string {
  if (!Number.isFinite(value)) return value > 0 ? '∞' : value < 0 ? '−∞' : '?';
  const rounded = value.toFixed(digits);
  const plain = withoutZeros(rounded);
  return plain === '-0' ? '0' : plain.replace('-', '−');
}

/** `12.50` → `12.5`, `12.00` → `12`, `120` → `120`. */
export function withoutZeros(fixed: string): string {
  if (!fixed.includes('.')) return fixed;
  let end = fixed.length;
  while (fixed[end - 1] === '0') end--;
  return fixed.slice(0, fixed[end - 1] === '.' ? end - 1 : end);
}

/** `0.87`, `8.7`, `87`, `870`: three figures at most, as a scale or a label would show. */
export function formatFigure(value: number): string {
  const size = Math.abs(value);
  return formatNumber(value, size >= 100 ? 0 : size >= 10 ? 1 : size >= 0.1 || size === 0 ? 2 : 3);
}

/** `82–84 °C`, `35 °C`, `−20 to −15 °C`, `below 5 °C`, `above 80 °C`. */
export function formatCelsius(reading: Interval | number): string {
  const { low, high } = asInterval(reading);
  if (low === Number.NEGATIVE_INFINITY && high === Number.POSITIVE_INFINITY) return 'any temperature';
  if (low === Number.NEGATIVE_INFINITY) return `below ${formatNumber(high)} °C`;
  if (high === Number.POSITIVE_INFINITY) return `above ${formatNumber(low)} °C`;
  return `${formatRange({ low, high }, formatNumber)} °C`;
}

/** `0.5 g`, `240 g`, `1.24 kg`; a range keeps one unit. */
export function formatGrams(mass: Interval | number): string {
  const { low, high } = asInterval(mass);
  if (Math.abs(high) >= 1000) return `${formatRange({ low: low / 1000, high: high / 1000 }, formatFigure)} kg`;
  return `${formatRange({ low, high }, formatFigure)} g`;
}

/** `40 ml`, `1.5 l`. */
export function formatMillilitres(volume: Interval | number): string {
  const { low, high } = asInterval(volume);
  if (Math.abs(high) >= 1000) return `${formatRange({ low: low / 1000, high: high / 1000 }, formatFigure)} l`;
  return `${formatRange({ low, high }, (value) => formatNumber(value, 0))} ml`;
}

/** `1.4 %` from a share (0–1). */
export function formatPercent(share: Interval | number): string {
  const { low, high } = asInterval(share);
  return `${formatRange({ low: low * 100, high: high * 100 }, (value) => formatNumber(value, Math.abs(value) < 1 ? 2 : 1))} %`;
}

/** Seconds as `45 s`, `12 min`, `2 h 30 min`, `3 d`; a range as `5–10 min` or `45 min to 2 h`. */
export function formatDuration(seconds: Interval | number): string {
  const { low, high } = asInterval(seconds);
  const first = duration(low);
  const last = duration(high);
  if (first === last) return first;
  if (low <= 0) return `up to ${last}`;
  const [number, unit] = first.split(' ');
  const parts = last.split(' ');
  return parts.length === 2 && parts[1] === unit && first.split(' ').length === 2 ? `${number}–${last}` : `${first} to ${last}`;
}

function duration(seconds: number): string {
  if (!Number.isFinite(seconds)) return 'without end';
  if (seconds < 90 && Math.round(seconds) !== 60) return `${formatNumber(seconds, seconds < 10 ? 1 : 0)} s`;
  const minutes = Math.round(seconds / 60);
  if (minutes < 60) return `${minutes} min`;
  const hours = Math.floor(minutes / 60);
  if (hours < 48) return minutes % 60 === 0 ? `${hours} h` : `${hours} h ${minutes % 60} min`;
  const days = Math.floor(hours / 24);
  return hours % 24 === 0 ? `${days} d` : `${days} d ${hours % 24} h`;
}

function formatRange({ low, high }: Interval, format: (value: number) => string): string {
  const first = format(low);
  const last = format(high);
  if (first === last) return first;
  return low < 0 ? `${first} to ${last}` : `${first}–${last}`;
}
