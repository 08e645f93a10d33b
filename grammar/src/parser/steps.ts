/** Builds a step and holds it to its verb: which clauses it takes, each once, and what it needs. */

import { blame, replaceFix, type Scan, shown } from '../scanner/scan.ts';
import type { Brix, Clause, Name, Operand, Quantity, Reading, Span, StepLine, Text, Varying } from '../tree.ts';
import { type ClauseUse, commonUses, isVesselNoun, type Need, type VerbRow, verbOf } from '../vocabulary/index.ts';
import type { Built } from './built.ts';
import { buildClause } from './clauses.ts';
import type { Draft, Measured, RawOperand } from './drafts.ts';
import { blameKind, blameNegative, only, quantityOf, varying } from './measured.ts';
import { buildOperand } from './operands.ts';
import { baseOf, type LineReading, run } from './reading.ts';
import { bareClause } from './step-parser.ts';

/** A step while it is put together. */
interface Parts {
  verb: VerbRow;
  readonly verbSpan: Span;
  operands: Operand[];
  amount: Varying<Quantity> | null;
  check: Varying<Reading | Brix> | null;
  doing: Text | null;
  readonly clauses: Clause[];
  readonly uses: ClauseUse[];
  /** A `to` stands anywhere in the step. */
  readonly hasTo: boolean;
}

export function buildStep(reading: LineReading, verb: VerbRow, verbSpan: Span): StepLine {
  const draft = run(reading, 'step');
  const { scan } = reading;
  const hasTo = draft.clauses.some((raw) => raw.word === 'to');
  const parts: Parts = { verb, verbSpan, operands: [], amount: null, check: null, doing: null, clauses: [], uses: [], hasTo };
  for (const raw of draft.operands) takeOperand(scan, parts, raw);
  for (const raw of draft.clauses) {
    const clause = buildClause(scan, raw, verb);
    if (clause !== null) takeClause(scan, parts, clause);
  }
  blameGuardInside(scan, draft);
  blameNeeds(reading, parts);
  const { operands, amount, check, doing, clauses } = parts;
  const { text, span, comment, problems } = baseOf(reading);
  const { guard } = draft;
  const word = parts.verb.word;
  return { kind: 'step', text, span, comment, problems, verb: word, verbSpan, operands, amount, check, doing, clauses, guard };
}

function takeOperand(scan: Scan, parts: Parts, raw: RawOperand): void {
  const { verb } = parts;
  if (verb.word === 'do') takeDoing(scan, parts, raw);
  else if (raw.name === null && raw.measured !== null) takeMeasure(scan, parts, raw.measured);
  else if (verb.word === 'check') {
    blame(scan, raw, 'After `check` a reading was expected, such as `check 84 °C` or `check 65 brix`.');
  } else {
    const operand = buildOperand(scan, raw);
    if (operand !== null) parts.operands.push(operand);
  }
}

/** `do "free text"`. */
function takeDoing(scan: Scan, parts: Parts, raw: RawOperand): void {
  const { name, start, end } = raw;
  const text = scan.text.slice(start, end).split('"').join('');
  if (name?.quoted !== true)
    blame(scan, raw, `What is done stands in quotes: \`do "${text}"\`.`, [replaceFix('Put it in quotes', raw, `"${text}"`)]);
  parts.doing ??= { text: name?.quoted === true ? name.text : text, quoted: true, start, end };
}

/** A bare measure: the reading of `check`, or the amount of `portion`, `pipe`, `spread` and `pour`. */
function takeMeasure(scan: Scan, parts: Parts, measured: Measured): void {
  const { verb } = parts;
  if (verb.word === 'check') {
    const check = varying<Reading | Brix>(scan, measured, only('temperature', 'brix'));
    if (check === null) blameKind(scan, measured, 'a reading such as 84 °C or 65 brix', ['°C', 'brix']);
    else parts.check ??= check;
    return;
  }
  const { kind } = measured.base;
  if (kind !== 'duration' && kind !== 'temperature') takeAmount(scan, parts, measured);
  else {
    const clause = buildClause(scan, bareClause(measured), verb);
    if (clause !== null) takeClause(scan, parts, clause);
  }
}

function takeAmount(scan: Scan, parts: Parts, measured: Measured): void {
  const amount = varying(scan, measured, quantityOf);
  if (parts.verb.amount && amount !== null && parts.operands.length === 0) {
    blameNegative(scan, amount);
    parts.amount ??= amount;
  } else {
    const written = shown(scan.text.slice(measured.start, measured.end));
    blame(scan, measured, `${written} of what? Write \`of\` and a name after it, such as \`60 g of cream\`.`);
  }
}

function takeClause(scan: Scan, parts: Parts, built: Built): void {
  const { verb } = parts;
  const { use, clause } = built;
  if (!verb.takes.includes(use) && !commonUses.includes(use) && !isVesselPlace(use, clause)) refuse(scan, parts, built);
  else if (parts.clauses.some((other) => wordOf(other) === wordOf(clause))) {
    const fix = replaceFix('Remove the second one', { start: before(scan, clause.start), end: clause.end }, '');
    blame(scan, clause, `\`${wordOf(clause)}\` stands twice in this step; each clause stands once.`, [fix], 'wrong-clause');
  } else {
    parts.clauses.push(clause);
    parts.uses.push(use);
  }
}

/** The word by which clauses are counted: a tool and the names after `with` are two, `at` and `at room` one. */
function wordOf(clause: Clause): string {
  return clause.word === 'at room' ? 'at' : clause.word;
}

