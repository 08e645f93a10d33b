/** The card as a page, in a real Chromium: valid, accessible, quiet, readable on a phone and on paper. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { HtmlValidate } from 'html-validate';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { cardHtml } from '../../compiler/src/card/index.ts';
import { launch, layoutFaults, open, pagesOf, printWidths } from './browser.ts';
import { card, samples, type Wanted } from './support.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
});

/** Every sample once, and the variants of one that has every kind of content. */
const pages: readonly (readonly [string, Wanted])[] = [
  ...samples.map((name) => [name, {}] as const),
  ...samples.map((name) => [name, { detail: 'brief' }] as const),
  ['hojicha-bavarois.nappe', { language: 'fr', units: 'both', for: '2.4 kg', with: ['raspberry', 'mould'] }],
  ['harbour-entremets.nappe', { language: 'de', units: 'us', for: '3 rings of 18 x 4.5 cm' }],
];
const title = ([name, wanted]: (typeof pages)[number]): string => `${name} ${JSON.stringify(wanted)}`;

describe.each(pages.map((page) => [title(page), ...page] as const))('%s', (_title, name, wanted) => {
  const html = cardHtml(card(name, wanted));

  it('is valid HTML', async () => {
    const report = await new HtmlValidate({
      extends: ['html-validate:recommended', 'html-validate:document', 'html-validate:a11y'],
      rules: { 'long-title': 'off', 'no-trailing-whitespace': 'off', 'doctype-style': 'off', 'attr-quotes': 'off' },
    }).validateString(html);
    expect(
      report.results.flatMap(({ messages }) =>
        messages.map(({ ruleId, message, line, column }) => `${ruleId} ${line}:${column} ${message}`),
      ),
    ).toEqual([]);
  });

  it('asks for nothing, runs nothing, fits every screen and has no accessibility violation', async () => {
    const { page, requests, noise } = await open(browser, html);
    expect(await page.locator('script:not([type="application/ld+json"])').count()).toBe(0);
    for (const width of [360, 720, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      // Drawn labels may be small on a phone: the drawing scrolls sideways instead.
      expect(await layoutFaults(page, 12), `${width} px`).toEqual([]);
    }
    expect(requests).toEqual([]);
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
    expect(noise).toEqual([]);
    await page.context().close();
  });

  it('prints on A4 and Letter with no row cut, nothing overlapping, nothing under 9 pt', async () => {
    const { page } = await open(browser, html);
    await page.emulateMedia({ media: 'print' });
    for (const format of ['A4', 'Letter'] as const) {
      await page.setViewportSize({ width: printWidths[format], height: 1000 });
      expect(await layoutFaults(page, 12), format).toEqual([]);
      // A row that may not be broken, and is lower than a page, is never cut in two.
      const rows = await page.evaluate(() =>
        [...document.querySelectorAll('main tr, main li, main svg')]
          .filter((row) => row.closest('.cautions') === null)
          .map((row) => ({
            html: row.outerHTML.slice(0, 80),
            whole: getComputedStyle(row).breakInside === 'avoid',
            height: row.getBoundingClientRect().height,
          })),
      );
      expect(rows.filter(({ whole, height }) => !whole || height > 900)).toEqual([]);
      const count = pagesOf(await page.pdf({ format }));
      if (wanted.detail === 'brief') expect(count, format).toBe(1);
      else expect(count, format).toBeGreaterThan(0);
    }
    await page.context().close();
  });
});

describe('without colour', () => {
  const html = cardHtml(card('hojicha-bavarois.nappe'));

  it('keeps every critical temperature in a box, with a word and a sign', async () => {
    for (const scheme of ['light', 'dark'] as const) {
      const { page } = await open(browser, html, { forcedColors: 'active', colorScheme: scheme });
      const marks = await page.evaluate(() =>
        [...document.querySelectorAll('.critical')].map((step) => {
          const box = getComputedStyle(step.querySelector('.reading') ?? step);
          return [
            step.querySelector('.flag')?.textContent,
            Number.parseFloat(box.borderTopWidth) >= 1.5,
            box.borderTopStyle,
            getComputedStyle(step.querySelector('.flag') ?? step, '::before').content.includes('▲'),
          ];
        }),
      );
      expect(marks.length).toBeGreaterThan(1);
      for (const mark of marks) expect(mark).toEqual(['Critical', true, 'solid', true]);
      // What is drawn takes the colours of the system too, so that black never lies on black.
      const ink = await page.evaluate(() => [
        getComputedStyle(document.querySelector('.line .main') ?? document.body).stroke,
        getComputedStyle(document.body).color,
      ]);
      expect(ink[0]).toBe(ink[1]);
      await page.context().close();
    }
  });

  it('reads without scripts', async () => {
    const { page } = await open(browser, html, { javaScriptEnabled: false });
    expect(await page.locator('h1').textContent()).toBe('Hojicha bavarois');
    expect(await page.locator('.steps > li').count()).toBeGreaterThan(10);
    await page.context().close();
  });
});
