/** `nappe handout`: a Markdown file with its fences carried out, as a booklet to print or as Markdown for a forge. */
import { readFileSync, statSync } from 'node:fs';
import { type Command, Option } from 'commander';
import { type Handout, handoutHtml, handoutMarkdown, handoutOf, type Picture, type PictureType } from '../handout/index.ts';
import { checkUnit, isMarkdown, locate, type Unit, type Workspace } from '../index.ts';
import { status, UsageError } from './failure.ts';
import { display, realPathWithin, sizeLimit, slashed, Unreadable } from './files.ts';
import { shownPath, workspaceOf } from './formula.ts';
import { deliver, refuseInputs } from './output.ts';
import { targetOf } from './targets.ts';
import { complain } from './terminal.ts';

interface Options {
  readonly to: 'html' | 'md';
  readonly output?: string;
}

export function define(command: Command): void {
  command
    .argument('<file>', 'a Markdown file with nappe fences')
    .addOption(new Option('--to <format>', 'a booklet to print, or Markdown for a forge').choices(['html', 'md']).default('html'))
    .option('-o, --output <file>', 'write the handout to a file instead of standard output')
    .addHelpText(
      'after',
      '\nA fence with a formula becomes its card; card, weigh-out, timeline and compare lines become what they ask for.\nA page begins after a line with <!-- page break -->.',
    )
    .action(run);
}

function run(file: string, { to, output }: Options): void {
  const target = targetOf(file);
  if (!isMarkdown(target.path)) throw new UsageError(`${file} is no Markdown file; for a formula: nappe card ${file}`);
  const workspace = workspaceOf(target);
  const path = slashed(target.path);
  const source = workspace.source(path);
  if ('refused' in source) throw new Unreadable(display(target.path), source.why);
  const unit = workspace.unit(path);
  const shown = shownPath(target.path);
  const handout = handoutOf({ workspace, path, fileName: shownPath, date: new Date().toISOString().slice(0, 10) });
  if (handout === null) throw new UsageError(`${shown} nests lists, quotes or emphasis more than 400 deep.`);
  const { text, faults, pictures } = printed(handout, workspace, target.root, to);
  refuseInputs(
    output,
    unitsOf(workspace, unit).map((one) => ({ workspace, unit: one })),
    pictures,
  );
  deliver(text, output);
  for (const { line, message } of [...handout.faults, ...faults].sort((a, b) => a.line - b.line))
    complain(`${shown}:${line}: ${message}`);
  const { errors } = checkUnit(workspace, path, { fileName: shownPath }).summary;
  if (errors > 0) complain(`${shown}: its fences have errors; nappe check ${shown} says which.`);
  if (errors + handout.faults.length + faults.length > 0) process.exitCode = status.faults;
}

/** The handout, and the files its requests name. */
function unitsOf(workspace: Workspace, unit: Unit): readonly Unit[] {
  const named = unit.requests.flatMap(({ line }) => line.entries.flatMap(({ reference }) => reference?.path ?? []));
  return [
    unit,
    ...named.flatMap((written) => {
      const located = locate(written, unit.path, workspace.files.root);
      return 'path' in located ? [workspace.unit(located.path)] : [];
    }),
  ];
}

function printed(handout: Handout, workspace: Workspace, root: string, to: Options['to']) {
  const pictures = new Set<string>();
  if (to === 'md') return { text: handoutMarkdown(handout), faults: [], pictures };
  const { html, faults } = handoutHtml(handout, workspace, (path) => {
    pictures.add(path);
    return pictureAt(root, path);
  });
  return { text: html, faults, pictures };
}

/** What a picture's first bytes say it is; its name may say anything. */
const types: readonly (readonly [PictureType, (bytes: Buffer) => boolean])[] = [
  ['image/png', (bytes) => bytes.subarray(0, 8).toString('latin1') === '\x89PNG\r\n\x1a\n'],
  ['image/jpeg', (bytes) => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff],
  ['image/gif', (bytes) => /^GIF8[79]a/.test(bytes.subarray(0, 6).toString('latin1'))],
  [
    'image/webp',
    (bytes) => bytes.subarray(0, 4).toString('latin1') === 'RIFF' && bytes.subarray(8, 12).toString('latin1') === 'WEBP',
  ],
  ['image/svg+xml', (bytes) => bytes.subarray(0, 1000).toString('utf8').includes('<svg')],
];

function pictureAt(root: string, path: string): Picture {
  try {
    const real = realPathWithin(root, path);
    const stats = statSync(real);
    if (!stats.isFile()) return { refused: 'unreadable', why: 'it is no file' };
    if (stats.size > sizeLimit) return { refused: 'unreadable', why: 'it is larger than 5 MB' };
    const bytes = readFileSync(real);
    const type = types.find(([, is]) => is(bytes))?.[0];
    return type
      ? { type, base64: bytes.toString('base64') }
      : { refused: 'unreadable', why: 'it is no PNG, JPEG, GIF, WebP or SVG' };
  } catch (error) {
    if (error instanceof Unreadable) return { refused: error.reason, why: error.why.replace(/\.$/u, '') };
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    return { refused: 'unreadable', why: `it could not be read (${code})` };
  }
}
