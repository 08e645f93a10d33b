/** A workspace of files given as text, for tests of every room. */
import type { Files } from './model.ts';
import { createWorkspace, type Workspace } from './workspace.ts';

export interface InMemory {
  readonly workspace: Workspace;
  /** Puts another text in a file's place. */
  write(name: string, text: string): void;
}

/** Names are paths below the root `/work`. */
export function inMemory(texts: Readonly<Record<string, string>>): InMemory {
  const held = new Map(Object.entries(texts).map(([name, text]) => [`/work/${name}`, text]));
  const files: Files = {
    root: '/work',
    read(path) {
      const text = held.get(path);
      return text === undefined ? { refused: 'missing', why: 'there is no such file' } : { text };
    },
  };
  const workspace = createWorkspace(files);
  return {
    workspace,
    write(name, text) {
      held.set(`/work/${name}`, text);
      workspace.changed(`/work/${name}`);
    },
  };
}
