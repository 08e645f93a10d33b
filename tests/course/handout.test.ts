/** Handouts: fences carried out, nothing raw, pictures inside, faults at their line; the course's booklet printed by a real browser. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { handoutHtml, handoutMarkdown, handoutOf, type Picture } from '../../compiler/src/handout/index.ts';
import { checkUnit, createWorkspace, type Files } from '../../compiler/src/index.ts';
import { launch, layoutFaults, open, printWidths } from '../card/browser.ts';
import { headingsOf } from './pdf.ts';
import { root } from './support.ts';

const png = 'iVBORw0KGgo=';

/** A handout `note.md` beside the files given, or one of the repository. */
function made(source: string | { readonly text: string; readonly files?: Readonly<Record<string, string>> }) {
  const own = typeof source === 'string' ? {} : { 'note.md': source.text, ...source.files };
  const home = typeof source === 'string' ? root : '/work';
  const path = typeof source === 'string' ? `${root}/${source}` : '/work/note.md';
  const files: Files = {
    root: home,
    read(wanted) {
      const text = (own as Record<string, string>)[wanted.replace('/work/', '')];
      if (text !== undefined) return { text };
      try {
        if (typeof source === 'string') return { text: readFileSync(wanted, 'utf8') };
      } catch {
        // Missing, as below.
      }
      return { refused: 'missing', why: 'there is no such file' };
    },
  };
  const workspace = createWorkspace(files);
  const fileName = (one: string): string => one.replace(`${home}/`, '');
  const handout = handoutOf({ workspace, path, fileName, date: '2025-11-25' });
  if (!handout) throw new Error('too deep');
  const asked: string[] = [];
  const picture = (one: string): Picture => {
    asked.push(one);
    return one.endsWith('.png') ? { type: 'image/png', base64: png } : { refused: 'missing', why: 'there is no such file' };
  };
  const booklet = handoutHtml(handout, workspace, picture);
  return {
    handout,
    html: booklet.html,
    body: booklet.html.slice(booklet.html.indexOf('<body>')),
    faults: [...handout.faults, ...booklet.faults],
    markdown: handoutMarkdown(handout),
    asked,
    checked: () => checkUnit(workspace, path, { fileName }).diagnostics,
  };
}

const text = (markdown: string, files?: Readonly<Record<string, string>>) => made({ text: markdown, ...(files && { files }) });

const fruit = `formula Fruit glass
  makes 12 glasses of 80 g
  960 g  raspberry purée, pasteurised, 4 °C
    | Shake it first.
  portion 80 g into glass
`;

const fence = (notation: string, info = 'nappe'): string => `\`\`\`${info}\n${notation}\`\`\`\n`;

