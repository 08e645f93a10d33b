/** Remembers lines read before, so that a line that did not change is the identical object; bounded in two generations. */

import { parseLine } from './parser/line.ts';
import type { Line, LineContext } from './tree.ts';

/** Lines a generation holds before it becomes the old one and the older one is forgotten. */
const generationSize = 8_192;

export interface LineCache {
  /** The line for a text in a context, read now or before. */
  read(text: string, context: LineContext): Line;
  /** The same line without its problem: unreadable lines in a row are one diagnostic, on the first. */
  silenced(line: Line): Line;
}

export function createCache(size = generationSize): LineCache {
  let young = emptyGeneration();
  let old = emptyGeneration();
  let count = 0;
  const silent = new WeakMap<Line, Line>();

  function remember(text: string, context: LineContext, line: Line): Line {
    if (count >= size) {
      old = young;
      young = emptyGeneration();
      count = 0;
    }
    count += 1;
    young[context].set(text, line);
    return line;
  }

  return {
    read(text, context) {
      const known = young[context].get(text);
      if (known !== undefined) return known;
      const older = old[context].get(text);
      if (older !== undefined) return remember(text, context, older);
      const own = detached(text);
      return remember(own, context, parseLine(own, context));
    },
    silenced(line) {
      if (line.problems.length === 0) return line;
      let twin = silent.get(line);
      if (twin === undefined) {
        twin = { ...line, problems: [] };
        silent.set(line, twin);
      }
      return twin;
    },
  };
}

type Generation = Readonly<Record<LineContext, Map<string, Line>>>;

function emptyGeneration(): Generation {
  return { formula: new Map(), ingredient: new Map(), equipment: new Map(), prices: new Map() };
}

/** A copy that does not keep the whole file's text alive, as engines' substrings do. */
function detached(text: string): string {
  return `${text} `.slice(0, -1);
}
