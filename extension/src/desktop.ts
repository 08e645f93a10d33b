/** The extension on the desktop: the server is a program of its own, started with the editor's own Node. */
import type { ExtensionContext } from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { clientOptions } from './client-options.ts';
import { extend } from './extend.ts';

export async function activate(context: ExtensionContext): Promise<void> {
  const module = context.asAbsolutePath('dist/server.cjs');
  const client = new LanguageClient('nappe', 'Nappe', { module, transport: TransportKind.ipc }, clientOptions({ files: false }));
  await extend(context, client);
}
