/** Files for a server that cannot read any itself: listed and read through the editor, only when it asks. */
import {
  type FileAnswer,
  type FileParams,
  type FilesAnswer,
  type FilesParams,
  fileRequest,
  filesRequest,
} from 'nappe-server/protocol';
import { type Disposable, RelativePattern, Uri, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

export function answerFiles(client: BaseLanguageClient): Disposable[] {
  return [
    client.onRequest(filesRequest, async ({ folder, limit }: FilesParams): Promise<FilesAnswer> => {
      const pattern = new RelativePattern(Uri.parse(folder), '**/*.{nappe,md,markdown}');
      const found = await workspace.findFiles(pattern, '**/{node_modules,.*}/**', limit);
      return { uris: found.map((uri) => uri.toString()) };
    }),
    client.onRequest(fileRequest, async ({ uri }: FileParams): Promise<FileAnswer> => {
      try {
        return { text: new TextDecoder('utf-8', { fatal: true }).decode(await workspace.fs.readFile(Uri.parse(uri))) };
      } catch {
        return { text: null };
      }
    }),
  ];
}
