/** `nappe-server --stdio`: the language server as a program of its own. */
import { createConnection } from 'vscode-languageserver/node';
import { nodeHost } from './node-files.ts';
import { cancelUndispatched, start, version } from './start.ts';

const help = `nappe-server: the language server for pastry formulas in the Nappe notation.

  nappe-server --stdio     speaks the Language Server Protocol on standard input and output
  nappe-server --version
`;

const words = process.argv.slice(2);
/** Standard input and output, the editor's own channel, or a pipe of the machine: never a socket. */
const isAsked =
  words.some((word) => word === '--stdio' || word === '--node-ipc' || word.startsWith('--pipe=')) &&
  !words.some((word) => word.startsWith('--socket'));

if (words.includes('--version')) process.stdout.write(`${version}\n`);
else if (isAsked) start(createConnection({ connectionStrategy: { cancelUndispatched } }), nodeHost);
else {
  (words.includes('--help') ? process.stdout : process.stderr).write(help);
  process.exitCode = words.includes('--help') ? 0 : 2;
}
