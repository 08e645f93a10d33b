/** Fences carried out: formulas become cards, requests what they ask for, the rest is shown or stands by. */
import type { RequestLine } from 'nappe-grammar';
import { comparableOf } from '../compare/index.ts';
import { defaultSelection } from '../resolve/choices.ts';
import type { Formula, Request, Unit } from '../resolve/model.ts';
import { locate } from '../resolve/paths.ts';
import { clockOf, timeline, tooLong } from '../timeline/index.ts';
import { weighOut } from '../weigh-out/index.ts';
import type { Fault, HandoutInput, Part } from './model.ts';
import { Counter, type Meant, meantBy, type Problem, sentence } from './orders.ts';

/** Lines of a fence's content, from 0, end exclusive. */
export interface Fence {
  readonly first: number;
  readonly end: number;
  /** `nappe source`. */
  readonly asText: boolean;
}

export class Fences {
  private readonly unit: Unit;
  private readonly counter: Counter;
  readonly faults: Fault[] = [];

  constructor(private readonly input: HandoutInput) {
    this.unit = input.workspace.unit(input.path);
    this.counter = new Counter(input);
  }

  /** What stands in a fence's place; null where nothing of it was read as notation, as in a fence inside a list. */
  partsOf(fence: Fence): readonly Part[] | null {
    const source = this.input.workspace.source(this.input.path);
    if ('refused' in source) return null;
    const lines = source.file.lines.slice(fence.first, fence.end);
    if (lines.every(({ text }) => text.trim() === '')) return fence.end > fence.first ? null : [];
    const formulas = this.unit.formulas.flatMap((formula) => this.at(formula.place, fence, formula));
    const requests = this.unit.requests.flatMap((request) => this.at(request.place, fence, request));
    const shown: Part = { is: 'source', first: fence.first, end: fence.end };
    const made = [...(fence.asText ? [] : formulas), ...requests].sort((a, b) => a.line - b.line);
    const parts = made.flatMap(({ line, value }) =>
      'line' in value ? this.requested(value, line + 1) : this.formula(value, line + 1, shown),
    );
    const faulty = lines.some(({ problems }) => problems.length > 0);
    if (fence.asText || (made.length === 0 && (faulty || this.standsAlone(fence)))) return [shown, ...parts];
    return parts;
  }

  private at<T>(place: Formula['place'], fence: Fence, value: T): { readonly line: number; readonly value: T }[] {
    const line = this.input.workspace.locate(place, this.unit)?.line ?? -1;
    return line >= fence.first && line < fence.end ? [{ line, value }] : [];
  }

  /** A base or an ingredient of the handout's own, above any formula, which nothing else would show. */
  private standsAlone(fence: Fence): boolean {
    return this.unit.components.some(({ place }) => this.at(place, fence, true).length > 0);
  }

  private formula(formula: Formula, line: number, shown: Part): readonly Part[] {
    if (formula.unreadable) return [this.fault(line, `A line of ${formula.name} cannot be read, so it has no card.`), shown];
    return this.card({ unit: this.unit, formula, selection: defaultSelection(formula) }, { yield: null }, line);
  }

  private card(meant: Meant, size: Parameters<Counter['card']>[1], line: number): readonly Part[] {
    const card = this.counter.card(meant, size);
    if ('problem' in card) return [this.fault(line, card.problem)];
    if (!card.checked)
      this.faults.push({ line, message: `${card.formula} has errors: its card is marked as not checked through.` });
    return [{ is: 'card', card }];
  }

  private requested({ line: request, above }: Request, line: number): readonly Part[] {
    if (request.problems.length > 0) return [this.fault(line, request.problems[0]?.message ?? 'This line cannot be read.')];
    if (request.word === 'compare') return this.compared(request, line);
    const meant = request.entries.map((entry) => ({ entry, meant: meantBy(entry, above, this.input) }));
    const faults = meant.flatMap((one) => this.faultOf(one.meant, line));
    const good = meant.flatMap((one) => ('problem' in one.meant ? [] : [{ entry: one.entry, meant: one.meant }]));
    if (request.word === 'card') return [...faults, ...good.flatMap((one) => this.card(one.meant, one.entry, line))];
    const orders = good.map((one) => ({ ...one, order: this.counter.order(one.meant, one.entry) }));
    const placed = orders.flatMap(({ order, meant: what }) => ('problem' in order ? [] : [{ order, meant: what }]));
    const all = [...faults, ...orders.flatMap(({ order }) => this.faultOf(order, line))];
    if (placed.length === 0) return all;
    const unchecked = new Set(placed.filter((one) => this.counter.hasErrors(one.meant)).map(({ order }) => order));
    for (const { formula } of unchecked) this.faults.push({ line, message: `${formula.name} has errors.` });
    const list = placed.map(({ order }) => order);
    if (request.word === 'weigh-out') return [...all, { is: 'weigh-out', list: weighOut(list, unchecked) }];
    const ready = request.ready?.text;
    if (ready !== undefined && clockOf(ready) === null) return [...all, this.fault(line, `“${ready}” is no time of day.`)];
    const problem = tooLong(list);
    if (problem !== null) return [...all, this.fault(line, problem)];
    return [...all, { is: 'timeline', plan: timeline(list, { ...(ready !== undefined && { ready }), unchecked }) }];
  }

  private compared({ entries }: RequestLine, line: number): readonly Part[] {
    const { workspace, path, fileName } = this.input;
    const sides = entries.map(({ reference }) => {
      if (reference === null) return { problem: 'Write which two files are compared.' };
      const located = locate(reference.path, path, workspace.files.root);
      if ('outside' in located) return { problem: `“${reference.path}” is not read: ${located.outside}.` };
      const source = workspace.source(located.path);
      if ('refused' in source) return { problem: `“${reference.path}”: ${sentence(source.why)}` };
      return { workspace, path: located.path, file: fileName(located.path), formula: reference.formula };
    });
    const [old, next] = sides;
    const faults = sides.flatMap((side) => this.faultOf(side, line));
    if (!old || !next || 'problem' in old || 'problem' in next) return faults;
    const { comparisons } = comparableOf(old, next);
    if (comparisons.length === 0) return [this.fault(line, `${old.file} and ${next.file} have no formula in common to compare.`)];
    return comparisons.map((comparison): Part => ({ is: 'compare', comparison }));
  }

  private faultOf(one: object | Problem, line: number): readonly Part[] {
    return 'problem' in one ? [this.fault(line, one.problem)] : [];
  }

  private fault(line: number, message: string): Part {
    const fault = { line, message };
    this.faults.push(fault);
    return { is: 'fault', fault };
  }
}
