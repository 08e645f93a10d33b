/** The commands of a course on the command line: options belong to the file before them, nothing half written, faults fail. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { custard, faultyCustard, folderWith, nappe, repository } from '../cli/nappe.ts';

const lessons = {
  one: 'samples/course/lesson-1-custard.nappe',
  two: 'samples/course/lesson-2-ganache.nappe',
  three: 'samples/course/lesson-3-meringue.nappe',
};
const here = { cwd: repository };

const grams = (out: string, formula: string): number =>
  (JSON.parse(out) as { items: { for: { formula: string; grams: number }[] }[] }).items
    .flatMap((item) => item.for)
    .filter((part) => part.formula === formula)
    .reduce((sum, part) => sum + part.grams, 0);

describe('an option belongs to the file before it', () => {
  it('in size and in choices', () => {
    const words = [
      'weigh-out',
      lessons.one,
      '--for',
      '24 glasses',
      lessons.two,
      lessons.three,
      '--with',
      'mould',
      '--for=20 moulds',
      '--to',
      'json',
    ];
    const { out, status } = nappe(words, here);
    expect(status).toBe(0);
    const alone = (file: string, ...options: string[]) => nappe(['weigh-out', file, ...options, '--to', 'json'], here).out;
    expect(grams(out, 'Orange blossom bavarois')).toBeCloseTo(
      grams(alone(lessons.one, '--for', '24 glasses'), 'Orange blossom bavarois'),
      6,
    );
    expect(grams(out, 'Salted chocolate mousse')).toBeCloseTo(grams(alone(lessons.two), 'Salted chocolate mousse'), 6);
    expect(grams(out, 'Apricot mousse')).toBeCloseTo(
      grams(alone(lessons.three, '--with', 'mould', '--for', '20 moulds'), 'Apricot mousse'),
      6,
    );
  });

  it('and the same file may stand twice, at two sizes', () => {
    const { out } = nappe(
      ['weigh-out', lessons.two, '--for', '12 glasses', lessons.two, '--for', '24 glasses', '--to', 'json'],
      here,
    );
    const once = nappe(['weigh-out', lessons.two, '--for', '36 glasses', '--to', 'json'], here).out;
    expect(Math.abs(grams(out, 'Salted chocolate mousse') - grams(once, 'Salted chocolate mousse'))).toBeLessThan(4);
  });

  it.each([
    [['weigh-out', '--for', '24 glasses', lessons.one], 'belongs to the file before it'],
    [['timeline', '--with', 'glass', lessons.one], 'belongs to the file before it'],
    [['weigh-out', lessons.one, '--for', '2 kg', '--for', '3 kg'], 'twice'],
    [['weigh-out', lessons.one, '--with', 'cup'], 'no choice value cup'],
    [['weigh-out', lessons.one, '--for', '24 rings'], 'not in “ring”'],
    [['weigh-out', 'nowhere.nappe'], 'there is no such file'],
    [['weigh-out', 'samples/bases.nappe'], 'holds no formula'],
    [['weigh-out'], 'missing required argument'],
    [['timeline', lessons.one, '--ready', '25:00'], 'a time of day'],
    [['timeline', lessons.one, '--cooks', '0'], 'a whole number'],
    [['label', lessons.one, '--made', '2025-02-30'], 'a date'],
    [['label', lessons.one, '--region', 'mars'], 'eu'],
    [['handout', lessons.one], 'is no Markdown file'],
  ] as const)('%j is a question that cannot be answered', (words, why) => {
    const { status, out, err } = nappe(words, here);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(why);
  });
});

describe('a file to write', () => {
  it.each(['weigh-out', 'timeline', 'label'])('of %s is written whole, and never over an input', (command) => {
    const folder = folderWith({
      'base.nappe': custard,
      'a.nappe':
        'take Pouring custard from "base.nappe"\n\nformula A\n  200 g  Pouring custard\n  pour Pouring custard into glass\n',
    });
    expect(nappe([command, 'a.nappe', '-o', 'out.txt'], { cwd: folder })).toMatchObject({ status: 0, out: '' });
    expect(readFileSync(join(folder, 'out.txt'), 'utf8')).toContain('A');
    for (const input of ['a.nappe', 'base.nappe'])
      expect(nappe([command, 'a.nappe', '-o', input], { cwd: folder })).toMatchObject({ status: 2, out: '' });
    expect(readFileSync(join(folder, 'base.nappe'), 'utf8')).toBe(custard);
  });

  it('of handout is never its own text', () => {
    const folder = folderWith({ 'note.md': '# T\n' });
    expect(nappe(['handout', 'note.md', '-o', 'note.md'], { cwd: folder }).status).toBe(2);
    expect(nappe(['handout', 'note.md', '--to', 'md', '-o', 'other.md'], { cwd: folder }).status).toBe(0);
    expect(readFileSync(join(folder, 'other.md'), 'utf8')).toBe('# T\n');
  });
});

describe('a formula with errors', () => {
  it.each(['weigh-out', 'timeline', 'label'])('still gets its %s, marked, with exit status 1', (command) => {
    const folder = folderWith({ 'a.nappe': faultyCustard });
    const { status, out, err } = nappe([command, 'a.nappe'], { cwd: folder });
    expect(status).toBe(1);
    expect(out.toLowerCase()).toContain('not checked through');
    expect(err).toContain('nappe check a.nappe');
  });

  it('that cannot be read gets none', () => {
    const folder = folderWith({ 'a.nappe': `${custard}  ?! what\n` });
    expect(nappe(['weigh-out', 'a.nappe'], { cwd: folder })).toMatchObject({ status: 1, out: '' });
  });

  it('fails a handout and its check, at the handout’s line', () => {
    const folder = folderWith({ 'note.md': `# T\n\n\`\`\`nappe\n${faultyCustard}\`\`\`\n` });
    const handout = nappe(['handout', 'note.md'], { cwd: folder });
    expect(handout.status).toBe(1);
    expect(handout.out).toContain('class="unchecked"');
    const check = nappe(['check', 'note.md', '--format', 'json'], { cwd: folder });
    expect(check.status).toBe(1);
    expect(JSON.parse(check.out).diagnostics).toContainEqual(
      expect.objectContaining({ file: 'note.md', line: 13, code: 'unknown-name' }),
    );
  });
});

describe('a handout', () => {
  it('holds the pictures beside it, and no others', () => {
    const folder = folderWith({
      'course/.git/': '',
      'course/note.md': '# T\n\n![in](in.png) ![out](../out.png) ![text](note.md)\n',
      'course/in.png': Buffer.from('iVBORw0KGgo=', 'base64'),
      'out.png': Buffer.from('iVBORw0KGgo=', 'base64'),
    });
    const { out, err, status } = nappe(['handout', 'note.md'], { cwd: join(folder, 'course') });
    expect(out.match(/<img [^>]*>/gu)).toEqual(['<img src="data:image/png;base64,iVBORw0KGgo=" alt="in">']);
    expect(err).toContain('note.md:3: The picture “../out.png” is not in the page');
    expect(err).toContain('it is no PNG, JPEG, GIF, WebP or SVG');
    expect(status).toBe(1);
  });

  it('of the sample course is carried out without a word', () => {
    const folder = folderWith({});
    const output = join(folder, 'booklet.html');
    expect(nappe(['handout', 'samples/course/booklet.md', '-o', output], here)).toEqual({ status: 0, out: '', err: '' });
    expect(existsSync(output)).toBe(true);
    expect(nappe(['handout', 'samples/course/booklet.md', '--to', 'md'], here).out).toContain('## Contents');
  });
});
