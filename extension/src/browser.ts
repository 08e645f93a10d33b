/** The extension in a browser: the server runs in a worker and reads files by way of the editor. */
import { type ExtensionContext, Uri } from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { clientOptions } from './client-options.ts';
import { extend } from './extend.ts';
import { answerFiles } from './files.ts';

export async function activate(context: ExtensionContext): Promise<void> {
  const worker = new Worker(Uri.joinPath(context.extensionUri, 'dist', 'server.cjs').toString(true));
  const client = new LanguageClient('nappe', 'Nappe', worker, clientOptions({ files: true }));
  context.subscriptions.push({ dispose: () => worker.terminate() }, ...answerFiles(client));
  await extend(context, client);
}
