/**
 * The launcher: runs the bundled program beside it with V8's compiled code from an earlier run.
 *
 * Most of a short command's time is compiling its own source. Node 20 has no compile cache of its own, so the code V8 made
 * is kept beside the program (where only who may change the program may write) and handed back at the next start. Whatever
 * fails here, the program runs all the same, only slower.
 */
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { Script } from 'node:vm';

/** Replaced by the build: the bundle's file name, and a hash of its text, since V8 itself compares no more than its length. */
declare const PROGRAM: string;
declare const BUILD: string;

const file = join(__dirname, PROGRAM);

/** One for each command, since each compiles other parts; a path or an option is no command. */
const command = /^[a-z]+(-[a-z]+)*$/.exec(process.argv[2] ?? '')?.[0] ?? 'none';
const cacheFile = join(__dirname, '.compiled', `${BUILD}-${process.version}-${process.arch}-${command}.bin`);

run();

function run(): void {
  const source = readFileSync(file, 'latin1');
  const cachedData = readCache();
  const script = new Script(source, { filename: file, ...(cachedData && { cachedData }) });
  if (!cachedData || script.cachedDataRejected) {
    process.once('exit', (code) => {
      // What was no command of this program is not remembered.
      if (code < 2) writeCache(script);
    });
  }
  // Workers are started by the launcher too.
  script.runInThisContext()(createRequire(file), __filename);
}

function readCache(): Buffer | undefined {
  try {
    return readFileSync(cacheFile);
  } catch {
    return undefined;
  }
}

/** At exit, so that what the command compiled on its way is kept too; aside and renamed, so that no one reads half of it. */
function writeCache(script: Script): void {
  const aside = `${cacheFile}.${process.pid}`;
  try {
    mkdirSync(dirname(cacheFile), { recursive: true });
    writeFileSync(aside, script.createCachedData());
    renameSync(aside, cacheFile);
  } catch {
    // A read-only installation: the next start compiles again.
  }
}
