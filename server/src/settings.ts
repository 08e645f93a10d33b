/** Settings of the section `nappe`, read from whatever a client sends: what is not understood stays at its default. */
import type { Diagnostic } from 'nappe';

export interface Settings {
  readonly diagnostics: {
    /** Also of files that are not open. */
    readonly workspace: boolean;
  };
  readonly inlayHints: { readonly shares: boolean; readonly temperatures: boolean; readonly times: boolean };
  readonly codeLens: { readonly enabled: boolean };
  /** Values of choices that hover and hints look at; the others at their first. */
  readonly choices: readonly string[];
  readonly card: { readonly language: string; readonly units: 'metric' | 'us' };
  /** Give or take of a written reading, K. */
  readonly thermometer: number;
  /** By code: how it is shown, or that it is not. Cards and the command line keep the checker's own word. */
  readonly severities: Readonly<Record<string, Diagnostic['severity'] | 'off'>>;
}

export const defaults: Settings = {
  diagnostics: { workspace: true },
  inlayHints: { shares: true, temperatures: true, times: true },
  codeLens: { enabled: true },
  choices: [],
  card: { language: 'en', units: 'metric' },
  thermometer: 1,
  severities: {},
};

/** Total on any value. */
export function settingsFrom(sent: unknown): Settings {
  const root = record(sent);
  const diagnostics = record(root.diagnostics);
  const hints = record(root.inlayHints);
  const lens = record(root.codeLens);
  const card = record(root.card);
  return {
    diagnostics: { workspace: flag(diagnostics.workspace, defaults.diagnostics.workspace) },
    inlayHints: {
      shares: flag(hints.shares, defaults.inlayHints.shares),
      temperatures: flag(hints.temperatures, defaults.inlayHints.temperatures),
      times: flag(hints.times, defaults.inlayHints.times),
    },
    codeLens: { enabled: flag(lens.enabled, defaults.codeLens.enabled) },
    choices: Array.isArray(root.choices) ? root.choices.filter((value) => typeof value === 'string') : defaults.choices,
    card: {
      language: typeof card.language === 'string' ? card.language : defaults.card.language,
      units: card.units === 'us' ? 'us' : 'metric',
    },
    thermometer: within(root.thermometer, 0, mostOff) ?? defaults.thermometer,
    severities: Object.fromEntries(
      Object.entries(record(root.severities)).flatMap(([code, value]) => (isShown(value) ? [[code, value]] : [])),
    ),
  };
}

/** K; a thermometer that may be further off is none. */
const mostOff = 5;

const within = (value: unknown, least: number, most: number): number | null =>
  typeof value === 'number' && value >= least && value <= most ? value : null;

const isShown = (value: unknown): value is Settings['severities'][string] =>
  value === 'error' || value === 'warning' || value === 'notice' || value === 'off';

const record = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};

const flag = (value: unknown, otherwise: boolean): boolean => (typeof value === 'boolean' ? value : otherwise);
