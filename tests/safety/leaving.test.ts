/** No way out of the workspace: every attack by every door, and nothing of a file beside the workspace in any answer. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nappe, type Ran } from '../cli/nappe.ts';
import { attacks, ground, secret, secretPicture } from './attacks.ts';

/** Neither the secret's text nor its picture. */
function expectKept(answer: string, where: string): void {
  expect(answer.includes(secret), where).toBe(false);
  expect(answer.includes(secretPicture.slice(12, 40)), where).toBe(false);
}

const both = ({ out, err }: Ran): string => out + err;

interface Found {
  readonly line: number;
  readonly code: string;
  readonly message: string;
}

const errorsIn = (answer: Ran): readonly Found[] =>
  JSON.parse(answer.out).diagnostics.filter(({ severity }: { severity: string }) => severity === 'error');

/** One take a line, each under a name of its own. */
const takes = (outer: string): string =>
  attacks.map(([, write], i) => `take base as b${i} from "${write('secret.nappe', outer)}"\n`).join('');

const words = ['card', 'weigh-out', 'timeline'] as const;

/** One request a line. */
const requests = (outer: string): string =>
  attacks
    .flatMap(([, write]) => {
      const path = write('secret.nappe', outer);
      return [
        ...words.map((word) => `${word} "${path}"`),
        `compare "own.nappe" with "${path}"`,
        `compare "${path}" with "own.nappe"`,
      ];
    })
    .join('\n');
const each = words.length + 2;

/** The workspace with a handout in it. */
function handout(text: (outer: string) => string, open = false): { readonly cwd: string } {
  const { outer, root } = ground(open);
  writeFileSync(join(root, 'a.md'), text(outer));
  return { cwd: root };
}

describe('take', () => {
  const formula = (outer: string) =>
    `${takes(outer)}\nformula A\n  makes 100 g\n${attacks.map((_, i) => `  10 g  b${i}\n`).join('')}  mix b0, b1\n`;
  const ask = (...command: string[]) => {
    const { outer, root } = ground();
    return nappe(command, { cwd: root, input: formula(outer) });
  };

  test('reads nothing, and says in a sentence at each line why', () => {
    const answer = ask('check', '--format', 'json', '-');
    expectKept(both(answer), 'check');
    const found = errorsIn(answer);
    for (const [i, [kind]] of attacks.entries()) {
      const here = found.filter(({ line, code }) => line === i + 1 && /^(outside-workspace|import-missing|syntax)$/.test(code));
      expect(here.length, kind).toBeGreaterThan(0);
      for (const { message } of here)
        expect(message, kind).toMatch(
          /^(“.+” is not read: .+|There is no file “.+”|The file “.+” cannot be read: .+|A name .+)\.$/s,
        );
    }
  });

  test.each([
    'check -',
    'check --format sarif -',
    'check --format github -',
    'card -',
    'card --to md -',
    'card --to json -',
    'trace -',
    'weigh-out -',
    'timeline -',
    'label -',
    'compare own.nappe -',
    'fmt -',
  ])('%s', (command) => {
    const answer = ask(...command.split(' '));
    expectKept(both(answer), command);
    expect(both(answer)).not.toMatch(/\n\s+at .+:\d+:\d+/);
  });
});

describe('requests of a handout', () => {
  const text = (outer: string) => `# A\n\n\`\`\`nappe\n${requests(outer)}\n\`\`\`\n`;

  test('are errors of check, each at its line', () => {
    const answer = nappe(['check', '--format', 'json', 'a.md'], handout(text));
    expectKept(both(answer), 'check');
    const lines = new Set(errorsIn(answer).map(({ line }) => line));
    for (const [i, [kind]] of attacks.entries())
      for (let one = 0; one < each; one++) expect(lines.has(4 + i * each + one), `${kind}, ${one}`).toBe(true);
  });

  test.each(['html', 'md'])('are refused in the page and beside it, as %s', (format) => {
    const answer = nappe(['handout', 'a.md', '--to', format], handout(text));
    expectKept(both(answer), format);
    const said = answer.err.split('\n').filter((line) => line.startsWith('nappe: a.md:'));
    for (const [i, [kind]] of attacks.entries())
      for (let one = 0; one < each; one++) {
        const here = said.filter((line) => line.startsWith(`nappe: a.md:${4 + i * each + one}: `));
        expect(here.length, `${kind}, ${one}`).toBeGreaterThan(0);
        for (const line of here) expect(line, kind).toMatch(/\.$/);
      }
  });
});

