/** Checking one file after the other: what one process, or one worker of many, does. */
import { type Checked, checkUnit, type Workspace } from '../index.ts';
import { fixedBy } from '../resolve/choices.ts';
import { report } from './failure.ts';
import { display, slashed } from './files.ts';
import { shownPath, workspaceOf } from './formula.ts';
import type { Target } from './targets.ts';

export interface CheckSettings {
  /** Values of choices, as after `--with`. */
  readonly with: readonly string[];
  readonly version: string;
}

export interface FileResult extends Checked {
  /** Which of the wanted values some formula of the file offers. */
  readonly offered: readonly string[];
  /** Why the file could not be read, or what of the program itself failed on it; both for standard error. */
  readonly failures: readonly string[];
  /** False where there was no text to check. */
  readonly read: boolean;
}

/** Files a workspace remembers before it is begun anew, so that memory follows the largest files and not their number. */
const remembered = 100;

/** Checks files one by one; what they take from is parsed once. Nothing it meets makes it throw. */
export function fileChecker(settings: CheckSettings): (target: Target) => FileResult {
  let root: string | undefined;
  let workspace: Workspace | undefined;
  let count = 0;
  return (target) => {
    if (workspace === undefined || target.root !== root || target.given !== undefined || ++count > remembered) {
      workspace = workspaceOf(target);
      root = target.root;
      count = 0;
    }
    try {
      return check(workspace, target, settings);
    } catch (error) {
      return failed(target, error, settings.version);
    }
  };
}

export const failed = (target: Target, error: unknown, version: string): FileResult => ({
  ...nothing,
  failures: [report(error, display(target.path), version)],
});

const nothing: FileResult = {
  diagnostics: [],
  allowed: [],
  summary: { files: 0, errors: 0, warnings: 0, notices: 0, allowed: 0 },
  faults: [],
  offered: [],
  failures: [],
  read: false,
};

function check(workspace: Workspace, target: Target, settings: CheckSettings): FileResult {
  const path = slashed(target.path);
  const source = workspace.source(path);
  if ('refused' in source) return { ...nothing, failures: [`${display(target.path)}: ${source.why}`] };
  const checked = checkUnit(workspace, path, { with: settings.with, fileName: shownPath });
  const choices = settings.with.length > 0 ? workspace.unit(path).formulas.flatMap((formula) => formula.choices) : [];
  const { unknown } = fixedBy(choices, settings.with);
  const failures = checked.faults.map(({ part, formula, message }) =>
    report(message, `${display(target.path)} (${formula}, ${part})`, settings.version),
  );
  return { ...checked, offered: settings.with.filter((value) => !unknown.includes(value)), failures, read: true };
}
