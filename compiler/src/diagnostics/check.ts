/** Checks one file: everything the grammar, the resolver, the runs and the rules find, by file and line, with what was allowed. */
import { nameKey } from 'nappe-grammar';
import type { Allow, Formula, Place, RawFinding, Unit } from '../resolve/model.ts';
import { nearestNames } from '../resolve/nearest.ts';
import { shown } from '../resolve/paths.ts';
import type { Position, Workspace } from '../resolve/workspace.ts';
import { type Combined, keyOf, rank } from './combine.ts';
import { type Fault, findingsOf, word } from './formula-findings.ts';
import { ruleOf, rules } from './registry.ts';
import { requestFindings } from './requests.ts';
import type { Diagnostic, FileEdit, Fix, Severity } from './rule.ts';

export interface CheckOptions {
  /** Values of choices by name, as after `--with`; the other choices are checked in every combination. */
  readonly with?: readonly string[];
  /** Only this formula of the file and what stands outside formulas. */
  readonly only?: Formula;
  /** How a file is named in the answer; by default its path below the workspace root. */
  readonly fileName?: (path: string) => string;
}

/** A diagnostic that an `allow` comment turned off. */
export interface Allowed {
  readonly file: string;
  /** Of the line the diagnostic was on, from 1. */
  readonly line: number;
  readonly code: string;
  readonly reason: string;
  readonly message: string;
  /** A safety code: cards list it. */
  readonly safety: boolean;
}

export interface Summary {
  readonly files: number;
  readonly errors: number;
  readonly warnings: number;
  readonly notices: number;
  readonly allowed: number;
}

export interface Checked {
  readonly diagnostics: readonly Diagnostic[];
  readonly allowed: readonly Allowed[];
  readonly summary: Summary;
  /** What broke inside the program; the findings of everything else are there. */
  readonly faults: readonly Fault[];
}

/** Never throws: what breaks is a fault. A file that cannot be read has no findings; the workspace's `source` says why. */
export function checkUnit(workspace: Workspace, path: string, options: CheckOptions = {}): Checked {
  try {
    return new Check(workspace, workspace.unit(path), options).result();
  } catch (error) {
    const message = error instanceof Error ? (error.stack ?? error.message) : String(error);
    return { diagnostics: [], allowed: [], summary: summaryOf([], []), faults: [{ part: 'check', formula: path, message }] };
  }
}

export function summaryOf(diagnostics: readonly Diagnostic[], allowed: readonly Allowed[], files = 1): Summary {
  const count = (severity: Severity): number => diagnostics.filter((diagnostic) => diagnostic.severity === severity).length;
  return { files, errors: count('error'), warnings: count('warning'), notices: count('notice'), allowed: allowed.length };
}

/** A finding with where it stands. */
interface Placed {
  readonly finding: Combined;
  readonly at: Position;
}

class Check {
  private readonly faults: Fault[] = [];
  private readonly units: readonly Unit[];

  constructor(
    private readonly workspace: Workspace,
    private readonly unit: Unit,
    private readonly options: CheckOptions,
  ) {
    this.units = workspace.reachable(unit);
  }

  result(): Checked {
    const placed = this.placed(this.findings());
    const { left, allowed, used } = this.withoutAllowed(placed);
    const all = [...left, ...this.placed(this.unusedAllows(used))];
    all.sort((a, b) => this.order(a, b));
    const diagnostics = all.map((one) => this.diagnostic(one));
    return { diagnostics, allowed, summary: summaryOf(diagnostics, allowed), faults: this.faults };
  }

  /** One a place and code over the whole file: a taken component may be reached from several formulas. */
  private findings(): readonly Combined[] {
    const { unit, options } = this;
    const missing = this.workspace.missing(unit.path);
    const found: Combined[] = unit.findings.flatMap((finding) => this.worded(finding));
    const values = options.with ?? [];
    const formulas = options.only ? [options.only] : unit.formulas;
    for (const formula of formulas) found.push(...this.take(findingsOf(formula, { values, bare: false })));
    if (!options.only) found.push(...requestFindings(this.workspace, unit).flatMap((finding) => this.worded(finding)));
    if (!options.only)
      for (const base of this.workspace.bases(unit.path)) found.push(...this.take(findingsOf(base, { values: [], bare: true })));
    const byKey = new Map<string, Combined>();
    for (const finding of found) {
      if (
        finding.code === 'unknown-name' &&
        typeof finding.numbers.name === 'string' &&
        missing.has(nameKey(finding.numbers.name))
      )
        continue;
      const key = keyOf(finding);
      const known = byKey.get(key);
      byKey.set(key, known ? joined(known, finding) : finding);
    }
    return [...byKey.values()];
  }

  private take({ findings, faults }: ReturnType<typeof findingsOf>): readonly Combined[] {
    this.faults.push(...faults);
    return findings;
  }

  private worded(finding: RawFinding): readonly Combined[] {
    const worded = word(finding, { name: this.unit.path }, this.faults);
    return worded ? [worded] : [];
  }

  private placed(findings: readonly Combined[]): readonly Placed[] {
    return findings.flatMap((finding) => {
      const at = this.positionOf(finding.place);
      return at ? [{ finding, at }] : [];
    });
  }

  private positionOf(place: Place): Position | null {
    for (const { path, blockLines } of this.units) {
      const first = blockLines.get(place.block);
      if (first !== undefined) return { path, line: first + place.line, start: place.start, end: place.end };
    }
    return null;
  }

