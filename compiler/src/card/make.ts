/** Makes a card: scales the formula, runs it at that size, and puts together everything the page will say. */
import type { IngredientLine, Yield } from 'nappe-grammar';
import type { Kind } from '../catalogue/kind.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { type Interval, middle } from '../quantities/interval.ts';
import { holds } from '../resolve/choices.ts';
import type { Formula, Guarded, Selection, SourceLine } from '../resolve/model.ts';
import { makesOf, runFormula } from '../run/run.ts';
import type { Run } from '../run/trace.ts';
import type { Positions } from '../run/trace-json.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { amountOf } from '../scale/amounts.ts';
import { factorFor, type Unscalable } from '../scale/factor.ts';
import { type Limited, limitOf } from '../scale/limit.ts';
import { wholePieces } from '../scale/pieces.ts';
import { cautionsOf } from './cautions.ts';
import { componentsOf } from './components.ts';
import type { Context } from './context.ts';
import { changesBetween, type Variant } from './differences.ts';
import type { Language } from './languages/language.ts';
import { measuresFor, type Units } from './measures.ts';
import type { Allowed, Card, Detail, Difference, Makes } from './model.ts';
import { allergensOf, compositionPercent, nutritionOf } from './nutrition.ts';
import { type Asked, scalingSentences } from './scaling.ts';
import { temperatureLine } from './temperature.ts';
import { plain } from './text.ts';
import { yieldText } from './yield.ts';

export interface CardInput {
  readonly formula: Formula;
  readonly selection: Selection;
  readonly positions: Positions;
  /** The checker's, for this formula under this selection. */
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly Allowed[];
  /** Looks a name up in the catalogue, for `limits`. */
  findKind(key: string): Kind | null;
  /** The tree's line of an ingredient; null where it is not at hand. */
  nodeOf(line: SourceLine): IngredientLine | null;
}

export interface CardOptions {
  readonly for?: Yield;
  /** Each an ingredient line: `8 pc egg yolk`; the scarcest decides. Not together with `for`. */
  readonly limits?: readonly IngredientLine[];
  /** Rounds to whole eggs (or other pieces), the rest following. */
  readonly wholePieces?: boolean;
  readonly language: Language;
  readonly units?: Units;
  readonly detail?: Detail;
  /** ISO 8601, printed on the card. */
  readonly date: string;
}

/** The card, or why there is no factor for what was asked. */
export function makeCard(input: CardInput, options: CardOptions): Card | Unscalable {
  const asWritten = runFormula(input.formula, input.selection);
  const asked = scaled(input, options, asWritten);
  if ('problem' in asked) return asked;
  const factor = asked.whole?.factor ?? asked.target?.scaling.factor ?? asked.limited?.factor ?? 1;
  const { language, units = 'metric' } = options;
  const page = pageOf(input, options, input.selection, factor, asked);
  const { context, components, run, makes } = page;
  const records = new Map(
    [...components.numbers].map(([record, number]) => [
      record,
      components.list.flatMap(({ steps }) => steps).find((step) => step.number === number) ?? null,
    ]),
  );
  const codes = new Set([...input.diagnostics, ...input.allowed].map(({ code }) => code));
  return {
    file: input.positions.fileOf(input.formula.place),
    formula: plain(input.formula.name),
    by: input.formula.by === null ? null : plain(input.formula.by),
    edition: input.formula.version === null ? null : plain(input.formula.version),
    date: options.date,
    language: language.code,
    units,
    detail: options.detail ?? 'full',
    choices: input.selection,
    checked: input.diagnostics.every(({ severity }) => severity !== 'error'),
    diagnostics: input.diagnostics,
    allowed: input.allowed,
    factor,
    scaling: scalingSentences(asked, context, components.numbers, components.weighed),
    makes,
    served: page.variant.served,
    keeps: page.variant.keeps,
    notes: input.formula.notes,
    components: components.list,
    compositionPercent: compositionPercent(run),
    allergens: allergensOf(run),
    nutrition: nutritionOf(run, makes),
    cautions: cautionsOf(run, codes).map((key) => language.cautions[key](context.measures.degrees)),
    differences: differencesOf(input, options, factor, asked, page.variant),
    temperature: temperatureLine(run, (record) => records.get(record) ?? null),
    seconds: secondsOf(run),
  };
}

