/** `npm run bench`: everything that is measured, as one table and as JSON in `artefacts/`; words after `--` choose parts. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, loadavg, totalmem } from 'node:os';
import { join } from 'node:path';
import { Figures, table } from './figures.ts';
import { inProcess } from './in-process.ts';
import { repository } from './inputs.ts';
import { programs } from './programs.ts';
import { servers } from './servers.ts';

const parts = ['in-process', 'programs', 'servers', 'full'] as const;
const asked = process.argv.slice(2);
const wants = (part: (typeof parts)[number]): boolean => asked.length === 0 || asked.includes(part);
const unknown = asked.filter((word) => !parts.some((part) => part === word));
if (unknown.length > 0) throw new Error(`no part ${unknown.join(', ')}; there are ${parts.join(', ')}`);

const git = (...words: string[]): string => spawnSync('git', words, { cwd: repository, encoding: 'utf8' }).stdout.trim();
const figures = new Figures();
const before = loadavg()[0] ?? 0;

if (wants('in-process')) await inProcess(figures);
if (wants('programs') || wants('servers')) programs(figures, wants('full'));
if (wants('servers')) await servers(figures);

const commit = git('rev-parse', '--short', 'HEAD');
const machine = {
  cpu: cpus()[0]?.model.trim() ?? 'unknown',
  cores: availableParallelism(),
  gigabytes: Math.round(totalmem() / 1e9),
  node: process.version,
  load: [before, loadavg()[0] ?? 0],
};
const sentence = `${machine.cpu}, ${machine.cores} cores, ${machine.gigabytes} GB, Node ${machine.node}, load ${machine.load.map((one) => one.toFixed(1)).join(' to ')}, commit ${commit}`;
const text = table(figures, sentence);
mkdirSync(join(repository, 'artefacts'), { recursive: true });
const changed = git('status', '--porcelain') !== '';
const record = { commit, changed, machine, figures: figures.all, targets: figures.targets };
writeFileSync(join(repository, `artefacts/bench-${commit}.json`), `${JSON.stringify(record, null, 2)}\n`);
writeFileSync(join(repository, 'artefacts/bench.txt'), text);
process.stdout.write(text);
