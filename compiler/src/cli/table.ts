/** The table of commands: what `nappe` can do, in the order its help shows; each is loaded only when it is asked for. */
import type { Command } from 'commander';

export interface CommandEntry {
  readonly name: string;
  /** One line, for a cook. */
  readonly summary: string;
  /** Left out of help and completion: what the program says to itself. */
  readonly hidden?: boolean;
  /** The command's own file, whose `define` gives it arguments, options and what it does. */
  load(): Promise<{ define(command: Command): void }>;
}

export const commands: readonly CommandEntry[] = [
  { name: 'check', summary: 'say what is wrong, or likely to go wrong, in formulas', load: () => import('./check.ts') },
  { name: 'card', summary: 'make a scaled card of a formula', load: () => import('./card.ts') },
  { name: 'trace', summary: 'show the state of the matter after every step', load: () => import('./trace.ts') },
  { name: 'handout', summary: 'make the sheet for a class from a Markdown file', load: () => import('./handout.ts') },
  {
    name: 'weigh-out',
    summary: 'list what to weigh or order for formulas and their bases',
    load: () => import('./weigh-out.ts'),
  },
  { name: 'timeline', summary: 'lay the steps of formulas out in time', load: () => import('./timeline.ts') },
  { name: 'compare', summary: 'say what changed in meaning between two versions', load: () => import('./compare.ts') },
  { name: 'label', summary: 'write the declaration a seller needs', load: () => import('./label.ts') },
  { name: 'fmt', summary: 'lay formulas out the canonical way', load: () => import('./fmt.ts') },
  { name: 'explain', summary: 'explain a diagnostic: what it means, why, and what to do', load: () => import('./explain.ts') },
  { name: 'draft', summary: 'turn a recipe in plain text, or of a saved page, into notation', load: () => import('./draft.ts') },
  { name: 'preview', summary: 'show a page that is drawn anew as the file is saved', load: () => import('./preview.ts') },
  { name: 'new', summary: 'write a starter formula', load: () => import('./new.ts') },
  { name: 'completion', summary: 'print a script that completes commands in your shell', load: () => import('./completion.ts') },
  { name: 'check-worker', summary: 'check the files another check hands over', hidden: true, load: () => import('./worker.ts') },
];
