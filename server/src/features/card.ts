/** `nappe/card`: the live card of a formula at a size and under choices, and where its steps stand in the text. */
import { checkUnit, type Formula, type Place, selectionWith } from 'nappe';
import { type Card, cardHtml, cardMarkdown, languageFor, languages, makeCard } from 'nappe/card';
import { nameKey } from 'nappe-grammar';
import type { Analysis } from '../project.ts';
import type { CardAnswer, CardParams, Problem } from '../protocol.ts';
import { formulaAt } from '../runs.ts';

/** `date` is printed on the card, ISO 8601. */
export function card(analysis: Analysis, params: CardParams, date: string): CardAnswer | Problem {
  const { project, unit, settings } = analysis;
  const formula = chosenFormula(analysis, params);
  if (!formula) return { problem: noFormula(analysis, params) };
  if (formula.unreadable) return { problem: 'A line of this formula cannot be read, so it has no card yet.' };
  const { selection } = selectionWith(formula, params.choices ?? settings.choices);
  const shown = (path: string) => (path.startsWith(`${project.root}/`) ? path.slice(project.root.length + 1) : path);
  const located = (place: Place) => project.workspace.locate(place, unit);
  const { diagnostics, allowed } = checkUnit(project.workspace, analysis.path, {
    with: Object.values(selection),
    only: formula,
    fileName: shown,
  });
  const positions = {
    fileOf: (place: Place) => shown(located(place)?.path ?? analysis.path),
    lineOf: (place: Place) => (located(place)?.line ?? 0) + 1,
  };
  const made = makeCard(
    { workspace: project.workspace, unit, formula, selection, positions, diagnostics, allowed },
    {
      ...(params.for !== undefined && params.for.trim() !== '' && { for: params.for }),
      language: languageFor(params.language ?? settings.card.language)?.code ?? 'en',
      units: params.units ?? settings.card.units,
      date,
    },
  );
  if ('problem' in made) return made;
  return {
    html: cardHtml(made),
    ...(params.markdown === true && { markdown: cardMarkdown(made) }),
    formula: formula.name,
    formulas: unit.formulas.map(({ name }) => name),
    choices: formula.choices.map(({ name, values }) => ({ name, values, value: selection[name] ?? values[0] ?? '' })),
    makes: made.makes.text,
    languages: languages.map(({ code }) => ({
      code,
      name: new Intl.DisplayNames([code], { type: 'language' }).of(code) ?? code,
    })),
    steps: stepPlaces(analysis, made, shown),
    checked: made.checked,
    faults: {
      errors: diagnostics.filter(({ severity }) => severity === 'error').length,
      warnings: diagnostics.filter(({ severity }) => severity === 'warning').length,
    },
  };
}

/** By title, by a line of it, or the file's first. */
export function chosenFormula(
  analysis: Analysis,
  { formula, line }: { readonly formula?: string; readonly line?: number },
): Formula | null {
  const { formulas } = analysis.unit;
  if (formula !== undefined) return formulas.find(({ name }) => nameKey(name) === nameKey(formula)) ?? null;
  const here = line === undefined ? null : formulaAt(analysis, line);
  return formulas.find((one) => one === here) ?? formulas[0] ?? null;
}

export const noFormula = ({ unit }: Analysis, { formula }: { readonly formula?: string }): string =>
  formula !== undefined && unit.formulas.length > 0
    ? `There is no formula “${formula}” here; there is ${unit.formulas.map(({ name }) => `“${name}”`).join(', ')}.`
    : 'There is no formula here yet; one begins with a line such as: formula Vanilla custard';

function stepPlaces({ project, uri }: Analysis, { components }: Card, shown: (path: string) => string): CardAnswer['steps'] {
  const uris = new Map(project.paths().map((path) => [shown(path), path]));
  return components.flatMap(({ from, steps }) => {
    const path = from === null ? undefined : (uris.get(from) ?? `${project.root}/${from}`);
    const at = path === undefined ? uri : project.uriOf(path);
    return steps.map(({ number, line }) => ({ number, uri: at, line: line - 1 }));
  });
}
