/** For tests: a text run as the checker runs it, and short views of what came out. */
import { middle } from '../quantities/interval.ts';
import { defaultSelection, selectionWith } from '../resolve/choices.ts';
import type { Files } from '../resolve/model.ts';
import { createWorkspace } from '../resolve/workspace.ts';
import { runFormula } from './run.ts';
import type { BlockRun, Matter, Run, StepRecord } from './trace.ts';

export interface Ran {
  readonly run: Run;
  /** The record of the step that starts with these words. */
  step(words: string): StepRecord;
  /** The run of a block by its name; `assembly` by that word. */
  block(name: string): BlockRun;
  /** `unknown-name 7`: code and line (from 1, of the whole text) of each finding of the run. */
  readonly findings: readonly string[];
  /** Titles of the quick fixes of those findings. */
  readonly fixes: readonly string[];
}

/** Runs the last formula of a text, with values of choices by name; `others` are files it may take from. */
export function ran(
  text: string,
  values: readonly string[] = [],
  others: Readonly<Record<string, string>> = {},
  factor = 1,
): Ran {
  const path = '/formulas/test.nappe';
  const texts: Readonly<Record<string, string>> = {
    [path]: text,
    ...Object.fromEntries(Object.entries(others).map(([name, other]) => [`/formulas/${name}`, other])),
  };
  const files: Files = {
    root: '/formulas',
    read(asked) {
      const found = texts[asked];
      return found === undefined ? { refused: 'missing', why: 'there is no such file' } : { text: found };
    },
  };
  const unit = createWorkspace(files).unit(path);
  const formula = unit.formulas.at(-1);
  if (!formula) throw new Error('no formula in the text');
  const selection = values.length === 0 ? defaultSelection(formula) : selectionWith(formula, values).selection;
  const run = runFormula(formula, selection, { factor });
  const lineOf = (place: { readonly block: string; readonly line: number }): number =>
    (unit.blockLines.get(place.block) ?? 0) + place.line + 1;
  return {
    run,
    step(words) {
      const found = run.records.find(({ step }) => step.node.text.trim().startsWith(words));
      if (!found) throw new Error(`no step “${words}”`);
      return found;
    },
    block(name) {
      const found = run.blocks.find(({ component }) => (component.isAssembly ? 'assembly' : component.name) === name);
      if (!found) throw new Error(`no block “${name}”`);
      return found;
    },
    findings: run.findings.map(({ code, place }) => `${code} ${lineOf(place)}`),
    fixes: run.findings.flatMap(({ fixes }) => (fixes ?? []).map(({ title }) => title)),
  };
}

/** Grams at the middle, to a tenth. */
export const grams = (matter: Matter | null): number => (matter ? Math.round(middle(matter.grams) * 10) / 10 : 0);

/** `milk 200, sugar 50`: what is in it, by the names of its lines. */
export const contents = (matter: Matter | null): string =>
  (matter?.parts ?? []).map(({ line, grams: weighed }) => `${line.name} ${Math.round(weighed * 10) / 10}`).join(', ');

/** The same of each layer, bottom to top. */
export const layersOf = (matter: Matter | null): readonly string[] =>
  matter ? (matter.layers ?? [matter]).map((layer) => contents(layer)) : [];
