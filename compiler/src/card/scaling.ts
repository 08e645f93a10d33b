/** What a card says of its scaling: how the factor came about, what rounding does, and what does not grow with it. */
import type { Yield } from 'nappe-grammar';
import { middle } from '../quantities/interval.ts';
import type { StepRecord } from '../run/trace.ts';
import { millilitresOf } from '../run/volume-of.ts';
import { batchesOf } from '../scale/batches.ts';
import type { Scaling } from '../scale/factor.ts';
import type { Limited } from '../scale/limit.ts';
import type { WholePieces } from '../scale/pieces.ts';
import { notableRounding, roundingError } from '../scale/rounding.ts';
import { type Context, lineName } from './context.ts';
import { yieldText } from './yield.ts';

/** How the factor was asked for; every field null: as written. */
export interface Asked {
  readonly target: { readonly yield: Yield; readonly scaling: Scaling } | null;
  readonly limited: Limited | null;
  readonly whole: WholePieces | null;
  readonly written: Yield | null;
}

export function scalingSentences(
  asked: Asked,
  context: Context,
  numbers: ReadonlyMap<StepRecord, number>,
  weighed: readonly number[],
): readonly string[] {
  const { run, language, measures } = context;
  const say = language.scaling;
  const out: string[] = [];
  const { target, limited, whole } = asked;
  if (limited)
    out.push(
      say.limit({
        factor: figure(limited.factor, context),
        amount: measures.mass(limited.available),
        name: lineName(limited.line, language),
      }),
    );
  if (target) out.push(sentenceOf(target, asked.written, context));
  if (whole)
    out.push(
      say.pieces({
        count: `${whole.count} ${language.units.pc}`,
        name: lineName(whole.line, language),
        asked: figure(target?.scaling.factor ?? limited?.factor ?? 1, context),
      }),
    );
  if (target && target.scaling.by !== 'count' && target.scaling.by !== 'mass') out.push(fills(context));
  if (target?.scaling.lined) out.push(say.lined);
  const error = roundingError(weighed);
  if (Math.abs(error) > notableRounding) out.push(say.rounding(measures.percent(error * 100, 1)));
  if (run.factor > 1.25 || run.factor < 0.8) out.push(say.times, say.vessels);
  for (const { record, vessel, needs, holds, batches } of batchesOf(run)) {
    out.push(
      say.batches({
        step: numbers.get(record) ?? 0,
        vessel: vessel.name,
        holds: measures.volume(holds),
        needs: measures.volume(round3(needs)),
        batches,
      }),
    );
  }
  return out;
}

function sentenceOf(
  { yield: made, scaling }: { readonly yield: Yield; readonly scaling: Scaling },
  written: Yield | null,
  context: Context,
): string {
  const { language, measures } = context;
  const say = language.scaling;
  if (Math.abs(scaling.factor - 1) < 1e-9) return say.asWritten;
  const measure = scaling.by === 'volume' ? measures.volume(round3(scaling.from)) : measures.roughMass(scaling.from);
  const from = written ? yieldText(written, 1, language, measures) : measure;
  const words = {
    factor: figure(scaling.factor, context),
    from: written && scaling.by !== 'count' && written.quantity === null ? `${from} (${measure})` : from,
    to: yieldText(made, 1, language, measures),
  };
  if (scaling.by === 'count') return say.count(words);
  if (scaling.by === 'volume') return say.volume(words);
  if (scaling.by === 'mass' || !scaling.density) return say.mass(words);
  const { gramsPerMillilitre, grams, millilitres } = scaling.density;
  return say.density({
    ...words,
    density: `${measures.number(gramsPerMillilitre)} g/ml`,
    grams: measures.roughMass(grams),
    millilitres: measures.volume(round3(millilitres)),
  });
}

/** Mass and volume of what is made, joined by its computed density. */
function fills({ run, language, measures }: Context): string {
  const grams = run.result ? middle(run.result.grams) : 0;
  const millilitres = run.result ? middle(millilitresOf(run.result)) : 0;
  return language.scaling.fills({
    grams: measures.roughMass(grams),
    millilitres: measures.volume(round3(millilitres)),
    density: `${measures.number(grams / Math.max(1e-9, millilitres))} g/ml`,
  });
}

/** A factor to four figures. */
const figure = (factor: number, { measures }: Context): string =>
  measures.number(factor, factor >= 100 ? 1 : factor >= 1 ? 3 : 4);

const round3 = (value: number): number => Number(value.toPrecision(3));
