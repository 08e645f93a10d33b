/** Hostile names and notes never become markup, never run, and never break the page. */
import { HtmlValidate } from 'html-validate';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cardHtml, cardJson, cardMarkdown } from '../../compiler/src/card/index.ts';
import { plain } from '../../compiler/src/card/text.ts';
import { launch, layoutFaults, open, printWidths } from './browser.ts';
import { card } from './support.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
});

/** Marks, embeddings, overrides and isolates of direction (Unicode UAX 9), a bell and an escape. */
const turning = new Set(
  [0x200e, 0x200f, 0x061c, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069, 0x07, 0x1b].map((code) =>
    String.fromCodePoint(code),
  ),
);

const attacks: readonly (readonly [string, string])[] = [
  ['a script', '<script>alert(1)</script>'],
  ['an image that fails', '"><img src=x onerror=alert(1)>'],
  ['an entity', '&lt;b onclick=alert(1)&gt; &#60;script&#62;'],
  ['a link that runs', '[sugar](javascript:alert(1))'],
  ['an end of the data', '</script><script>alert(1)</script>'],
  ['an end of the style', '</style><style>*{display:none}</style>'],
  ['a comment', '<!-- --><svg onload=alert(1)>'],
  ['right-to-left marks', 'cream \u202e g 004 \u2066\u200f\u061c end'],
  ['controls', 'cre\u0007am\u001b[31m'],
  ['Markdown', '# big *bold* | cell | `code` ![x](http://tracker.example/a.png)'],
  ['ten thousand letters', 'sugar'.repeat(2000)],
  ['ten thousand letters in words', 'sugar '.repeat(1667)],
  ['letters that stack', `cream${'\u0301'.repeat(300)}`],
  ['emoji and Hebrew', '🍰 קרם ויסקי 抹茶'],
];

/** The text as a name, as free text and as a note, wherever a file may hold one. */
function formulaWith(text: string): { text: string } {
  const name = text.replace(/["\n]/gu, ' ').trim();
  return {
    text: `formula ${text}
  by ${text}
  version ${text}
  makes 12 glasses of 100 ml
  choice serving: "${name} a", "${name} b"
  | ${text}
component "${name} c"
  400 g  "${name} d", "${name}", 4 °C
    | ${text}
  200 g (“x” 3 g) caster sugar
  240 g  cream, 35 % fat, 4 °C
  heat "${name} d" to 80-84 °C until "${name}" as "${name} e"
    | ${text}
  add cream
  do "${name}"
  cool to 4 °C
assembly
  portion 100 ml into "${name} f"
  portion 100 ml into glass
  chill to 4 °C for 2 h
`.replace(/^.*“x”.*$/mu, '  200 g  caster sugar'),
  };
}

const allowedTags = new Set(
  'html head meta title style script body main article header footer section h1 h2 h3 h4 h5 h6 p span bdi strong em b time dl dt dd div ul ol li table caption thead tbody tr th td code pre del blockquote a br svg desc rect text line g path circle'.split(
    ' ',
  ),
);

describe.each(attacks)('%s', (_name, attack) => {
  const made = card(formulaWith(attack));
  const html = cardHtml(made);

  it('is text in the page, which stays valid, quiet and whole', async () => {
    const { page, requests, noise } = await open(browser, html);
    const found = await page.evaluate(() => ({
      tags: [...new Set([...document.querySelectorAll('*')].map((element) => element.tagName.toLowerCase()))],
      handlers: [...document.querySelectorAll('*')].flatMap((element) =>
        [...element.attributes].filter(({ name }) => name.startsWith('on') || name === 'src').map(({ name }) => name),
      ),
      links: [...document.querySelectorAll('a')].map((link) => link.href),
      scripts: [...document.querySelectorAll('script')].map((script) => script.type),
      title: document.querySelector('h1')?.textContent ?? '',
      hidden: getComputedStyle(document.querySelector('h1') ?? document.body).display,
    }));
    expect(found.tags.filter((tag) => !allowedTags.has(tag))).toEqual([]);
    expect(found.handlers).toEqual([]);
    expect(found.links.filter((link) => !/^(?:https?|mailto):/u.test(link))).toEqual([]);
    expect(found.scripts).toEqual(['application/ld+json']);
    expect(found.hidden).not.toBe('none');
    expect(found.title.replace(/\s+/gu, ' ').trim()).toBe(plain(attack).replace(/\s+/gu, ' ').trim());
    expect({ requests, noise }).toEqual({ requests: [], noise: [] });
    for (const width of [360, 1000]) {
      await page.setViewportSize({ width, height: 800 });
      expect((await layoutFaults(page, 12)).filter((fault) => fault.startsWith('overflow'))).toEqual([]);
    }
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: printWidths.A4, height: 1000 });
    expect((await layoutFaults(page, 12)).filter((fault) => fault.startsWith('overflow'))).toEqual([]);
    await page.context().close();
  });

  it('leaves the HTML valid and the data whole', async () => {
    const report = await new HtmlValidate({
      extends: ['html-validate:standard'],
      rules: { 'no-trailing-whitespace': 'off' },
    }).validateString(html);
    expect(
      report.results.flatMap(({ messages }) => messages.map(({ ruleId, message }) => `${ruleId} ${message}`.slice(0, 200))),
    ).toEqual([]);
    const [, data = ''] = /<script type="application\/ld\+json">(.*?)<\/script>/su.exec(html) ?? [];
    expect(JSON.parse(data)['@type']).toBe('Recipe');
    expect(JSON.parse(JSON.stringify(cardJson(made))).version).toBe(1);
  });

  it('is text in Markdown too', async () => {
    const markdown = cardMarkdown(made);
    expect(/(?<!\\)<(?:script|img|svg|style|b )/iu.test(markdown)).toBe(false);
    expect(/(?<!\\)\]\((?!https?:|mailto:)/u.test(markdown)).toBe(false);
    // No mark in any output turns the order of reading.
    for (const output of [html, markdown]) expect([...output].filter((letter) => turning.has(letter))).toEqual([]);
  });
});
