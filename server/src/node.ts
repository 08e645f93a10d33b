/** `nappe-server --stdio`: the language server as a program of its own. */
import { createConnection } from 'vscode-languageserver/node';
import { nodeHost } from './node-files.ts';
import { cancelUndispatched, start, version } from './start.ts';

const help = `nappe-server: the language server for pastry formulas in the Nappe notation.

  nappe-server --stdio     speaks the Language Server Protocol on standard input and output
  nappe-server --version
`;

const words = process.argv.slice(2);
if (words.includes('--version')) process.stdout.write(`${version}\n`);
else if (words.includes('--stdio') || words.includes('--node-ipc') || words.some((word) => /^--(pipe|socket)=/.test(word)))
  start(createConnection({ connectionStrategy: { cancelUndispatched } }), nodeHost);
else {
  (words.includes('--help') ? process.stdout : process.stderr).write(help);
  process.exitCode = words.includes('--help') ? 0 : 2;
}
