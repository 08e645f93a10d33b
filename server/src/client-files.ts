/** Files by way of the client, for a server that cannot read any itself: texts are fetched when a folder is listed and when they change. */
import type { Connection } from 'vscode-languageserver';
import type { Host, ListOptions, ReadResult } from './host.ts';
import { type FileAnswer, type FileParams, type FilesAnswer, type FilesParams, fileRequest, filesRequest } from './protocol.ts';
import { folderOf, pathOf, uriOf } from './uris.ts';

/** So many files are fetched at a time. */
const atOnce = 16;

export function clientFiles(connection: Connection): Host {
  const texts = new Map<string, string>();

  async function fetch(path: string): Promise<void> {
    try {
      const { text } = await connection.sendRequest<FileAnswer>(fileRequest, { uri: uriOf(path) } satisfies FileParams);
      if (typeof text === 'string') texts.set(path, text);
      else texts.delete(path);
    } catch {
      // A client that does not answer has no files to give.
      texts.delete(path);
    }
  }

  async function fetchAll(paths: readonly string[], isCancelled: () => boolean = () => false): Promise<void> {
    for (let from = 0; from < paths.length && !isCancelled(); from += atOnce)
      await Promise.all(paths.slice(from, from + atOnce).map(fetch));
  }

  return {
    read: (_root, path): ReadResult => {
      const text = texts.get(path);
      return text === undefined ? { refused: 'missing', why: 'there is no such file' } : { text };
    },
    async list(root: string, { limit, isCancelled }: ListOptions): Promise<readonly string[]> {
      try {
        const params: FilesParams = { folder: uriOf(root), limit };
        const { uris } = await connection.sendRequest<FilesAnswer>(filesRequest, params);
        const paths = uris.slice(0, limit).map(pathOf).sort();
        await fetchAll(paths, isCancelled);
        return paths.filter((path) => texts.has(path));
      } catch {
        return [];
      }
    },
    rootOf: folderOf,
    refresh: fetchAll,
  };
}
