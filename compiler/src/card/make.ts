/** Makes a card: scales the formula, runs it at that size, and puts together everything the page will say. */
import type { Allowed } from '../diagnostics/check.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { type Interval, middle } from '../quantities/interval.ts';
import { inForce } from '../resolve/choices.ts';
import type { Selection } from '../resolve/model.ts';
import { makesOf } from '../run/makes.ts';
import type { Run, StepRecord } from '../run/trace.ts';
import type { Unscalable } from '../scale/factor.ts';
import { cautionsOf } from './cautions.ts';
import { componentsOf } from './components.ts';
import type { Context } from './context.ts';
import { changesBetween, type Variant } from './differences.ts';
import type { Card, CardStep, Detail, Difference } from './model.ts';
import { allergensOf, compositionPercent, nutritionOf } from './nutrition.ts';
import { contextOf, type OrderInput, type OrderOptions, orderOf, targetOf } from './order.ts';
import { type Asked, scalingSentences } from './scaling.ts';
import { temperatureLine } from './temperature.ts';
import { plain } from './text.ts';
import { makesWords } from './yield.ts';

export interface CardInput extends OrderInput {
  /** The checker's, for this formula under this selection. */
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly Allowed[];
}

export interface CardOptions extends OrderOptions {
  readonly detail?: Detail;
  /** ISO 8601, printed on the card. */
  readonly date: string;
}

/** The card, or in one sentence for a cook why there is no factor for what was asked. Never throws on bad requests. */
export function makeCard(input: CardInput, options: CardOptions): Card | Unscalable {
  const order = orderOf(input, options);
  if ('problem' in order) return order;
  const { asked, factor, context } = order;
  const page = pageOf(input, input.selection, asked, context);
  const { components, makes } = page;
  const { run, language, measures } = context;
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

/** A card's body under one selection at one size. */
function pageOf(input: CardInput, selection: Selection, asked: Asked, context: Context) {
  const { formula } = input;
  const { run, language, measures } = context;
  const written = makesOf(formula, selection)?.yield ?? null;
  const target = targetOf(asked, selection === input.selection);
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
  return { components, makes, variant };
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
      const selection = { ...input.selection, [name]: value };
      const context = contextOf(input, options, selection, factor, asked);
      const { variant } = pageOf(input, selection, asked, context);
      const changes = changesBetween(now, variant, context.language);
      return changes.length === 0 ? [] : [{ choice: plain(name), value: plain(value), changes }];
    }),
  );
}

function secondsOf(run: Run): number | null {
  const known = run.records
    .map(({ seconds }) => seconds?.range)
    .filter((range): range is Interval => range !== undefined && Number.isFinite(range.high));
  return known.length === 0 ? null : Math.round(known.reduce((sum, range) => sum + middle(range), 0));
}
