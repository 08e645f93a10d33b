/**
 * Installs the real VS Code that the extension is proved in: the npm package code-server, without its own post-install step, which
 * compiles and downloads. What that step would do and is needed is done here. Does nothing where it is done already.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const done = join(here, 'node_modules/.installed');
const lock = readFileSync(join(here, 'package-lock.json'), 'utf8');

if (!existsSync(done) || readFileSync(done, 'utf8') !== lock) {
  console.log('Installing the editor for the tests …');
  npm(here, 'ci');
  const vscode = join(here, 'node_modules/code-server/lib/vscode');
  npm(vscode, 'install', '--omit=dev');
  link('node_modules', join(vscode, 'node_modules.asar'));
  const bin = join(vscode, 'node_modules/@vscode/ripgrep/bin');
  mkdirSync(bin, { recursive: true });
  link(join(here, 'node_modules/@vscode/ripgrep-linux-x64/bin/rg'), join(bin, 'rg'));
  writeFileSync(done, lock);
}

function npm(cwd, ...words) {
  execFileSync('npm', [...words, '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error'], { cwd, stdio: 'inherit' });
}

function link(target, path) {
  rmSync(path, { force: true });
  symlinkSync(target, path);
}
