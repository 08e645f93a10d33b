/**
 * Texts with marks: `<|>` is the cursor, `<|…|>` a range, and a line `--- name` begins another file.
 * Marks are taken out of the text before the server sees it.
 */

export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Marked {
  readonly text: string;
  readonly cursors: readonly Position[];
  readonly ranges: readonly { readonly start: Position; readonly end: Position }[];
}

export function marked(source: string): Marked {
  const cursors: Position[] = [];
  const ranges: { start: Position; end: Position }[] = [];
  const open: Position[] = [];
  let text = '';
  let line = 0;
  let character = 0;
  for (let at = 0; at < source.length; ) {
    const here = { line, character };
    if (source.startsWith('<|>', at)) {
      cursors.push(here);
      at += 3;
    } else if (source.startsWith('<|', at)) {
      open.push(here);
      at += 2;
    } else if (source.startsWith('|>', at) && open.length > 0) {
      ranges.push({ start: open.pop() as Position, end: here });
      at += 2;
    } else {
      const letter = source[at] as string;
      text += letter;
      at += 1;
      if (letter === '\n') {
        line += 1;
        character = 0;
      } else character += 1;
    }
  }
  return { text, cursors, ranges };
}

/** The files of a fixture by name; what stands above the first `---` is `main.nappe`. */
export function filesOf(fixture: string): ReadonlyMap<string, Marked> {
  const files = new Map<string, string>();
  let name = 'main.nappe';
  for (const line of fixture.split(/(?<=\n)/)) {
    const head = /^--- (\S+)\s*$/.exec(line);
    if (head?.[1]) name = head[1];
    else files.set(name, (files.get(name) ?? '') + line);
  }
  return new Map([...files].map(([file, text]) => [file, marked(text)]));
}

interface Edit {
  readonly range: { readonly start: Position; readonly end: Position };
  readonly newText: string;
}

/** A text after the protocol's edits, all of them relative to the text before. */
export function edited(text: string, edits: readonly Edit[]): string {
  const starts = [0];
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
  const offset = ({ line, character }: Position) => Math.min(text.length, (starts[line] ?? text.length) + character);
  const placed = edits.map(({ range, newText }, i) => ({ start: offset(range.start), end: offset(range.end), newText, i }));
  placed.sort((a, b) => b.start - a.start || b.end - a.end || b.i - a.i);
  return placed.reduce((result, { start, end, newText }) => result.slice(0, start) + newText + result.slice(end), text);
}