function scaled(input: CardInput, options: CardOptions, run: Run): Asked | Unscalable {
  const written = makesOf(input.formula, input.selection)?.yield ?? null;
  let limited: Limited | null = null;
  for (const limit of options.limits ?? []) {
    const found = limitOf(run, limit, input.findKind);
    if ('problem' in found) return found;
    if (limited === null || found.factor < limited.factor) limited = found;
  }
  let target: Asked['target'] = null;
  if (options.for && limited === null) {
    const made = {
      written,
      grams: run.result ? middle(run.result.grams) : null,
      millilitres: run.result ? middle(millilitresOf(run.result)) : null,
    };
    const scaling = factorFor(options.for, made);
    if ('problem' in scaling) return scaling;
    target = { yield: options.for, scaling };
  }
  const base = { target, limited, whole: null, written };
  if (!options.wholePieces) return base;
  const factor = target?.scaling.factor ?? limited?.factor ?? 1;
  return { ...base, whole: wholePieces(factor === 1 ? run : runFormula(input.formula, input.selection, { factor })) };
}

/** A card's body under one selection at one size. */
function pageOf(input: CardInput, options: CardOptions, selection: Selection, factor: number, asked: Asked) {
  const { formula } = input;
  const run = runFormula(formula, selection, { factor });
  const { language } = options;
  const measures = measuresFor(language, options.units ?? 'metric');
  const written = makesOf(formula, selection)?.yield ?? null;
  const target = selection === input.selection && asked.whole === null ? (asked.target?.yield ?? null) : null;
  const pieces = target?.count && written?.count ? target.count / written.count : factor;
  const count = written?.count ? written.count * pieces : (target?.count ?? 1);
  const context: Context = { run, language, measures, positions: input.positions, pieces, count, nodeOf: input.nodeOf };
  const makes = makesWords(run, written, target, context);
  const served = inForce(formula.served, selection);
  const keeps = inForce(formula.keeps, selection);
  const components = componentsOf(context);
  const variant: Variant = {
    makes: makes.text,
    served: served ? measures.temperature(served) : null,
    keeps: keeps
      ? language.keeping(measures.duration(keeps.seconds), keeps.celsius ? measures.temperature(keeps.celsius) : null)
      : null,
    components: components.list,
  };
  return { run, context, components, makes, variant };
}

function makesWords(run: Run, written: Yield | null, target: Yield | null, { language, measures }: Context): Makes {
  const sized =
    target && written && target.count !== null && target.size === null && target.lengths === null
      ? { ...written, count: target.count, noun: target.noun ?? written.noun }
      : target;
  const made = sized ?? written;
  const factor = sized ? 1 : run.factor;
  const grams = run.result ? Math.round(middle(run.result.grams)) : null;
  if (!made)
    return {
      text: grams === null ? '' : measures.roughMass(grams),
      count: null,
      noun: null,
      grams,
      millilitres: run.result ? Math.round(middle(millilitresOf(run.result))) : null,
    };
  const amount = amountOf(made);
  return {
    text: yieldText(made, factor, language, measures),
    count: amount.count === null ? null : Math.round(amount.count * factor * 1000) / 1000,
    noun: amount.noun,
    grams,
    millilitres:
      amount.millilitres === null
        ? run.result
          ? Math.round(middle(millilitresOf(run.result)))
          : null
        : Math.round(amount.millilitres * factor),
  };
}

/** One entry for every other value of every choice; the size stays the card's factor. */
function differencesOf(
  input: CardInput,
  options: CardOptions,
  factor: number,
  asked: Asked,
  now: Variant,
): readonly Difference[] {
  return input.formula.choices.flatMap(({ name, values }) =>
    values.flatMap((value) => {
      if (value === input.selection[name]) return [];
      const { variant } = pageOf(input, options, { ...input.selection, [name]: value }, factor, asked);
      const changes = changesBetween(now, variant, options.language.labels);
      return changes.length === 0 ? [] : [{ choice: plain(name), value: plain(value), changes }];
    }),
  );
}

function inForce<T>(guarded: readonly Guarded<T>[], selection: Selection): T | null {
  return guarded.find(({ condition }) => holds(condition, selection))?.value ?? null;
}

function secondsOf(run: Run): number | null {
  const known = run.records
    .map(({ seconds }) => seconds?.range)
    .filter((range): range is Interval => range !== undefined && Number.isFinite(range.high));
  return known.length === 0 ? null : Math.round(known.reduce((sum, range) => sum + middle(range), 0));
}
