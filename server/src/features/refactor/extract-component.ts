/** Refactoring: a component moved into a file of its own, which the formula then takes it from. */
import { nameKey } from 'nappe-grammar';
import { type CodeAction, CodeActionKind, type TextDocumentEdit } from 'vscode-languageserver';
import { blockAt, groupOf, groupsOf, linesOf } from '../../names/groups.ts';
import { thingOf } from '../../names/symbols.ts';
import type { NamedThing } from '../../names/things.ts';
import { usesIn } from '../../names/uses.ts';
import { inStep } from '../../names/written.ts';
import type { Analysis } from '../../project.ts';
import { rangeOn } from '../../ranges.ts';
import { folderOf } from '../../uris.ts';

/** Only for a client that can make files from an edit. */
export function extractComponent(analysis: Analysis, number: number): CodeAction[] {
  const { file, project, path } = analysis;
  if (analysis.isMarkdown) return [];
  const block = blockAt(file, number);
  const { heading, first } = block;
  if (heading?.word !== 'component' || !heading.name || number !== first) return [];
  const name = heading.name.text;
  const target = freePath(analysis, name);
  const written = target.slice(folderOf(path).length + 1);
  const base = { title: `Move “${name}” to ${written}`, kind: CodeActionKind.RefactorExtract };
  const reason = whyNot(analysis, number);
  if (reason !== null) return [{ ...base, disabled: { reason } }];
  const { eol } = file;
  const last = lastWritten(block);
  const text = block.lines.slice(0, last - first).map((line) => line.text);
  const content = `${[...takesFor(analysis, number), ...text].join(eol)}${eol}`;
  const removed = { start: { line: first, character: 0 }, end: { line: Math.min(block.end, file.lines.length), character: 0 } };
  const own: TextDocumentEdit = {
    textDocument: { uri: project.uriOf(path), version: null },
    edits: [takeLine(analysis, number, `take ${inStep(name)} from "${written}"`), { range: removed, newText: '' }],
  };
  const uri = project.uriOf(target);
  const filled: TextDocumentEdit = {
    textDocument: { uri, version: null },
    edits: [{ range: rangeOn(0, { start: 0, end: 0 }), newText: content }],
  };
  return [{ ...base, edit: { documentChanges: [{ kind: 'create', uri, options: { ignoreIfExists: false } }, filled, own] } }];
}

/** What would change its meaning by being moved, in words for a cook; null where nothing would. */
function whyNot(analysis: Analysis, number: number): string | null {
  const { file } = analysis;
  const block = blockAt(file, number);
  if (block.heading?.guard) return 'it is there only for some choices';
  for (const [index, line] of block.lines.entries()) {
    if (line.problems.length > 0) return `line ${block.first + index + 1} cannot be read`;
    for (const use of usesIn(line)) {
      if (use.use === 'value') return 'its lines differ between choices, which a file of its own does not have';
      const thing = thingOf(analysis.project, analysis.path, block.first + index, use);
      if (thing && stays(thing, analysis, block.first)) return `it uses “${use.name.text}”, which stays here`;
    }
  }
  for (const { line } of linesOf(groupOf(file, block)))
    if (line.kind === 'ingredient' && line.name.key === block.heading?.name?.key)
      return 'another part weighs a share of it, which a batch of its own would not be';
  return null;
}

/** A component, an alias, a house ingredient or kit of this file. */
function stays({ kind, path, line }: NamedThing, analysis: Analysis, first: number): boolean {
  if (path !== analysis.path || kind === 'ingredient' || kind === 'result') return false;
  return !(kind === 'component' && line === first);
}

/** The `take` lines of this file that bring what the component uses. */
function takesFor({ file, project, path }: Analysis, number: number): readonly string[] {
  const block = blockAt(file, number);
  const foreign = new Set(
    block.lines.flatMap((line, index) =>
      usesIn(line).flatMap((use) => {
        const thing = thingOf(project, path, block.first + index, use);
        return thing && thing.path !== path ? [use.name.key] : [];
      }),
    ),
  );
  const takes = [...new Set([groupsOf(file)[0], groupOf(file, block)])].flatMap((group) =>
    [...(group ? linesOf(group) : [])].map(({ line }) => line),
  );
  const lines = takes.flatMap((line) => {
    if (line.kind !== 'take' || !line.from) return [];
    const items = line.items
      .filter(({ name, as }) => foreign.has((as ?? name).key))
      .map(({ name, as }) => `${inStep(name.text)}${as ? ` as ${inStep(as.text)}` : ''}`);
    const reference = line.text.slice(line.from.start, line.from.end);
    return items.length === 0 ? [] : [`take ${items.join(', ')} from ${reference}`];
  });
  return lines.length === 0 ? [] : [...lines, ''];
}

/** After the file's last `take` above its formula, else above the formula. */
function takeLine({ file }: Analysis, number: number, text: string) {
  const above = groupsOf(file)[0];
  const lastTake = above ? [...linesOf(above)].findLast(({ line }) => line.kind === 'take')?.number : undefined;
  const head = groupOf(file, blockAt(file, number)).head?.first ?? blockAt(file, number).first;
  const line = lastTake === undefined ? head : lastTake + 1;
  return { range: rangeOn(line, { start: 0, end: 0 }), newText: `${text}${file.eol}${lastTake === undefined ? file.eol : ''}` };
}

function lastWritten({ first, lines }: { readonly first: number; readonly lines: readonly { readonly kind: string }[] }): number {
  let end = lines.length;
  while (end > 1 && lines[end - 1]?.kind === 'blank') end -= 1;
  return first + end;
}

/** Beside this file, named for the component. */
function freePath({ project, path }: Analysis, name: string): string {
  const slug =
    nameKey(name)
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'component';
  const known = new Set(project.paths());
  const isTaken = (candidate: string) => known.has(candidate) || project.fileAt(candidate) !== null;
  for (let count = 1; ; count++) {
    const candidate = `${folderOf(path)}/${slug}${count === 1 ? '' : `-${count}`}.nappe`;
    if (!isTaken(candidate) || count > 99) return candidate;
  }
}
