/** Scaling a formula by any factor changes no diagnostic that does not depend on size. */
import { join } from 'node:path';
import fc from 'fast-check';
import { checkUnit, combinations, createWorkspace, type Formula, type Run, rules, runFormula } from 'nappe';
import { parse } from 'nappe-grammar';
import { describe, expect, test } from 'vitest';
import { workspaceAt } from '../diagnostics/corpora.ts';
import { generated, resolved, seed, textOf, type Written, written } from './formulas.ts';

/** Codes whose limits are grams, millilitres or the time a mass of that size takes. */
const ofSize: ReadonlySet<string> = new Set([
  'leftover',
  'overdrawn',
  'over-capacity',
  'yield-mismatch',
  'cooling-too-slow',
  'checkpoint-contradicted',
  'set-too-short',
  'foam-waits',
  'hot-sugar',
]);

/** `code place` of everything the run and the rules find. */
function found(run: Run): readonly string[] {
  const codes = run.findings.map(({ code, place }) => `${code} ${place.block}:${place.line}`);
  for (const rule of rules)
    rule.check?.(run, ({ place }) => {
      codes.push(`${rule.code} ${place.block}:${place.line}`);
    });
  return [...new Set(codes)].filter((code) => !ofSize.has(code.split(' ')[0] ?? '')).sort();
}

const factor = fc.oneof(fc.constantFrom(0.5, 2, 3, 10), fc.double({ min: 0.05, max: 100, noNaN: true }));

const formulasOf = ({ root, path }: Written): readonly Formula[] => workspaceAt(root).unit(path).formulas;

describe('by the run’s own factor', () => {
  test('generated formulas', () => {
    fc.assert(
      fc.property(generated, factor, (one, times) => {
        const text = textOf(one);
        // What stands unread in the cold is as warm as a mass of its size comes to be.
        fc.pre(!/^ {2}(cool|chill|freeze|rest) /m.test(text));
        const { formula } = resolved(text);
        expect(found(runFormula(formula, {}, { factor: times }))).toEqual(found(runFormula(formula, {})));
      }),
      { seed, numRuns: 150 },
    );
  });

  test('the written formulas, every combination', () => {
    const all = written.flatMap((one) => formulasOf(one).map((formula) => ({ one, formula })));
    fc.assert(
      fc.property(fc.constantFrom(...all), factor, ({ formula }, times) => {
        for (const selection of combinations(formula.choices))
          expect(found(runFormula(formula, selection, { factor: times })), formula.name).toEqual(
            found(runFormula(formula, selection)),
          );
      }),
      { seed, numRuns: 250 },
    );
  });

  test('twice as much weighs twice as much, step by step', () => {
    fc.assert(
      fc.property(generated, factor, (one, times) => {
        const { formula } = resolved(textOf(one));
        const once = runFormula(formula, {});
        const scaled = runFormula(formula, {}, { factor: times });
        once.records.forEach(({ result }, i) => {
          const other = scaled.records[i]!.result;
          expect(other.grams.low / times).toBeCloseTo(result.grams.low, 6);
          expect(other.grams.high / times).toBeCloseTo(result.grams.high, 6);
          expect(other.gelatin200 / times).toBeCloseTo(result.gelatin200, 6);
        });
      }),
      { seed, numRuns: 100 },
    );
  });
});

/** The text with every mass, volume, piece and count of its own multiplied; a step's portions stay, their number grows. */
function scaledText(text: string, times: number): string {
  const lines = text.split('\n');
  parse(text).lines.forEach((line, i) => {
    const edits: { start: number; end: number; low: number; high: number; ranged: boolean; rest: string }[] = [];
    const quantity = (q: {
      kind: string;
      start: number;
      end: number;
      low: number;
      high: number;
      ranged: boolean;
      unit: string;
      each: boolean;
    }) => {
      if (q.unit === '%' || q.unit === 'some' || q.each) return;
      const unit = line.text.slice(q.start, q.end).replace(/^[\d\s./½¼¾⅓⅔⅛-]+(\.\.|–)?[\d\s./½¼¾-]*/u, '');
      edits.push({ start: q.start, end: q.end, low: q.low, high: q.high, ranged: q.ranged, rest: unit === '' ? '' : ` ${unit}` });
    };
    if (line.kind === 'ingredient') [line.quantity.base, ...line.quantity.overrides.map(({ then }) => then)].forEach(quantity);
    if (line.kind === 'step') {
      for (const { part } of line.operands)
        if (part?.kind === 'quantity') [part.quantity.base, ...part.quantity.overrides.map(({ then }) => then)].forEach(quantity);
      for (const clause of line.clauses)
        if (clause.word === 'to')
          for (const target of [clause.target.base, ...clause.target.overrides.map(({ then }) => then)])
            if (target.kind === 'quantity') quantity(target);
    }
    if (line.kind === 'header' && line.word === 'makes') {
      const { count, quantity: whole, noun } = line.yield;
      if (whole) quantity(whole);
      else if (count !== null && noun)
        edits.push({ start: line.yield.start, end: noun.start, low: count, high: count, ranged: false, rest: ' ' });
    }
    for (const { start, end, low, high, ranged, rest } of edits.sort((a, b) => b.start - a.start)) {
      const number = (value: number): string => String(Number((value * times).toFixed(6)));
      const scaled = ranged ? `${number(low)}-${number(high)}` : number(low);
      lines[i] = `${lines[i]!.slice(0, start)}${scaled}${rest}${lines[i]!.slice(end)}`;
    }
  });
  return lines.join('\n');
}

describe('written larger by hand', () => {
  const wholes = written.filter(({ path }) => /well-made|samples\/[^/]*\.nappe|samples\/course/.test(path));

  const findings = ({ root, path }: Written, text: string): readonly string[] => {
    const onDisk = workspaceAt(root).files;
    const files = { root, read: (asked: string) => (asked === path ? { text } : onDisk.read(asked)) };
    return checkUnit(createWorkspace(files), path)
      .diagnostics.filter(({ code, file }) => !ofSize.has(code) && join(root, file) === path)
      .map(({ code, line, severity }) => `${severity} ${code} ${line}`)
      .sort();
  };

  test.each(wholes.map((one) => [one.path.split('/').slice(-2).join('/'), one] as const))('%s', (_, one) => {
    for (const times of [2, 5]) expect(findings(one, scaledText(one.text, times))).toEqual(findings(one, one.text));
  });
});
