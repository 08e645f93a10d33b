/** Proposals of names: matter and components still unused first, kinds of the catalogue with their other names. */
import { allKinds, type Kind } from 'nappe';
import { nameKey } from 'nappe-grammar';
import { blockAt, groupOf, groupsOf } from '../names/groups.ts';
import { declaredIn } from '../names/things.ts';
import { usesIn } from '../names/uses.ts';
import { inIngredient, inStep } from '../names/written.ts';
import type { Analysis } from '../project.ts';
import { type About, CompletionItemKind, type Proposal, proposal } from './completion-item.ts';

/** Names a step may act on; what its line mentions already is left out. */
export function matterNames(analysis: Analysis, line: number, from: number, mentioned: readonly string[]): Proposal[] {
  const { file } = analysis;
  const block = blockAt(file, line);
  const used = usedIn(analysis, line);
  const names: { text: string; key: string; note: string; isNear: boolean }[] = [];
  for (const [key, { name, isStep, index }] of declaredIn(block))
    if (block.first + index !== line) names.push({ text: name.text, key, note: isStep ? 'result' : 'ingredient', isNear: true });
  for (const { text, key, note } of componentsFor(analysis, line))
    names.push({ text, key, note, isNear: block.heading?.word === 'assembly' });
  const seen = new Set(mentioned);
  return names.flatMap(({ text, key, note, isNear }) => {
    if (seen.has(key)) return [];
    seen.add(key);
    const rank = (used.has(key) ? 20 : 0) + (isNear ? 0 : 10);
    return [
      proposal(text, from, rank, CompletionItemKind.Variable, {
        text: inStep(text),
        note: used.has(key) ? `${note}, used` : note,
      }),
    ];
  });
}

/** Keys that other steps of the block name; for components also those of other blocks. */
function usedIn({ file }: Analysis, line: number): ReadonlySet<string> {
  const block = blockAt(file, line);
  const used = new Set<string>();
  for (const one of groupOf(file, block).blocks)
    for (const [index, node] of one.lines.entries()) {
      if (node.kind !== 'step' || one.first + index === line) continue;
      for (const { use, name } of usesIn(node))
        if ((use === 'matter' || use === 'party') && (one === block || !declaredIn(one).has(name.key))) used.add(name.key);
    }
  return used;
}

interface Named {
  readonly text: string;
  readonly key: string;
  readonly note: string;
}

/** Components of the formula and of the file, and what was taken. */
function* componentsFor({ file }: Analysis, line: number): Generator<Named> {
  const block = blockAt(file, line);
  const group = groupOf(file, block);
  for (const one of new Set([group, groupsOf(file)[0]]))
    for (const { heading, lines, first } of one?.blocks ?? []) {
      const { name } = heading ?? {};
      if (heading?.word === 'component' && name && first !== block.first)
        yield { text: name.text, key: name.key, note: 'component' };
      for (const node of lines)
        if (node.kind === 'take')
          for (const item of node.items) {
            const { text, key } = item.as ?? item.name;
            if (key !== 'equipment' && key !== 'prices')
              yield { text, key, note: node.from ? `from ${node.from.path}` : 'taken' };
          }
    }
}

/** What an ingredient line may weigh: components and house ingredients first, then the catalogue by the letters typed. */
export function ingredientNames(analysis: Analysis, line: number, from: number, typed: string): Proposal[] {
  const names: Proposal[] = [];
  for (const { text, note } of componentsFor(analysis, line))
    names.push(proposal(text, from, 0, CompletionItemKind.Class, { text: inIngredient(text), note }));
  for (const { heading } of analysis.file.blocks)
    if (heading?.word === 'ingredient' && heading.name)
      names.push(
        proposal(heading.name.text, from, 1, CompletionItemKind.Struct, {
          text: inIngredient(heading.name.text),
          note: 'house ingredient',
        }),
      );
  return [...names, ...kindNames(from, typed)];
}

/** Kinds with a name or another name in which every word typed begins a word. */
export function kindNames(from: number, typed: string): Proposal[] {
  const wanted = nameKey(typed)
    .split(' ')
    .filter((word) => word !== '');
  return spelled().flatMap(({ kind, names }) => {
    const found =
      wanted.length === 0
        ? names[0]
        : names.find(({ words }) => wanted.every((part) => words.some((word) => word.startsWith(part))));
    if (!found) return [];
    const about: About = { what: 'kind', word: kind.name };
    const note = found === names[0] ? {} : { note: kind.name };
    return [proposal(found.text, from, 5, CompletionItemKind.Value, { text: inIngredient(found.text), about, ...note })];
  });
}

interface Spelled {
  readonly kind: Kind;
  /** Its own name first. */
  readonly names: readonly { readonly text: string; readonly words: readonly string[] }[];
}

let allSpelled: readonly Spelled[] | undefined;

/** Every name of every kind by its words, made when first asked for. */
function spelled(): readonly Spelled[] {
  allSpelled ??= allKinds().map((kind) => ({
    kind,
    names: [kind.name, ...kind.synonyms].map((text) => ({ text, words: nameKey(text).split(' ') })),
  }));
  return allSpelled;
}

/** What other files offer to `take`: with its file, where the line names none yet. */
export function takeable(analysis: Analysis, from: number, written: (path: string) => string, only: string | null): Proposal[] {
  const { project, path } = analysis;
  const names: Proposal[] = [];
  for (const other of project.paths()) {
    if (other === path || /\.(md|markdown)$/i.test(other) || (only !== null && other !== only)) continue;
    for (const { name, takeable: isOffered } of project.offeredBy(other)) {
      if (!isOffered) continue;
      const text = name.text.trim();
      const take = inStep(text);
      const inserted = only === null ? `${take} from "${written(other)}"` : take;
      names.push(proposal(text, from, 0, CompletionItemKind.Class, { text: inserted, note: written(other) }));
    }
    if (names.length > mostTakeable) break;
  }
  return names;
}

const mostTakeable = 500;