describe('pictures of a handout', () => {
  const forms: readonly (readonly [string, (path: string, i: number) => string])[] = [
    ['in Markdown', (path) => `![p](<${path}>)`],
    ['by a reference', (path, i) => `![p][r${i}]\n\n[r${i}]: <${path}>`],
    ['in HTML', (path) => `<div>\n<img alt="p" src="${path}">\n</div>`],
    [
      'in HTML that is encoded',
      (path) => `<div>\n<img alt="p" src="${[...path].map((c) => `&#x${c.codePointAt(0)?.toString(16)};`).join('')}">\n</div>`,
    ],
  ];

  test.each(forms)('%s', (_, form) => {
    const pictures = (outer: string) => attacks.map(([, write], i) => form(write('secret.png', outer), i)).join('\n\n');
    const answer = nappe(
      ['handout', 'a.md'],
      handout((outer) => `# A\n\n${pictures(outer)}\n`),
    );
    expectKept(both(answer), 'handout');
    expect(answer.out).not.toMatch(/<img/);
    expect(answer.err.match(/^nappe: a\.md:\d+: The picture “.*” is not in the page: .+\.$/gm)?.length).toBe(attacks.length);
    expect(answer.status).toBe(1);
  });

  test('are asked of nobody where they have other names', () => {
    const other = `<picture><source srcset="../secret.png"><img srcset="../secret.png 2x"></picture>\n<object data="../secret.png"></object>\n<video poster="../secret.png" src="../secret.png"></video>\n<table background="../secret.png"><tr><td style="background:url(../secret.png)">x</td></tr></table>\n<embed src="../secret.png"><input type="image" src="../secret.png"><svg><image href="../secret.png"/></svg>\n<link rel="icon" href="../secret.png">\n`;
    const answer = nappe(
      ['handout', 'a.md'],
      handout(() => `# A\n\n<div>\n${other}</div>\n`),
    );
    expectKept(both(answer), 'handout');
    expect(answer.out).not.toContain('secret.png');
  });
});

describe('a walk', () => {
  test('names the links that lead out, and follows no folder of links', () => {
    const { root } = ground();
    const answer = nappe(['check', '--format', 'json'], { cwd: root });
    expectKept(both(answer), 'check');
    for (const name of ['link', 'link-to-link', 'absolute-link'])
      for (const ending of ['nappe', 'md'])
        expect(answer.err).toMatch(new RegExp(`^nappe: ${name}\\.${ending}: this link leads outside`, 'm'));
    expect(JSON.parse(answer.out).summary.files).toBe(1);
  });
});

test('where the workspace reaches further, the same paths are read: the secret would be seen', () => {
  const setting = handout(() => '# A\n\n![p](../secret.png)\n\n```nappe\ncard "../secret.nappe"\n```\n', true);
  const { out } = nappe(['handout', 'a.md'], setting);
  expect(out).toContain(secret);
  expect(out).toContain(secretPicture);
  for (const way of ['../secret.nappe', 'sub/../../secret.nappe', 'link.nappe', 'linked/secret.nappe']) {
    const text = `take base from "${way}"\nformula A\n  makes 100 g\n  100 g  base\n`;
    expect(nappe(['card', '-'], { ...setting, input: text }).out, way).toContain(secret);
  }
});
