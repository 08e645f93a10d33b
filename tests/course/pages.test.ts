/** The pages of lists, timelines and labels in a real browser: nothing asked for, readable by everyone, whole on paper. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { labelHtml, labelOf } from '../../compiler/src/label/index.ts';
import { timeline, timelineHtml } from '../../compiler/src/timeline/index.ts';
import { weighOut, weighOutHtml } from '../../compiler/src/weigh-out/index.ts';
import { launch, layoutFaults, open, printWidths } from '../card/browser.ts';
import { order } from './support.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const orders = [
  order('samples/course/lesson-1-custard.nappe', { for: '24 glasses' }),
  order('samples/course/lesson-2-ganache.nappe', { for: '24 glasses' }),
  order('samples/harbour-entremets.nappe'),
];

const pages: readonly (readonly [string, string])[] = [
  ['a weigh-out', weighOutHtml(weighOut(orders))],
  ['a timeline', timelineHtml(timeline(orders, { ready: '19:30' }))],
  ['a timeline without a time of day', timelineHtml(timeline(orders.slice(0, 1)))],
  ['a European label', labelHtml(labelOf(orders[2]!, { region: 'eu', made: '2025-11-25' }))],
  ['an American label', labelHtml(labelOf(orders[2]!, { region: 'us', made: '2025-11-25' }))],
];

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
});

describe.each(pages)('%s', (_, html) => {
  it('passes axe-core, asks for nothing and runs nothing', async () => {
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
    expect(requests.filter((url) => url !== 'about:blank')).toEqual([]);
    expect(noise).toEqual([]);
    await page.context().close();
  });

  it('is whole on A4, on Letter and on a phone', async () => {
    for (const width of [printWidths.A4, printWidths.Letter]) {
      const { page } = await open(browser, html, { viewport: { width, height: 900 } });
      await page.emulateMedia({ media: 'print' });
      expect(await layoutFaults(page, 12)).toEqual([]);
      await page.context().close();
    }
    const { page } = await open(browser, html, { viewport: { width: 360, height: 740 } });
    expect((await layoutFaults(page, 10)).filter((fault) => fault.startsWith('overflow'))).toEqual([]);
    await page.context().close();
  });
});
