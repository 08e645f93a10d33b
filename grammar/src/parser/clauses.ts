/** Builds the clauses of a step, one function a clause word, and reads common slips as they are meant. */

import { blame, replaceFix, type Scan } from '../scanner/scan.ts';
import type { Name } from '../tree.ts';
import { type ClauseUse, levels, type VerbRow } from '../vocabulary/index.ts';
import { type Builder, type Built, built, levelOf, type Part } from './built.ts';
import { buildIn, buildInto, buildWith } from './clause-places.ts';
import { buildAt, buildBare, buildFor, buildLosing, buildTo, buildUntil } from './clause-readings.ts';
import type { RawClause, RawClauseWord } from './drafts.ts';
import { blameKind } from './measured.ts';

/** The clause as it was written or meant; null where nothing can be made of it, which is then blamed. */
export function buildClause(scan: Scan, raw: RawClause, verb: VerbRow): Built | null {
  return builders[raw.word](scan, raw, verb);
}

const builders: Readonly<Record<RawClauseWord, Builder>> = {
  bare: buildBare,
  to: buildTo,
  at: buildAt,
  for: buildFor,
  until: buildUntil,
  into: buildInto,
  over: (scan, raw) => named(scan, raw, 'over', (name) => ({ word: 'over', target: name })),
  using: (scan, raw) => named(scan, raw, 'using', (name) => ({ word: 'using', vessel: name })),
  as: (scan, raw) => named(scan, raw, 'as', (name) => ({ word: 'as', name })),
  in: buildIn,
  with: buildWith,
  while: buildWhile,
  on: buildOn,
  losing: buildLosing,
};

function named(scan: Scan, raw: RawClause, use: ClauseUse, part: (name: Name) => Part): Built | null {
  if (raw.name !== null) return built(raw, use, part(raw.name));
  if (raw.measured !== null) blameKind(scan, raw.measured, `a name after \`${raw.word}\``, []);
  return null;
}

function buildWhile(scan: Scan, raw: RawClause): Built | null {
  if (raw.name?.key === 'whipping') return built(raw, 'while whipping', { word: 'while whipping' });
  blame(scan, raw, '`while` is followed by `whipping` only.', [replaceFix('Write while whipping', raw, 'while whipping')]);
  return null;
}

function buildOn(scan: Scan, raw: RawClause): Built | null {
  const level = raw.name === null ? undefined : levelOf(raw.name);
  if (level !== undefined) return built(raw, 'on', { word: 'on', level });
  const span = raw.name ?? raw.measured ?? raw;
  blame(
    scan,
    span,
    'After `on` the heat or the speed was expected: `low`, `medium` or `high`.',
    levels.map((each) => replaceFix(`Write ${each}`, span, each)),
  );
  return null;
}
