/** Refactoring: gives a step's result a name, for other steps to use. */
import type { StepLine } from 'nappe-grammar';
import { type CodeAction, CodeActionKind } from 'vscode-languageserver';
import { blockAt } from '../../names/groups.ts';
import { declaredIn } from '../../names/things.ts';
import { inStep } from '../../names/written.ts';
import type { Analysis } from '../../project.ts';
import { rangeOn } from '../../ranges.ts';

export function nameResult({ file, project, path }: Analysis, number: number): CodeAction[] {
  const line = file.lines[number];
  if (line?.kind !== 'step' || line.problems.length > 0 || without.has(line.verb)) return [];
  if (line.clauses.some(({ word }) => word === 'as' || word === 'into' || word === 'over')) return [];
  const taken = declaredIn(blockAt(file, number));
  const name = [...names(line)].find((one) => !taken.has(one));
  if (name === undefined) return [];
  const end = line.clauses.at(-1)?.end ?? line.operands.at(-1)?.end ?? line.amount?.end ?? line.verbSpan.end;
  const edit = { range: rangeOn(number, { start: end, end }), newText: ` as ${inStep(name)}` };
  return [
    {
      title: `Name the result “${name}”`,
      kind: CodeActionKind.RefactorExtract,
      edit: { changes: { [project.uriOf(path)]: [edit] } },
    },
  ];
}

/** Steps that leave the matter what it was, or are the last that is done to it. */
const without: ReadonlySet<string> = new Set(['reserve', 'discard', 'check', 'do', 'serve', 'pack', 'portion', 'garnish']);

const nouns: Readonly<Record<string, string>> = {
  whip: 'foam',
  boil: 'syrup',
  reduce: 'syrup',
  caramelise: 'caramel',
  knead: 'dough',
  rub: 'crumble',
  sift: 'dry mix',
};

/** What it may be called, the first that is free. */
function* names({ verb, operands }: StepLine): Generator<string> {
  const noun = nouns[verb] ?? (operands.length === 1 ? `prepared ${operands[0]?.name.text ?? 'mixture'}` : 'mixture');
  yield noun;
  for (const order of ['second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth']) yield `${order} ${noun}`;
}
