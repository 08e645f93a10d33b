/** An order: a formula under its choices, at the size asked for; what cards, weigh-out lists, timelines and labels are made from. */
import type { IngredientLine, Yield } from 'nappe-grammar';
import { findKind } from '../catalogue/index.ts';
import { middle } from '../quantities/interval.ts';
import type { Formula, Selection, SourceLine, Unit } from '../resolve/model.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { makesOf } from '../run/makes.ts';
import { runFormula } from '../run/run.ts';
import type { Run } from '../run/trace.ts';
import type { Positions } from '../run/trace-json.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { factorFor, type Made, type Unscalable } from '../scale/factor.ts';
import { type Limited, limitOf } from '../scale/limit.ts';
import { wholePieces } from '../scale/pieces.ts';
import { parseLimit, parseTarget } from '../scale/target.ts';
import type { Context } from './context.ts';
import { languageFor, languageOf } from './languages/index.ts';
import { measuresFor, type Units } from './measures.ts';
import type { Makes } from './model.ts';
import type { Asked } from './scaling.ts';
import { makesWords } from './yield.ts';

export interface OrderInput {
  readonly workspace: Workspace;
  readonly unit: Unit;
  readonly formula: Formula;
  readonly selection: Selection;
  readonly positions: Positions;
}

export interface OrderOptions {
  /** A yield as after `makes`: `24 glasses`, `2.4 kg`, `2 rings of 18 x 4.5 cm`. */
  readonly for?: string | Yield;
  /** Each an ingredient line: `8 pc egg yolk`; the scarcest decides, and `for` is not looked at. */
  readonly limits?: readonly string[];
  /** Rounds to whole eggs (or other pieces), the rest following. */
  readonly wholePieces?: boolean;
  /** BCP 47; English where it is not known. */
  readonly language?: string;
  readonly units?: Units;
}

export interface Order extends OrderInput {
  readonly asked: Asked;
  readonly factor: number;
  /** At the size asked for; its run is what everything is read from. */
  readonly context: Context;
  readonly makes: Makes;
}

/** The order, or in one sentence for a cook why there is no factor for what was asked. Never throws on bad requests. */
export function orderOf(input: OrderInput, options: OrderOptions): Order | Unscalable {
  const asked = askedOf(input, options, runFormula(input.formula, input.selection));
  if ('problem' in asked) return asked;
  const factor = asked.whole?.factor ?? asked.target?.scaling.factor ?? asked.limited?.factor ?? 1;
  const context = contextOf(input, options, input.selection, factor, asked);
  return { ...input, asked, factor, context, makes: makesWords(context.run, asked.written, targetOf(asked, true), context) };
}

/** The same order under other choices: the factor stays. */
export function contextOf(input: OrderInput, options: OrderOptions, selection: Selection, factor: number, asked: Asked): Context {
  const { formula } = input;
  const language = languageFor(options.language ?? 'en') ?? languageOf('en');
  const written = makesOf(formula, selection)?.yield ?? null;
  const target = targetOf(asked, selection === input.selection);
  const pieces = target?.count && written?.count ? target.count / written.count : factor;
  return {
    run: runFormula(formula, selection, { factor }),
    language,
    measures: measuresFor(language, options.units ?? 'metric'),
    positions: input.positions,
    pieces,
    count: written?.count ? written.count * pieces : (target?.count ?? 1),
    noun: (target?.noun ?? written?.noun)?.key ?? null,
    nodeOf: (line) => nodeOf(input, line),
  };
}

/** The yield asked for, where it is what the order makes: not where whole eggs or another choice changed the size. */
export const targetOf = (asked: Asked, sameChoices: boolean): Yield | null =>
  sameChoices && asked.whole === null ? (asked.target?.yield ?? null) : null;

function askedOf(input: OrderInput, options: OrderOptions, run: Run): Asked | Unscalable {
  const written = makesOf(input.formula, input.selection)?.yield ?? null;
  let limited: Limited | null = null;
  for (const text of options.limits ?? []) {
    const limit = parseLimit(text);
    if ('problem' in limit) return limit;
    const found = limitOf(run, limit, (key) => findKind(key) ?? null);
    if ('problem' in found) return found;
    if (limited === null || found.factor < limited.factor) limited = found;
  }
  let target: Asked['target'] = null;
  if (options.for !== undefined && limited === null) {
    const wanted = typeof options.for === 'string' ? parseTarget(options.for) : options.for;
    if ('problem' in wanted) return wanted;
    const scaling = factorFor(wanted, madeBy(run, written));
    if ('problem' in scaling) return scaling;
    target = { yield: wanted, scaling };
  }
  const base = { target, limited, whole: null, written };
  if (!options.wholePieces) return base;
  const factor = target?.scaling.factor ?? limited?.factor ?? 1;
  return { ...base, whole: wholePieces(factor === 1 ? run : runFormula(input.formula, input.selection, { factor })) };
}

const madeBy = ({ result }: Run, written: Yield | null): Made => ({
  written,
  grams: result ? middle(result.grams) : null,
  millilitres: result ? middle(millilitresOf(result)) : null,
});

/** The tree's line of an ingredient, for its attributes as written. */
function nodeOf({ workspace, unit }: OrderInput, line: SourceLine): IngredientLine | null {
  const at = workspace.locate(line.place, unit);
  const source = at && workspace.source(at.path);
  const node = source && 'file' in source ? source.file.lines[at.line] : null;
  return node?.kind === 'ingredient' ? node : null;
}