/** `cook in saucepan`: a vessel is a place for every verb. */
function isVesselPlace(use: ClauseUse, clause: Clause): boolean {
  return use === 'in name' && clause.word === 'in' && 'text' in clause.target && isVesselNoun(clause.target.text);
}

/** A clause the verb does not take: says what was meant where that is plain, and reads the step so. */
function refuse(scan: Scan, parts: Parts, { use, clause, operand }: Built): void {
  if (clause.word === 'in' && 'text' in clause.target) refuseIn(scan, parts, clause, operand ?? wholeOf(clause.target));
  else {
    const { verb } = parts;
    const meant = meantWord(verb, use, clause, parts.hasTo);
    const removed = replaceFix('Remove it', { start: before(scan, clause.start), end: clause.end }, '');
    const fixes = meant === null ? [removed] : [replaceFix(`Write ${meant}`, clause.wordSpan, meant), removed];
    blame(scan, clause, `\`${verb.word}\` does not take \`${use}\`; it takes ${takenList(verb)}.`, fixes, 'wrong-clause');
  }
}

/** The clause word that was probably meant, among those the verb takes. */
function meantWord({ takes }: VerbRow, use: ClauseUse, { word }: Clause, hasTo: boolean): string | null {
  if (word === 'into' && takes.includes('in name')) return 'in';
  if (word === 'over' && takes.includes('into')) return 'into';
  if (word === 'at' && takes.includes('to temperature') && !hasTo) return 'to';
  return use === 'to temperature' && takes.includes('at') ? 'at' : null;
}

type InClause = Clause & { readonly word: 'in' };

/** `whisk in butter` is `add butter`; `fold cream in custard` is `into`. */
function refuseIn(scan: Scan, parts: Parts, clause: InClause, operand: Operand): void {
  const { verb } = parts;
  if (parts.operands.length === 0) readAsAdd(scan, parts, clause, operand);
  else if (verb.takes.includes('into')) {
    const message = `\`${verb.word}\` does not take \`in\` and a name; what takes the other in stands after \`into\`.`;
    blame(scan, clause, message, [replaceFix('Write into', clause.wordSpan, 'into')], 'wrong-clause');
    parts.clauses.push({ ...clause, word: 'into', target: operand.name });
    parts.uses.push('into');
  } else {
    const message = `\`${verb.word}\` does not take \`in\` and a name; an item of the equipment stands after \`using\`.`;
    blame(scan, clause, message, [replaceFix('Write using', clause.wordSpan, 'using')], 'wrong-clause');
  }
}

function readAsAdd(scan: Scan, parts: Parts, clause: InClause, operand: Operand): void {
  const { verb, verbSpan } = parts;
  const meant = verb.word === 'fold' ? verb : verbOf('add')!;
  const what = `${meant.word} ${scan.text.slice(operand.start, operand.end)}`;
  const fix = replaceFix(`Write ${what}`, { start: verbSpan.start, end: operand.start }, `${meant.word} `);
  const message = `What goes into the matter in work is written ${shown(what)}; \`${verb.word}\` does not take \`in\` and a name.`;
  blame(scan, clause, message, [fix], 'wrong-clause');
  parts.verb = meant;
  parts.operands.push(operand);
}

function wholeOf(name: Name): Operand {
  return { kind: 'operand', name, part: null, start: name.start, end: name.end };
}

function takenList(verb: VerbRow): string {
  const words = [...verb.takes, 'for', 'until', 'using', 'as', 'losing'].map((use) => `\`${use}\``);
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function before(scan: Scan, at: number): number {
  return at > 0 && scan.text[at - 1] === ' ' ? at - 1 : at;
}

function blameGuardInside(scan: Scan, draft: Draft): void {
  const { guard } = draft;
  if (!draft.guardInside || guard === null) return;
  const text = scan.text.slice(guard.start, guard.end);
  blame(scan, guard, `\`${guard.word}\` ends the line; write everything else before it.`, [
    {
      title: 'Move it to the end',
      edits: [
        { start: before(scan, guard.start), end: guard.end, text: '' },
        { start: scan.end, end: scan.end, text: ` ${text}` },
      ],
    },
  ]);
}

/** What the verb cannot do without. */
function blameNeeds(reading: LineReading, parts: Parts): void {
  const missing = parts.verb.needs.find((need) => !need.some((part) => has(parts, part)));
  if (missing === undefined) return;
  const { start, end } = parts.verbSpan;
  // `infuse for 20 min` below the step that put the aromatics in.
  const waits = parts.verb.word === 'infuse' && parts.operands.length === 0;
  const wait = waits ? ' Where they lie in it already, write `rest for 20 min`.' : '';
  const fixes = waits ? [replaceFix('Write rest', { start, end }, 'rest')] : [];
  const message = `\`${parts.verb.word}\` needs ${missing.map((part) => needLabels[part] ?? `\`${part}\``).join(' or ')}: \`${parts.verb.template.replace(/[<>]/g, '')}\`.${wait}`;
  blame(reading.scan, { start, end: reading.span.end }, message, fixes);
}

function has(parts: Parts, need: Need[number]): boolean {
  if (need === 'operand') return parts.operands.length > 0;
  if (need === 'reading') return parts.check !== null;
  if (need === 'text') return parts.doing !== null;
  return parts.uses.includes(need);
}

const needLabels: Readonly<Partial<Record<Need[number], string>>> = {
  operand: 'a name after it',
  reading: 'a reading after it',
  text: 'a text in quotes after it',
  'in name': '`in` and a name',
  'to mass': '`to` and a mass',
  'to brix': '`to` and a sugar reading',
  at: '`at` and a temperature',
  for: '`for` and a time',
  into: '`into` and a name',
  losing: '`losing` and a percentage',
};
