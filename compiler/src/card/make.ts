/** Makes a card: scales the formula, runs it at that size, and puts together everything the page will say. */
import type { IngredientLine, Yield } from 'nappe-grammar';
import { findKind } from '../catalogue/index.ts';
import type { Allowed } from '../diagnostics/check.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { type Interval, middle } from '../quantities/interval.ts';
import { holds } from '../resolve/choices.ts';
import type { Formula, Guarded, Selection, SourceLine, Unit } from '../resolve/model.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { makesOf, runFormula } from '../run/run.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import type { Positions } from '../run/trace-json.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { amountOf } from '../scale/amounts.ts';
import { factorFor, type Made, type Unscalable } from '../scale/factor.ts';
import { type Limited, limitOf } from '../scale/limit.ts';
import { wholePieces } from '../scale/pieces.ts';
import { parseLimit, parseTarget } from '../scale/target.ts';
import { cautionsOf } from './cautions.ts';
import { componentsOf } from './components.ts';
import type { Context } from './context.ts';
import { changesBetween, type Variant } from './differences.ts';
import { languageFor, languageOf } from './languages/index.ts';
import { measuresFor, type Units } from './measures.ts';
import type { Card, CardStep, Detail, Difference, Makes } from './model.ts';
import { allergensOf, compositionPercent, nutritionOf } from './nutrition.ts';
import { type Asked, scalingSentences } from './scaling.ts';
import { temperatureLine } from './temperature.ts';
import { plain } from './text.ts';
import { yieldText } from './yield.ts';

export interface CardInput {
  readonly workspace: Workspace;
  readonly unit: Unit;
  readonly formula: Formula;
  readonly selection: Selection;
  readonly positions: Positions;
  /** The checker's, for this formula under this selection. */
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly Allowed[];
}

export interface CardOptions {
  /** A yield as after `makes`: `24 glasses`, `2.4 kg`, `2 rings of 18 x 4.5 cm`. */
  readonly for?: string | Yield;
  /** Each an ingredient line: `8 pc egg yolk`; the scarcest decides, and `for` is not looked at. */
  readonly limits?: readonly string[];
  /** Rounds to whole eggs (or other pieces), the rest following. */
  readonly wholePieces?: boolean;
  /** BCP 47; English where it is not known. */
  readonly language?: string;
  readonly units?: Units;
  readonly detail?: Detail;
  /** ISO 8601, printed on the card. */
  readonly date: string;
}

/** The card, or in one sentence for a cook why there is no factor for what was asked. Never throws on bad requests. */
export function makeCard(input: CardInput, options: CardOptions): Card | Unscalable {
  const asWritten = runFormula(input.formula, input.selection);
  const asked = scaled(input, options, asWritten);
  if ('problem' in asked) return asked;
  const factor = asked.whole?.factor ?? asked.target?.scaling.factor ?? asked.limited?.factor ?? 1;
  const page = pageOf(input, options, input.selection, factor, asked);
  const { context, components, run, makes } = page;
  const { language, measures } = context;
  const steps = new Map(components.list.flatMap((component) => component.steps.map((step) => [step.number, step] as const)));
  const stepOf = (record: StepRecord): CardStep | null => steps.get(components.numbers.get(record) ?? 0) ?? null;
  const codes = new Set([...input.diagnostics, ...input.allowed].map(({ code }) => code));
  return {
    file: input.positions.fileOf(input.formula.place),
    formula: plain(input.formula.name),
    by: input.formula.by === null ? null : plain(input.formula.by),
    edition: input.formula.version === null ? null : plain(input.formula.version),
    date: options.date,
    language: language.code,
    units: measures.units,
    detail: options.detail ?? 'full',
    choices: input.selection,
    checked: input.diagnostics.every(({ severity }) => severity !== 'error'),
    diagnostics: input.diagnostics,
    allowed: input.allowed.filter(({ safety }) => safety),
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
    cautions: cautionsOf(run, codes).map((key) => language.cautions[key](measures.degrees)),
    differences: differencesOf(input, options, factor, asked, page.variant),
    temperature: temperatureLine(run, stepOf),
    seconds: secondsOf(run),
  };
}

function scaled(input: CardInput, options: CardOptions, run: Run): Asked | Unscalable {
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

/** A card's body under one selection at one size. */
function pageOf(input: CardInput, options: CardOptions, selection: Selection, factor: number, asked: Asked) {
  const { formula } = input;
  const run = runFormula(formula, selection, { factor });
  const language = languageFor(options.language ?? 'en') ?? languageOf('en');
  const measures = measuresFor(language, options.units ?? 'metric');
  const written = makesOf(formula, selection)?.yield ?? null;
  const target = selection === input.selection && asked.whole === null ? (asked.target?.yield ?? null) : null;
  const pieces = target?.count && written?.count ? target.count / written.count : factor;
  const count = written?.count ? written.count * pieces : (target?.count ?? 1);
  const context: Context = {
    run,
    language,
    measures,
    positions: input.positions,
    pieces,
    count,
    noun: (target?.noun ?? written?.noun)?.key ?? null,
    nodeOf: (line) => nodeOf(input, line),
  };
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
      const { variant, context } = pageOf(input, options, { ...input.selection, [name]: value }, factor, asked);
      const changes = changesBetween(now, variant, context.language);
      return changes.length === 0 ? [] : [{ choice: plain(name), value: plain(value), changes }];
    }),
  );
}

/** The tree's line of an ingredient, for its attributes as written. */
function nodeOf({ workspace, unit }: CardInput, line: SourceLine): IngredientLine | null {
  const at = workspace.locate(line.place, unit);
  const source = at && workspace.source(at.path);
  const node = source && 'file' in source ? source.file.lines[at.line] : null;
  return node?.kind === 'ingredient' ? node : null;
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
