/** A formula's headers, from its own block. */
import type { HeaderLine, Name, Yield } from 'nappe-grammar';
import type { Allergen } from '../catalogue/kind.ts';
import { type Interval, interval } from '../quantities/interval.ts';
import { celsiusOf } from '../quantities/units.ts';
import { type NamedBlock, notesIn, ofBlock, placeIn, problemsIn } from './blocks.ts';
import type { InheritedHeader } from './component.ts';
import { guardReader } from './guards.ts';
import type { Choice, Guarded, Place, RawFinding, Settings } from './model.ts';

export interface Headers {
  readonly by: string | null;
  readonly version: string | null;
  readonly notes: readonly string[];
  readonly choices: readonly Choice[];
  readonly makes: readonly Guarded<Yield>[];
  readonly served: readonly Guarded<Interval>[];
  readonly keeps: readonly Guarded<{ readonly seconds: Interval; readonly celsius: Interval | null }>[];
  readonly freeFrom: readonly { readonly allergen: Allergen | 'nuts'; readonly place: Place }[];
  readonly gelatinLaw: Settings['gelatinLaw'];
  readonly tags: readonly string[];
  readonly inherited: readonly InheritedHeader[];
  readonly findings: readonly RawFinding[];
}

/** No formula has more values than this over all its choices: each one is run. */
const mostValues = 200;

export const headersOf = ofBlock(readHeaders);

function readHeaders(block: NamedBlock): Headers {
  const findings: RawFinding[] = [...problemsIn(block)];
  const report = (finding: RawFinding): void => {
    findings.push(finding);
  };
  const lines = block.lines.flatMap((line, index) => (line.kind === 'header' ? [{ line, index }] : []));
  const choices = choicesOf(block, lines, report);
  const guards = guardReader(block.id, choices, report);
  const guarded = <T>(line: HeaderLine, index: number, value: T): Guarded<T> => ({
    value,
    condition: guards.condition(line.guard, index),
    place: placeIn(block.id, index, line.span),
  });
  const result = {
    by: null as string | null,
    version: null as string | null,
    makes: [] as Guarded<Yield>[],
    served: [] as Guarded<Interval>[],
    keeps: [] as Headers['keeps'][number][],
    freeFrom: [] as Headers['freeFrom'][number][],
    gelatinLaw: 'concentration' as Settings['gelatinLaw'],
    tags: [] as string[],
    inherited: [] as InheritedHeader[],
  };
  for (const { line, index } of lines) {
    switch (line.word) {
      case 'by':
        result.by ??= line.value.text;
        break;
      case 'version':
        result.version ??= line.value.text;
        break;
      case 'makes':
        result.makes.push(guarded(line, index, line.yield));
        break;
      case 'served':
        result.served.push(guarded(line, index, celsiusOf(line.at)));
        break;
      case 'keeps': {
        const seconds = interval(line.for.low, line.for.high);
        result.keeps.push(guarded(line, index, { seconds, celsius: line.at && celsiusOf(line.at) }));
        break;
      }
      case 'free':
        // The grammar keeps only words it knows as allergens.
        for (const name of line.allergens)
          result.freeFrom.push({ allergen: name.key as Allergen | 'nuts', place: placeIn(block.id, index, name) });
        break;
      case 'gelatin':
        result.gelatinLaw = line.law;
        break;
      case 'tagged':
        result.tags.push(...line.tags.map(({ key }) => key));
        break;
      case 'basis':
      case 'loss':
        result.inherited.push({ block: block.id, index, line, condition: guards.condition(line.guard, index) });
        break;
      case 'choice':
        break;
    }
  }
  return { ...result, choices, notes: notesIn(block.lines).block, findings };
}

function choicesOf(
  block: NamedBlock,
  lines: readonly { line: HeaderLine; index: number }[],
  report: (finding: RawFinding) => void,
): readonly Choice[] {
  const choices: Choice[] = [];
  const names = new Map<string, Place>();
  const values = new Map<string, Place>();
  for (const { line, index } of lines) {
    if (line.word !== 'choice') continue;
    const place = placeIn(block.id, index, line.name);
    if (isRepeated(names, line.name, place, report)) continue;
    const fresh = line.values.filter((value) => !isRepeated(values, value, placeIn(block.id, index, value), report));
    const room = mostValues - choices.reduce((sum, choice) => sum + choice.values.length, 0);
    if (fresh.length > room) {
      const message = `A formula has at most ${mostValues} values over all its choices; what comes after is not read.`;
      report({ code: 'syntax', place: placeIn(block.id, index, fresh[room] ?? line.name), numbers: { message } });
    }
    const kept = fresh.slice(0, Math.max(0, room)).map(({ text }) => text);
    if (kept.length > 0) choices.push({ name: line.name.text, values: kept, place: placeIn(block.id, index, line.span) });
  }
  return choices;
}

function isRepeated(seen: Map<string, Place>, name: Name, place: Place, report: (finding: RawFinding) => void): boolean {
  const { key } = name;
  const first = seen.get(key);
  if (first === undefined) {
    seen.set(key, place);
    return false;
  }
  report({
    code: 'duplicate-name',
    place,
    numbers: { name: name.text },
    related: [{ place: first, message: `${name.text} is declared here first` }],
  });
  return true;
}
