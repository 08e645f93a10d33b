/** The server in a browser's worker: the same core, files by way of the client. */
import { BrowserMessageReader, BrowserMessageWriter, createConnection } from 'vscode-languageserver/browser';
import { clientFiles } from './client-files.ts';
import { cancelUndispatched, start } from './start.ts';

/** Serves on a port: a worker's own scope (`self`), or one end of a channel. */
export function startOn(port: MessagePort | Worker): void {
  const connection = createConnection(new BrowserMessageReader(port), new BrowserMessageWriter(port), {
    connectionStrategy: { cancelUndispatched },
  });
  start(connection, clientFiles(connection));
}
