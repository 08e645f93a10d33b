/** The orders of a command line: files, each with the options that stand behind it, made ready at their size. */
import type { Command } from 'commander';
import { type Order, orderOf } from '../card/order.ts';
import { checkUnit } from '../index.ts';
import { status, UsageError } from './failure.ts';
import { type Opened, openFormula, selectionFor, shownPath, values } from './formula.ts';
import { complain } from './terminal.ts';

/** A file as it stands on the command line. */
export interface Entry {
  readonly file: string;
  readonly for?: string;
  readonly with: readonly string[];
}

/** Gives a command its files and the options that belong to the file before them. */
export const orderArguments = (command: Command): Command =>
  command
    .argument('<files...>', 'formula files, or FILE#Formula name; - is standard input')
    .option('--for <yield>', 'how much to make of the file before it: "24 glasses", "2.4 kg"')
    .option('--with <values>', 'choice values for the file before it, such as "cut, raspberry"', values);

/**
 * Files with their options, from the words as given: commander keeps files and options apart, and so loses which belongs to which.
 * @throws UsageError for an option before any file.
 */
export function entriesOf(command: Command): readonly Entry[] {
  const words = (command.parent as unknown as { readonly rawArgs: readonly string[] }).rawArgs;
  const entries: Entry[] = [];
  let at = words.indexOf(command.name()) + 1;
  for (let onlyFiles = false; at < words.length; at++) {
    const word = words[at] as string;
    if (!onlyFiles && word === '--') onlyFiles = true;
    else if (onlyFiles || !word.startsWith('-') || word === '-') entries.push({ file: word, with: [] });
    else {
      const [flag = '', inline] = split(word);
      const option = command.options.find(({ long, short }) => long === flag || short === flag);
      const value = inline ?? (option?.required ? words[++at] : undefined);
      if (flag === '--for' || flag === '--with') apply(flag, value ?? '', entries);
    }
  }
  return entries;
}

/** `--for=24 glasses`, `-ofile`. */
function split(word: string): readonly [string, string?] {
  const equals = word.startsWith('--') ? word.indexOf('=') : -1;
  if (equals > 0) return [word.slice(0, equals), word.slice(equals + 1)];
  return word.startsWith('--') || word.length === 2 ? [word] : [word.slice(0, 2), word.slice(2)];
}

function apply(flag: '--for' | '--with', value: string, entries: Entry[]): void {
  const last = entries.pop();
  if (!last) throw new UsageError(`${flag} belongs to the file before it; name the file first.`);
  if (flag === '--for' && last.for !== undefined) throw new UsageError(`${last.file} has --for twice.`);
  entries.push(flag === '--for' ? { ...last, for: value } : { ...last, with: values(value, last.with) });
}

export interface Orders {
  readonly opened: readonly Opened[];
  readonly orders: readonly Order[];
  /** Those in which the checker found errors. */
  readonly unchecked: ReadonlySet<Order>;
}

/** Opens, sizes and checks every entry; what is wrong is complained of and makes the exit status. @throws Unreadable, UsageError */
export function placeOrders(entries: readonly Entry[], opened = entries.map(({ file }) => openFormula(file))): Orders {
  const unchecked = new Set<Order>();
  const orders = entries.flatMap((entry, index): Order[] => {
    const open = opened[index] as Opened;
    const { formula, workspace, unit, shown } = open;
    const selection = selectionFor(formula, entry.with);
    if (formula.unreadable) {
      complain(`${shown}: a line of this formula cannot be read, so it is left out. nappe check ${shown} says which.`);
      process.exitCode = status.faults;
      return [];
    }
    const order = orderOf({ ...open, selection }, entry.for === undefined ? {} : { for: entry.for });
    if ('problem' in order) throw new UsageError(`${shown}: ${order.problem}`);
    const { diagnostics } = checkUnit(workspace, unit.path, {
      with: Object.values(selection),
      only: formula,
      fileName: shownPath,
    });
    if (diagnostics.some(({ severity }) => severity === 'error')) {
      complain(`${shown}: this formula has errors; nappe check ${shown} says which.`);
      process.exitCode = status.faults;
      unchecked.add(order);
    }
    return [order];
  });
  return { opened, orders, unchecked };
}