  /** Takes out what an `allow` with a reason hides; `used` are the codes of allows that hid something. */
  private withoutAllowed(placed: readonly Placed[]): {
    left: readonly Placed[];
    allowed: readonly Allowed[];
    used: ReadonlySet<Allow['codes'][number]>;
  } {
    const byLine = new Map<string, { allow: Allow; code: Allow['codes'][number] }>();
    for (const unit of this.units)
      for (const allow of unit.allows)
        if (allow.reason !== null && allow.hidesLine !== null)
          for (const code of allow.codes)
            byLine.set(`${unit.path}:${(unit.blockLines.get(allow.place.block) ?? 0) + allow.hidesLine}:${code.code}`, {
              allow,
              code,
            });
    const allowed: Allowed[] = [];
    const used = new Set<Allow['codes'][number]>();
    const left = placed.filter(({ finding, at }) => {
      const hidden = finding.code === 'syntax' ? undefined : byLine.get(`${at.path}:${at.line}:${finding.code}`);
      if (!hidden) return true;
      used.add(hidden.code);
      allowed.push({
        file: this.fileName(at.path),
        line: at.line + 1,
        code: finding.code,
        reason: hidden.allow.reason ?? '',
        message: finding.message,
        safety: ruleOf(finding.code)?.safety === true,
      });
      return false;
    });
    return { left, allowed, used };
  }

  private unusedAllows(used: ReadonlySet<Allow['codes'][number]>): readonly Combined[] {
    return this.unit.allows.flatMap((allow) => {
      if (allow.reason === null || allow.codes.length === 0) return this.unused(allow.place, { problem: 'no reason' }, allow);
      return allow.codes.flatMap((code) => {
        if (code.code === 'syntax') return this.unused(code.place, { problem: 'syntax' }, allow);
        if (!ruleOf(code.code)) return this.unknownCode(code, allow);
        if (used.has(code) || !this.canTell(allow)) return [];
        return this.unused(code.place, { problem: 'hides nothing', name: code.code }, allow);
      });
    });
  }

  private unknownCode({ code, place }: Allow['codes'][number], allow: Allow): readonly Combined[] {
    const near = nearestNames(
      code,
      rules.map((rule) => ({ key: rule.code, text: rule.code })),
    );
    const fixes = near.map((name): Fix => ({ title: `Change to ${name}`, edits: [{ ...place, text: name }] }));
    return this.unused(place, { problem: 'unknown code', name: code, nearest: near[0] ?? null }, allow, fixes);
  }

  private unused(place: Place, numbers: Combined['numbers'], allow: Allow, fixes: readonly Fix[] = []): readonly Combined[] {
    const takeOut: readonly Fix[] =
      allow.codes.length > 1 ? [] : [{ title: 'Take it out', edits: [{ ...allow.place, text: '' }] }];
    return this.worded({ code: 'unused-allow', place, numbers, fixes: [...fixes, ...takeOut] });
  }

  /** An allow can only be said to hide nothing where its line was judged in full. */
  private canTell(allow: Allow): boolean {
    if (this.options.only || (this.options.with?.length ?? 0) > 0) return false;
    if (this.unit.components.some(({ id }) => id === allow.place.block)) return false;
    return !this.unit.formulas.some(({ unreadable }) => unreadable);
  }

  private order(a: Placed, b: Placed): number {
    const other = Number(a.at.path !== this.unit.path) - Number(b.at.path !== this.unit.path);
    if (other !== 0) return other;
    if (a.at.path !== b.at.path) return a.at.path < b.at.path ? -1 : 1;
    return (
      a.at.line - b.at.line ||
      a.at.start - b.at.start ||
      rank(a.finding.severity) - rank(b.finding.severity) ||
      (a.finding.code < b.finding.code ? -1 : 1)
    );
  }

  private diagnostic({ finding, at }: Placed): Diagnostic {
    const { when } = finding;
    return {
      file: this.fileName(at.path),
      line: at.line + 1,
      column: at.start + 1,
      endLine: at.line + 1,
      endColumn: at.end + 1,
      severity: finding.severity,
      code: finding.code,
      message: finding.message,
      numbers: finding.numbers,
      ...(when && { when }),
      fixes: finding.fixes.flatMap((fix) => this.fix(fix)),
      related: finding.related.flatMap(({ place, message }) => {
        const where = this.positionOf(place);
        return where ? [{ file: this.fileName(where.path), line: where.line + 1, column: where.start + 1, message }] : [];
      }),
    };
  }

  private fix({ title, edits }: Fix): Diagnostic['fixes'] {
    const placed: FileEdit[] = [];
    for (const edit of edits) {
      const at = this.positionOf(edit);
      if (!at) return [];
      const line = at.line + 1;
      placed.push({
        file: this.fileName(at.path),
        line,
        column: at.start + 1,
        endLine: line,
        endColumn: at.end + 1,
        text: this.withLineEnds(edit.text, at.path),
      });
    }
    return [{ title, edits: placed }];
  }

  private withLineEnds(text: string, path: string): string {
    if (!text.includes('\n')) return text;
    const source = this.workspace.source(path);
    return 'file' in source && source.file.eol === '\r\n' ? text.replaceAll('\n', '\r\n') : text;
  }

  private fileName(path: string): string {
    return this.options.fileName ? this.options.fileName(path) : shown(path, this.workspace.files.root);
  }
}

/** The same code at the same place from two formulas: the worse words, and every combination of either. */
function joined(a: Combined, b: Combined): Combined {
  const worse = rank(b.severity) < rank(a.severity) ? b : a;
  if (a.when && b.when)
    return {
      ...worse,
      when: [...a.when, ...b.when.filter((two) => !a.when?.some((one) => JSON.stringify(one) === JSON.stringify(two)))],
    };
  const { when: _, ...always } = worse;
  return always;
}
