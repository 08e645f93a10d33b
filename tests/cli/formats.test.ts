/** What `check` prints for programs: its JSON, SARIF that OASIS's schema accepts, and annotations a forge reads. */
import { createRequire } from 'node:module';
import Ajv from 'ajv';
import addFormats from 'ajv-formats';
import { beforeAll, describe, expect, test } from 'vitest';
import { faultyCustard, folderWith, nappe } from './nappe.ts';

/** On line 12 an allowed safety code, on line 10 an error, and a name that has to be escaped. */
const raw = `formula 100 % raw: mousse, soft
  makes 500 g
  keeps 1 d at 0-4 °C
  300 g  cream, 35 % fat, 4 °C
  // allow raw-egg: eggs of our own hens, eaten the same day
  100 g  egg white, raw
  100 g  caster sugar
  whip egg white, caster sugar to soft peak as meringue
  whip cream to soft peak
  fold meringue into craem in 3 additions: whisk, spatula, spatula
`;

interface Diagnostic {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
  readonly severity: string;
  readonly code: string;
  readonly message: string;
  readonly fixes: readonly { readonly title: string; readonly edits: readonly { readonly text: string }[] }[];
}

let json: { version: number; diagnostics: Diagnostic[]; allowed: object[]; summary: Record<string, number> };
let folder: string;

const check = (...words: string[]) => nappe(['check', ...words], { cwd: folder });

describe('check --format', () => {
  test('json: the published shape, places counted from 1 and inside the file', () => {
    folder = folderWith({ 'a.nappe': faultyCustard, 'sub dir/b, ü.nappe': raw });
    const answer = check('--format', 'json', '.');
    json = JSON.parse(answer.out);
    expect(answer).toMatchObject({ status: 1, err: '' });
    expect(Object.keys(json)).toEqual(['version', 'diagnostics', 'allowed', 'summary']);
    expect(json.version).toBe(1);
    const mistyped = json.diagnostics.find(({ code, file }) => code === 'unknown-name' && file === 'a.nappe');
    expect(mistyped).toMatchObject({ line: 10, column: 10, endLine: 10, endColumn: 20, severity: 'error' });
    expect(mistyped?.fixes[0]?.edits[0]?.text).toBe('whole milk');
    for (const severity of ['error', 'warning', 'notice'])
      expect(json.summary[`${severity}s`]).toBe(json.diagnostics.filter((one) => one.severity === severity).length);
    expect(json.summary).toMatchObject({ files: 2, allowed: json.allowed.length });
    for (const { file, line, column, endLine, endColumn } of json.diagnostics) {
      const lines = (file === 'a.nappe' ? faultyCustard : raw).split('\n');
      expect(line).toBeGreaterThanOrEqual(1);
      expect(endLine).toBe(line);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(endColumn).toBeGreaterThanOrEqual(column);
      expect(endColumn).toBeLessThanOrEqual((lines[line - 1] as string).length + 1);
    }
  });

  test('json: diagnostics come by file, then by line', () => {
    folder = folderWith({ 'b.nappe': faultyCustard, 'a.nappe': faultyCustard, 'c/a.nappe': faultyCustard });
    const { diagnostics } = JSON.parse(check('--format', 'json', 'c', 'b.nappe', 'a.nappe').out) as typeof json;
    expect([...new Set(diagnostics.map(({ file }) => file))]).toEqual(['c/a.nappe', 'b.nappe', 'a.nappe']);
    const lines = diagnostics.filter(({ file }) => file === 'a.nappe').map(({ line }) => line);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
  });

  describe('sarif', () => {
    let isValid: (log: unknown) => boolean;
    let problems: () => unknown;
    beforeAll(() => {
      // The OASIS schema (draft-04, errata rtm.5 of 2.1.0) as the package @microsoft/jest-sarif carries it.
      const { id, $schema, ...schema } = createRequire(import.meta.url)(
        '@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json',
      );
      expect(id).toMatch(/sarif-2\.1\.0/);
      expect($schema).toMatch(/draft-04/);
      const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
      addFormats(ajv);
      const validate = ajv.compile(schema);
      isValid = (log) => validate(log);
      problems = () => validate.errors;
    });

    test('the schema can say no', () => {
      expect(isValid({ version: '2.1.0', runs: [{ tool: {} }] })).toBe(false);
      expect(
        isValid({
          version: '2.1.0',
          runs: [{ tool: { driver: { name: 'x' } }, results: [{ message: { text: 'x' }, level: 'fatal' }] }],
        }),
      ).toBe(false);
    });

    test('is valid, and says what the JSON says', () => {
      folder = folderWith({ 'a.nappe': faultyCustard, 'sub dir/b, ü.nappe': raw });
      const answer = check('--format', 'sarif', '.');
      const log = JSON.parse(answer.out);
      expect(isValid(log), JSON.stringify(problems())).toBe(true);
      expect(answer.status).toBe(1);
      json = JSON.parse(check('--format', 'json', '.').out);
      const [run] = log.runs;
      const shown = run.results.filter((result: { suppressions?: unknown }) => !result.suppressions);
      expect(shown).toHaveLength(json.diagnostics.length);
      shown.forEach(
        (result: { ruleId: string; ruleIndex: number; locations: { physicalLocation: { region: object } }[] }, index: number) => {
          const { code, line, column, endLine, endColumn } = json.diagnostics[index] as Diagnostic;
          expect(result.ruleId).toBe(code);
          expect(run.tool.driver.rules[result.ruleIndex].id).toBe(code);
          expect(result.locations[0]?.physicalLocation.region).toEqual({
            startLine: line,
            startColumn: column,
            endLine,
            endColumn,
          });
        },
      );
      expect(run.results.length - shown.length).toBe(json.allowed.length);
      expect(JSON.stringify(log)).toContain('sub%20dir/b%2C%20%C3%BC.nappe');
    });

    test('is valid with nothing wrong, and says so where a file could not be read', () => {
      folder = folderWith({ 'empty.nappe': '' });
      expect(isValid(JSON.parse(check('--format', 'sarif', 'empty.nappe').out))).toBe(true);
      const log = JSON.parse(check('--format', 'sarif', 'absent.nappe').out);
      expect(isValid(log)).toBe(true);
      expect(log.runs[0].invocations[0].executionSuccessful).toBe(false);
    });
  });

  test('github: one workflow command a diagnostic, escaped as the runner unescapes', () => {
    folder = folderWith({ 'a.nappe': faultyCustard, 'sub dir/b, ü.nappe': raw });
    const lines = check('--format', 'github', '.').out.trimEnd().split('\n');
    json = JSON.parse(check('--format', 'json', '.').out);
    expect(lines).toHaveLength(json.diagnostics.length);
    lines.forEach((line, index) => {
      const { file, line: number, severity, code, message } = json.diagnostics[index] as Diagnostic;
      const [, command, properties, data] = /^::(error|warning|notice) ([^:]*)::(.*)$/.exec(line) as unknown as string[];
      const read = Object.fromEntries((properties as string).split(',').map((one) => one.split('=').map(decodeURIComponent)));
      expect(command).toBe(severity);
      expect(read).toMatchObject({ file, line: String(number), title: code });
      expect(decodeURIComponent(data as string)).toBe(message);
    });
  });

  test('text: file, line and code stand in it, with the line itself', () => {
    folder = folderWith({ 'a.nappe': faultyCustard });
    const { out } = check('a.nappe');
    expect(out).toContain('a.nappe:10');
    expect(out).toContain('unknown-name');
    expect(out).toContain('temper whole mlik into liaison');
  });
});

