/** Memory is bounded: a file of 50 MB is refused unread, and ten times as many files take far less than ten times as much. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { program } from '../cli/nappe.ts';
import { Client, fullCapabilities, serverFile } from '../server/client.ts';

let folder: string;
beforeAll(() => {
  folder = realpathSync(mkdtempSync(join(tmpdir(), 'nappe-memory-')));
  // Its workers take part in the process's peak, and start with the same hook.
  const hook = `if (require('node:worker_threads').isMainThread)
    process.on('exit', () => require('node:fs').writeFileSync(process.env.PEAK, String(process.resourceUsage().maxRSS)));`;
  writeFileSync(join(folder, 'hook.cjs'), hook);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

interface Peak {
  readonly kilobytes: number;
  readonly out: string;
  readonly err: string;
}

/** The program's peak of resident memory (getrusage), and what it said. */
function peakOf(words: readonly string[], input = ''): Peak {
  const file = join(folder, 'peak');
  const { stdout, stderr } = spawnSync(process.execPath, ['--require', join(folder, 'hook.cjs'), program, ...words], {
    cwd: folder,
    env: { ...process.env, NO_COLOR: '1', PEAK: file },
    input,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
  });
  return { kilobytes: Number(readFileSync(file, 'utf8')), out: stdout, err: stderr };
}

/** The server's peak when `done` holds of what it has said of its own accord. */
async function serverPeakOf(root: string, done: (client: Client) => boolean): Promise<number> {
  const client = new Client([process.execPath, await serverFile(), '--stdio']);
  onTestFinished(() => client.kill());
  const open = { uri: pathToFileURL(root).href, name: 'work' };
  const params = { processId: process.pid, rootUri: open.uri, workspaceFolders: [open], capabilities: fullCapabilities };
  await client.request('initialize', params);
  client.notify('initialized', {});
  while (!done(client)) await new Promise((resolve) => setTimeout(resolve, 50));
  const peak = Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(`/proc/${client.pid}/status`, 'utf8'))?.[1]);
  await client.stop();
  return peak;
}

describe('a file of 50 MB', () => {
  const refusal = 'huge.nappe: this is larger than 5 MB, the most that is read';
  const some = 4_000;

  beforeAll(() => {
    for (const name of ['empty', 'huge']) mkdirSync(join(folder, name));
    writeFileSync(join(folder, 'empty/a.nappe'), '');
    writeFileSync(join(folder, 'huge/huge.nappe'), '// a line of a very long file\n'.repeat(50_000_000 / 30));
    writeFileSync(join(folder, 'huge/a.md'), '# A\n\n```nappe\ncard "huge.nappe"\n```\n');
    writeFileSync(join(folder, 'huge/taker.nappe'), 'take base from "huge.nappe"\nformula A\n  10 g  base\n');
  });

  test.each([
    ['check', ['check', 'huge/huge.nappe'], ['check', 'empty/a.nappe']],
    ['fmt', ['fmt', 'huge/huge.nappe'], ['fmt', 'empty/a.nappe']],
    ['draft', ['draft', 'huge/huge.nappe'], ['draft', 'empty/a.nappe']],
    ['preview', ['preview', 'huge/huge.nappe'], ['preview', 'empty/b.nappe']],
  ])('is refused by %s with no more memory than an empty one takes', (_, words, beside) => {
    const { kilobytes, err } = peakOf(words);
    expect(err).toBe(`nappe: huge/${refusal}.\n`);
    expect(kilobytes).toBeLessThan(peakOf(beside).kilobytes + some);
  });

  test.each([
    ['a take', ['check', 'huge/taker.nappe']],
    ['a request', ['check', 'huge/a.md']],
  ])('is not read for %s', (_, words) => {
    const { kilobytes, out } = peakOf(words);
    expect(out).toMatch(/larger than 5 MB/);
    expect(kilobytes).toBeLessThan(peakOf(['check', 'empty/a.nappe']).kilobytes + 5 * some);
  });

  test('from standard input is read no further than it may be', () => {
    const { kilobytes, err } = peakOf(['check', '-'], 'x'.repeat(50_000_000));
    expect(err).toContain('standard input: this is larger than 5 MB');
    expect(kilobytes).toBeLessThan(peakOf(['check', '-']).kilobytes + 20_000);
  });

  test('in a folder that an editor opens is not read', async () => {
    const isOver = ({ notifications }: Client) =>
      notifications.some(({ method, params }) => method === '$/progress' && JSON.stringify(params).includes('"end"'));
    expect(await serverPeakOf(join(folder, 'huge'), isOver)).toBeLessThan(
      (await serverPeakOf(join(folder, 'empty'), isOver)) + 5 * some,
    );
  });
});

describe('20,000 files, each with a fault', () => {
  const [few, many] = [2_000, 20_000];

  beforeAll(() => {
    for (const [at, count] of [
      ['many/few', few],
      ['many/more', many - few],
    ] as const) {
      mkdirSync(join(folder, at), { recursive: true });
      writeFileSync(join(folder, at, 'base.nappe'), 'component base\n  100 g  caster sugar\n');
      for (let i = 1; i < count; i++)
        writeFileSync(
          join(folder, at, `${i}.nappe`),
          `take base from "base.nappe"\nformula F${i}\n  makes 100 g\n  100 g  base\n  mix wine\n`,
        );
    }
  });

  // Proportion would be ten; measured: 1.6.
  test('take the command line less than two and a half times what 2,000 take', () => {
    const less = peakOf(['check', '--format', 'json', 'many/few']);
    const more = peakOf(['check', '--format', 'json', 'many']);
    expect(JSON.parse(less.out).summary).toMatchObject({ files: few, errors: few - 1 });
    expect(JSON.parse(more.out).summary).toMatchObject({ files: many, errors: many - 2 });
    expect(more.kilobytes).toBeLessThan(2.5 * less.kilobytes);
  });

  // Proportion would be ten; measured: 2.
  test('take the server less than three times what 2,000 take: it keeps the reports', async () => {
    const reported = (count: number) => (client: Client) =>
      client.notifications.filter(({ method }) => method === 'textDocument/publishDiagnostics').length >= count;
    const less = await serverPeakOf(join(folder, 'many/few'), reported(few - 1));
    const more = await serverPeakOf(join(folder, 'many'), reported(many - 2));
    expect(more).toBeLessThan(3 * less);
  });
});