describe('fences', () => {
  it('become cards, at the size a request asks for', () => {
    const { body, markdown, faults } = text(
      `# Notes\n\n## Glass\n\n${fence(fruit)}\nand for more:\n\n${fence('card for 24 glasses\n')}`,
    );
    expect(faults).toEqual([]);
    expect(body.match(/<article class="card/gu)).toHaveLength(2);
    expect(body).toContain('1920\u00a0g');
    expect(markdown).toContain('### Fruit glass');
    expect(markdown).toContain('**1920 g**');
    expect(body).not.toContain('language-nappe');
  });

  it('keep what the teacher noted on the card', () => {
    expect(text(fence(fruit)).body).toContain('Shake it first.');
    expect(text(fence(fruit)).markdown).toContain('> Shake it first.');
  });

  it('are shown as text with `source`, and a card may still be asked for', () => {
    const { body, markdown } = text(`${fence(fruit, 'nappe source')}\n${fence('card\n')}`);
    expect(body).toContain('<pre class="notation');
    expect(body).toContain('<span class="word">formula</span> Fruit glass');
    expect(body).toContain('<span class="quantity">960 g</span>');
    expect(body.match(/<article/gu)).toHaveLength(1);
    expect(markdown).toContain('```nappe source\nformula Fruit glass');
  });

  it('of a formula over several fences make one card', () => {
    const two = `${fence('formula Two\n  makes 1 kg\n\ncomponent purée\n  1 kg  raspberry purée, pasteurised\n')}\nThen:\n\n${fence('assembly\n  pour purée into glass\n')}`;
    const { body, faults } = text(two);
    expect(faults).toEqual([]);
    expect(body.match(/<article/gu)).toHaveLength(1);
  });

  it('of a base of the handout’s own are shown, since nothing else would show it', () => {
    expect(text(fence('component sauce\n  100 g  raspberry purée, pasteurised\n')).body).toContain('<pre class="notation');
  });

  it('are replaced by lists, timelines and comparisons, from the workspace’s files', () => {
    const files = { 'fruit.nappe': fruit, 'old.nappe': fruit.replace('960', '900') };
    const request =
      'weigh-out "fruit.nappe" for 24 glasses, "fruit.nappe"\ntimeline "fruit.nappe" ready 18:30\ncompare "old.nappe" with "fruit.nappe"\n';
    const { body, markdown, faults } = text(`# T\n\n${fence(request)}`, files);
    expect(faults).toEqual([]);
    for (const heading of ['Weigh-out', 'Timeline: ready at 18:30', 'What changed: Fruit glass']) {
      expect(body).toContain(heading);
      expect(markdown).toContain(heading);
    }
    expect(body).toContain('2880\u00a0g');
  });

  it('that are indented in a list or quoted are left as they are', () => {
    const { body, faults } = text('- item\n\n      ```nappe\n      card\n      ```\n\n> ```nappe\n> card\n> ```\n');
    expect(faults).toEqual([]);
    expect(body).toContain('<blockquote>');
    expect(body).not.toContain('<article');
  });

  it('may be of another language, unclosed or empty', () => {
    const { body, faults } = text('```js\ncard\n```\n\n```nappe\n```\n\n~~~nappe\ncard "none.nappe"');
    expect(body).toContain('language-js');
    expect(faults).toHaveLength(1);
  });
});

describe('faults', () => {
  it('stand at the line of the handout, in the page and in `check`', () => {
    const files = {
      'fruit.nappe': fruit,
      'two.nappe': `${fruit}\n${fruit.replace('Fruit', 'Other')}`,
      'none.nappe': '// nothing\n',
    };
    const requests = [
      'card "missing.nappe"',
      'card "../outside.nappe"',
      'card "fruit.nappe" for 24 rings',
      'card "fruit.nappe#Sauce"',
      'weigh-out "two.nappe"',
      'timeline "none.nappe" ready 18:30',
      'compare "fruit.nappe" with "gone.nappe"',
    ];
    const { faults, body, checked, markdown } = text(`# T\n\n${fence(`${requests.join('\n')}\n`)}`, files);
    expect(faults.map(({ line }) => line)).toEqual([4, 5, 6, 7, 8, 9, 10]);
    for (const { line } of faults) {
      expect(body).toContain(`<b>Line ${line}: </b>`);
      expect(markdown).toContain(`**Line ${line}:**`);
    }
    const errors = checked().filter(({ severity }) => severity === 'error');
    expect(errors.map(({ line, file }) => [file, line])).toEqual([4, 5, 6, 7, 8, 9, 10].map((line) => ['note.md', line]));
  });

  it('in a formula of a fence mark its card, and are errors of the handout', () => {
    const broken = fruit.replace('portion 80 g into glass', 'pour nothing there into glass');
    const { faults, body, checked } = text(`# T\n\nText.\n\n${fence(broken)}`);
    expect(faults).toMatchObject([{ line: 6 }]);
    expect(body).toContain('class="unchecked"');
    expect(checked()).toMatchObject([{ file: 'note.md', line: 10, severity: 'error', code: 'unknown-name' }]);
  });

  it('in notation that cannot be read show the notation', () => {
    const { body, faults } = text(fence(`${fruit}  ?!\n`));
    expect(body).toContain('<pre class="notation');
    expect(faults.length).toBeGreaterThan(0);
  });
});

describe('Markdown', () => {
  it('has tables, footnotes, task lists and strikethrough (GFM 0.29)', () => {
    const { body } = text(
      '# T\n\n| a | b |\n|--|--:|\n| 1 | 2 |\n\nText[^1] ~~gone~~.\n\n- [x] done\n- [ ] open\n\n[^1]: The note.\n',
    );
    expect(body).toContain('<td align="right">2</td>');
    expect(body).toContain('<del>gone</del>');
    expect(body).toContain('☑');
    expect(body).not.toContain('<input');
    const [, target] = /href="#(note-fn-1)"/u.exec(body) ?? [];
    expect(body).toContain(`id="${target}"`);
  });

  it('gets a list of contents whose links lead somewhere', () => {
    const { body, markdown } = text(`# T\n\n## One & two\n\n### Inner\n\n## One & two\n\n${fence(fruit)}`);
    const links = [...body.matchAll(/href="#([^"]+)"/gu)].map(([, anchor]) => anchor);
    expect(links.length).toBe(4);
    for (const link of links) expect(body.match(new RegExp(` id="${link}"`, 'gu')), link).toHaveLength(1);
    // As forges make them: lower case, punctuation gone, spaces as hyphens, the second with -1.
    expect(markdown).toContain(
      '- [One & two](#one--two)\n  - [Inner](#inner)\n- [One & two](#one--two-1)\n  - [Fruit glass](#fruit-glass)',
    );
  });

  it('keeps a list of contents that is there', () => {
    expect(text('# T\n\n## Contents\n\n- a\n\n## One\n\n## Two\n').markdown.match(/Contents/gu)).toHaveLength(1);
  });

  it('breaks pages where it says so', () => {
    const { body, markdown } = text('# T\n\nOne\n\n<!-- page break -->\n\nTwo\n\n---\n\nThree\n');
    expect(body.match(/class="page-break"/gu)).toHaveLength(1);
    expect(body).toContain('<hr>');
    expect(markdown).toContain('<!-- page break -->');
  });
});

describe('raw HTML', () => {
  it('is made harmless, in the page and in Markdown', () => {
    const source = `# T <script>alert(1)</script>

<div onclick="x()" style="position:fixed" id="title"><b>Bold</b><script>alert(2)</script><img src="javascript:alert(3)" onerror="alert(4)"><iframe src="https://example.org"></iframe></div>

[bad](javascript:alert(5)) [data](data:text/html,x) [good](https://example.org/a) <form action="https://example.org"><input></form>

<style>body{display:none}</style>

<svg onload=alert(6)><script>alert(7)</script></svg>

| <img src=x onerror=alert(8)> |
|--|
| </table></main><h1>out</h1> |
`;
    const { body, markdown } = text(source);
    for (const out of [body, markdown]) {
      expect(out).not.toMatch(/<script|<style|<iframe|<svg|<form|onerror|onclick|onload|style=|javascript:alert\(3|data:text/u);
      expect(out).not.toMatch(/\]\(javascript:|href="(?!https:|#)/u);
      expect(out).toContain('Bold');
    }
    expect(body).toContain('href="https://example.org/a"');
    expect(body.match(/<\/main>/gu)).toHaveLength(1);
  });

  it('cannot get anything to run, whatever is written', () => {
    const bits = fc.constantFrom(
      '<',
      '>',
      '"',
      "'",
      '/',
      'script',
      'img',
      ' src=x',
      ' onerror=alert(1)',
      '<!--',
      '-->',
      '</style>',
      '```nappe\n',
      '```\n',
      '\n',
      '# ',
      '[a](',
      ')',
      'javascript:alert(1)',
      '&lt;',
      '<svg',
      '|',
      '> ',
      'formula ',
      'text ',
    );
    fc.assert(
      fc.property(fc.array(bits, { maxLength: 30 }), (words) => {
        const { body } = text(words.join(''));
        expect(body).not.toMatch(
          /<(?:script|svg|iframe|object|style)\b|<[^>]*\s(?:onerror|src="(?!data:image))|href="javascript/iu,
        );
      }),
      { numRuns: 200 },
    );
  });

  it('of a title cannot leave the style it is printed with', () => {
    const { html } = text('# "; } </style><script>alert(1)</script> \\ end\n\ntext\n');
    expect(html.match(/<\/style>/gu)).toHaveLength(1);
    expect(html).not.toContain('<script');
  });
});

describe('pictures', () => {
  it('from beside the file are in the page', () => {
    const { body, asked, faults } = text('# T\n\n![A bowl](pictures/a%20bowl.png)\n');
    expect(asked).toEqual(['/work/pictures/a bowl.png']);
    expect(body).toContain(`<img src="data:image/png;base64,${png}" alt="A bowl">`);
    expect(faults).toEqual([]);
  });

  it('from elsewhere are their words, and faults', () => {
    const { body, asked, faults } = text(
      '# T\n\n![out](../a.png) ![root](/a.png) ![web](https://example.org/a.png) ![no](no.jpg) ![twice](%252e%252e/a.png)\n',
    );
    expect(asked).toEqual(['/work/no.jpg']);
    expect(body).not.toContain('<img');
    expect(body).toContain('<em>out</em>');
    expect(faults.map(({ line }) => line)).toEqual([3, 3, 3, 3, 3]);
  });
});

it('says when a text nests deeper than it can follow', () => {
  const files: Files = { root: '/work', read: () => ({ text: '>'.repeat(3000) }) };
  const workspace = createWorkspace(files);
  expect(handoutOf({ workspace, path: '/work/note.md', fileName: (path) => path, date: '2025-11-25' })).toBeNull();
});

describe('the booklet of the sample course', () => {
  const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
  const { html, faults, markdown, checked } = made('samples/course/booklet.md');
  const cards = ['Orange blossom bavarois', 'Salted chocolate mousse', 'Apricot mousse', 'Two-storey glass', 'Almond leaves'];
  const chapters = [
    'Evening 1: the custard family',
    'What changed since last year',
    'Evening 2: the ganache family',
    'Evening 3: the meringue family',
    'Evening 4: two storeys',
    'A leaf for the top',
    'For the helpers: what to weigh out',
    'And when it must be ready',
  ];
  let browser: Browser;
  beforeAll(async () => {
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
  });

  it('has nothing wrong', () => {
    expect(faults).toEqual([]);
    expect(checked().filter(({ severity }) => severity !== 'notice')).toEqual([]);
  });

  it('asks for nothing, runs nothing, and passes axe-core', async () => {
    const { page, requests, noise } = await open(browser, html);
    await page.addScriptTag({ content: axe });
    const violations = await page.evaluate(async () => {
      const { axe: engine } = window as unknown as {
        axe: { run(context: Document): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
      };
      return (await engine.run(document)).violations.map(
        ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
      );
    });
    expect(violations).toEqual([]);
    expect(requests.filter((url) => !url.startsWith('data:') && url !== 'about:blank')).toEqual([]);
    expect(noise).toEqual([]);
    await page.context().close();
  });

  it.each([
    ['A4', 17],
    ['Letter', 20],
  ] as const)('prints on %s: cover, contents, chapters in order, one card a page', async (format, pages) => {
    const { page } = await open(browser, html);
    const printed = headingsOf(await page.pdf({ format, outline: true, tagged: true, preferCSSPageSize: true }));
    await page.context().close();
    expect(printed.pages).toBe(pages);
    const pageOf = (title: string, after = 0): number =>
      printed.headings.find((one) => one.title === title && one.page > after)?.page ?? 0;
    expect(printed.headings[0]).toEqual({ title: 'Three mousses, four evenings', page: 1 });
    expect(pageOf('Contents')).toBe(2);
    const starts = chapters.map((title) => pageOf(title));
    expect(starts.every((start) => start > 2)).toBe(true);
    expect(starts).toEqual([...starts].sort((a, b) => a - b));
    const cardPages = cards.map((title) => pageOf(title));
    expect(new Set(cardPages).size).toBe(cards.length);
    // A card's last heading stands on the page its first one does.
    for (const [index, title] of cards.entries()) {
      const at = printed.headings.findIndex((one) => one.title === title);
      const own = printed.headings.slice(at + 1).findIndex((one) => one.title === 'Allergens');
      expect(printed.headings[at + 1 + own]?.page, title).toBe(cardPages[index]);
    }
  });

  it.each(['A4', 'Letter'] as const)(
    'on %s keeps every card whole, with nothing cut off, overlapping or too small',
    async (format) => {
      const height = format === 'A4' ? 297 - 30 : 279.4 - 30;
      const { page } = await open(browser, html, { viewport: { width: printWidths[format], height: 900 } });
      await page.emulateMedia({ media: 'print' });
      const tall = await page.evaluate(
        (most) =>
          [...document.querySelectorAll('.card.brief')]
            .filter((card) => card.getBoundingClientRect().height > most)
            .map((card) => card.querySelector('.title')?.textContent),
        (height / 25.4) * 96,
      );
      expect(tall).toEqual([]);
      expect(await layoutFaults(page, 12)).toEqual([]);
      await page.context().close();
    },
  );

  it('fits a phone', async () => {
    const { page } = await open(browser, html, { viewport: { width: 360, height: 740 } });
    expect((await layoutFaults(page, 12)).filter((fault) => fault.startsWith('overflow'))).toEqual([]);
    await page.context().close();
  });

  it('is Markdown that keeps every chapter, card, list and note', () => {
    for (const title of [...chapters, ...cards, 'Weigh-out', 'Timeline: ready at 20:30', 'Timeline: ready at 19:30'])
      expect(markdown).toMatch(new RegExp(`^#+ ${title.replace(/[.*+?^$()|[\]\\]/gu, '\\$&')}`, 'mu'));
    expect(markdown).toContain('[^probe]: At the wall');
    expect(markdown).not.toMatch(/^card "/mu);
  });
});
