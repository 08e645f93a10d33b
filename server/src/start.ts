/**
 * The first moments of a server: answers `initialize` at once, and loads the compiler and the features behind it, so that an editor
 * waits for no more than it must. Everything that comes meanwhile is answered, in order, when they are there.
 */
import {
  type CancellationToken,
  type Connection,
  ErrorCodes,
  type InitializeResult,
  LSPErrorCodes,
  Message,
  ResponseError,
  type ResponseMessage,
} from 'vscode-languageserver';
import { capabilities } from './capabilities.ts';
import { type Client, clientOf } from './client.ts';
import type { Host } from './host.ts';
import type { Server } from './server.ts';

export const version = '0.1.0';

/** A request that is cancelled before its turn comes is answered at once. */
export const cancelUndispatched = (message: Message): ResponseMessage | undefined =>
  Message.isRequest(message)
    ? { jsonrpc: '2.0', id: message.id, error: { code: LSPErrorCodes.RequestCancelled, message: 'cancelled' } }
    : undefined;

export function start(connection: Connection, host: Host): void {
  let client: Client | null = null;
  let loading: Promise<Server> | null = null;
  let isShutDown = false;

  const server = (): Promise<Server> => {
    if (!client) throw new ResponseError(ErrorCodes.ServerNotInitialized, 'initialize comes first');
    const known = client;
    loading ??= import('./server.ts').then(({ createServer }) => createServer(connection, host, known));
    return loading;
  };

  connection.onInitialize((params): InitializeResult => {
    if (client) throw new ResponseError(ErrorCodes.InvalidRequest, 'initialize comes once');
    client = clientOf(params);
    // After the answer has gone out.
    setTimeout(() => void server(), 0);
    return { capabilities: capabilities(client), serverInfo: { name: 'nappe-server', version } };
  });
  connection.onInitialized(() => {
    void server().then((one) => one.initialized());
    if (client?.changesFolders)
      connection.workspace.onDidChangeWorkspaceFolders(
        (event) => void server().then((one) => one.notify('workspace/didChangeWorkspaceFolders', { event })),
      );
  });
  connection.onShutdown(() => {
    isShutDown = true;
  });
  connection.onRequest(async (method: string, params: unknown, token: CancellationToken) => {
    if (isShutDown) throw new ResponseError(ErrorCodes.InvalidRequest, 'the server was shut down');
    return (await server()).request(method, params, token);
  });
  connection.onNotification(async (method: string, params: unknown) => {
    if (client && !isShutDown) await (await server()).notify(method, params);
  });
  connection.listen();
}
