/** The server as the extension carries it: one file, run by Node on the desktop and by a worker in a browser. */

// Neither host can load the other's part, so each loads its own.
if ('importScripts' in globalThis) void import('nappe-server').then(({ startOn }) => startOn(self as unknown as Worker));
else void import('nappe-server/node');