describe('check --with and --strict', () => {
  const choosy = faultyCustard
    .replace('  makes 570 g\n', '  makes 570 g\n  choice heat: gentle, bold\n')
    .replace('temper whole mlik', 'temper whole milk')
    .replace(
      '  cook to 82-84 °C until nappe\n',
      '  cook to 82-84 °C until nappe   when gentle\n  cook to 92-94 °C until nappe   when bold\n',
    );

  test('looks at one combination alone', () => {
    folder = folderWith({ 'a.nappe': choosy });
    expect(check('a.nappe').status).toBe(1);
    expect(check('--with', 'gentle', 'a.nappe').status).toBe(0);
    expect(check('--with', 'bold', 'a.nappe').status).toBe(1);
  });

  test('says in which combinations a diagnostic holds', () => {
    folder = folderWith({ 'a.nappe': choosy });
    const { diagnostics } = JSON.parse(check('--format', 'json', 'a.nappe').out);
    expect(diagnostics.find(({ code }: Diagnostic) => code === 'custard-curdles')).toMatchObject({ when: [{ heat: 'bold' }] });
  });

  test('a value that no formula offers is a usage error', () => {
    folder = folderWith({ 'a.nappe': choosy });
    const answer = check('--with', 'blod', 'a.nappe');
    expect(answer).toMatchObject({ status: 2, out: '', err: expect.stringContaining('blod') });
  });

  test('warnings fail under --strict alone', () => {
    folder = folderWith({
      'a.nappe': faultyCustard.replace('temper whole mlik', 'temper whole milk').replace('82-84 °C', '82-87 °C'),
    });
    expect(JSON.parse(check('--format', 'json', 'a.nappe').out).summary).toMatchObject({ errors: 0, warnings: 1 });
    expect(check('a.nappe').status).toBe(0);
    expect(check('--strict', 'a.nappe').status).toBe(1);
  });
});
