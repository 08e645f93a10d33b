/** The clauses of a step: what each says, and the finer uses that verbs take or do not take. */

/**
 * One use of a clause word. Every verb takes `for`, `until`, `using`, `as`, `losing` and a tool after `with`;
 * the others stand in the verb's own row.
 */
export type ClauseUse =
  | 'to temperature'
  | 'to peak'
  | 'to mass'
  | 'to length'
  | 'to brix'
  | 'at'
  | 'at room'
  | 'for'
  | 'until'
  | 'into'
  | 'over'
  | 'in name'
  | 'in medium'
  | 'in additions'
  | 'in turns'
  | 'with'
  | 'with tool'
  | 'while whipping'
  | 'on'
  | 'using'
  | 'losing'
  | 'as';

export interface ClauseRow {
  readonly use: ClauseUse;
  /** The connective it opens with; a step holds each word once (`with` a tool and `with` names are two). */
  readonly word: string;
  readonly meaning: string;
  readonly example: string;
  readonly template: string;
  /** Taken by every verb. */
  readonly common: boolean;
}

export const clauses: readonly ClauseRow[] = [
  own('to temperature', 'to', 'The reading that ends the step.', 'to 82-84 °C', 'to <82-84> °C'),
  own('to peak', 'to', 'The peak that ends the step.', 'to soft-medium peak', 'to <very soft|soft|medium|stiff> peak'),
  own('to mass', 'to', 'The mass that ends the step.', 'to 120 g', 'to <120 g>'),
  own('to length', 'to', 'The thickness or size that ends the step.', 'to 3 mm', 'to <3> mm'),
  own('to brix', 'to', 'The sugar reading that ends the step.', 'to 65 brix', 'to <65> brix'),
  own('at', 'at', 'The temperature of the oven or the air; for other steps, of the matter.', 'at 160 °C', 'at <160> °C'),
  own('at room', 'at', "Cools in the room's air.", 'at room', 'at room'),
  common('for', 'for', 'How long the whole step takes.', 'for 10 min', 'for <10 min>'),
  common('until', 'until', 'What the cook sees when the step is done.', 'until nappe', 'until <smooth>'),
  own('into', 'into', 'The other party, which keeps its name and takes the rest in; or a vessel.', 'into custard', 'into <name>'),
  own('over', 'over', 'What it goes on top of.', 'over egg yolk', 'over <name>'),
  own('in name', 'in', 'What it lies in.', 'in cold water', 'in <name>'),
  own('in medium', 'in', 'What surrounds the vessel.', 'in ice bath', 'in <ice bath>'),
  own(
    'in additions',
    'in',
    'In how many parts it goes in, with the tool for each.',
    'in 3 additions: whisk, spatula',
    'in <3> additions',
  ),
  own('in turns', 'in', 'The turns of a laminated dough.', 'in 2 turns: double, single', 'in <3> turns'),
  own('with', 'with', 'What goes on or in; the thing acted on keeps its name.', 'with raspberry', 'with <name>'),
  common('with tool', 'with', 'The tool.', 'with spatula', 'with <whisk>'),
  own('while whipping', 'while', 'The other party is being whipped as this goes in.', 'while whipping', 'while whipping'),
  own('on', 'on', 'Heat or speed.', 'on low', 'on <low|medium|high>'),
  common('using', 'using', 'An item of the equipment.', 'using mixer bowl', 'using <vessel>'),
  common('losing', 'losing', 'What evaporates or stays after, in per cent.', 'losing 5 %', 'losing <5> %'),
  common('as', 'as', 'Names the result.', 'as liaison', 'as <name>'),
];

export const commonUses: readonly ClauseUse[] = clauses.filter((row) => row.common).map((row) => row.use);

function own(use: ClauseUse, word: string, meaning: string, example: string, template: string): ClauseRow {
  return { use, word, meaning, example, template, common: false };
}

function common(use: ClauseUse, word: string, meaning: string, example: string, template: string): ClauseRow {
  return { use, word, meaning, example, template, common: true };
}
