/** Document symbols: formulas with their components, ingredient lines and named results, in the order written. */
import type { Block } from 'nappe-grammar';
import { type DocumentSymbol, type SymbolInformation, SymbolKind } from 'vscode-languageserver';
import { type Group, groupsOf } from '../names/groups.ts';
import type { Analysis } from '../project.ts';
import { rangeOfLines, rangeOn } from '../ranges.ts';

export function documentSymbols({ file }: Analysis): DocumentSymbol[] {
  return groupsOf(file).flatMap((group) =>
    group.head ? [formulaSymbol(group, group.head)] : group.blocks.flatMap(blockSymbols),
  );

  function formulaSymbol({ blocks }: Group, head: Block): DocumentSymbol {
    const end = lastWritten(blocks.at(-1) ?? head);
    return {
      ...headingOf(head, 'formula'),
      kind: SymbolKind.Class,
      range: rangeOfLines(file, head.first, end),
      children: [...inside(head), ...blocks.filter((block) => block !== head).flatMap(blockSymbols)],
    };
  }

  function blockSymbols(block: Block): DocumentSymbol[] {
    const { heading } = block;
    if (!heading) return inside(block);
    const symbol = { ...headingOf(block, heading.word), kind: kinds[heading.word], children: inside(block) };
    return [{ ...symbol, range: rangeOfLines(file, block.first, lastWritten(block)) }];
  }

  function inside(block: Block): DocumentSymbol[] {
    return block.lines.flatMap((line, index): DocumentSymbol[] => {
      const number = block.first + index;
      const range = rangeOn(number, line.span);
      if (line.kind === 'ingredient') {
        const detail = line.text.slice(line.quantity.base.start, line.quantity.base.end);
        return [{ name: line.name.text, detail, kind: SymbolKind.Variable, range, selectionRange: rangeOn(number, line.name) }];
      }
      if (line.kind === 'equipment')
        return [{ name: line.name.text, kind: SymbolKind.Object, range, selectionRange: rangeOn(number, line.name) }];
      if (line.kind === 'header' && line.word === 'choice') {
        const detail = line.values.map(({ text }) => text).join(', ');
        return [{ name: line.name.text, detail, kind: SymbolKind.Enum, range, selectionRange: rangeOn(number, line.name) }];
      }
      if (line.kind !== 'step') return [];
      const as = line.clauses.find(({ word }) => word === 'as');
      if (as?.word !== 'as') return [];
      return [
        { name: as.name.text, detail: line.verb, kind: SymbolKind.Variable, range, selectionRange: rangeOn(number, as.name) },
      ];
    });
  }
}

/** For clients without a hierarchy: the same symbols in a row. */
export function flatSymbols(analysis: Analysis): SymbolInformation[] {
  const flat = (symbols: readonly DocumentSymbol[], containerName?: string): SymbolInformation[] =>
    symbols.flatMap(({ name, kind, range, children }) => [
      { name, kind, location: { uri: analysis.uri, range }, ...(containerName !== undefined && { containerName }) },
      ...flat(children ?? [], name),
    ]);
  return flat(documentSymbols(analysis));
}

const kinds = {
  formula: SymbolKind.Class,
  component: SymbolKind.Function,
  assembly: SymbolKind.Function,
  ingredient: SymbolKind.Struct,
  equipment: SymbolKind.Namespace,
  prices: SymbolKind.Namespace,
} as const;

/** A block without a name goes by its word. */
function headingOf({ heading, first }: Block, word: string): Pick<DocumentSymbol, 'name' | 'selectionRange'> {
  const name = heading?.name;
  const span = name ?? heading?.wordSpan ?? { start: 0, end: 0 };
  return { name: name?.text.trim() || word, selectionRange: rangeOn(first, span) };
}

/** The line after the last one that is not blank. */
function lastWritten({ first, lines }: Block): number {
  let end = lines.length;
  while (end > 1 && lines[end - 1]?.kind === 'blank') end -= 1;
  return first + end;
}
