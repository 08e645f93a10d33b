/** No text of a file becomes markup that runs, loads or leads away: published attack strings in every place, on every page of HTML. */
import { spawn } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { toHtml } from 'hast-util-to-html';
import type { Browser } from 'playwright-core';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { type Card, cardHtml, cardMarkdown } from '../../compiler/src/card/index.ts';
import { previewHtml, previewMain, previewPart } from '../../compiler/src/cli/preview-page.ts';
import { handoutOf as handoutFrom, handoutHtml, handoutMarkdown, type Picture } from '../../compiler/src/handout/index.ts';
import { createWorkspace } from '../../compiler/src/index.ts';
import { labelHtml, labelOf } from '../../compiler/src/label/index.ts';
import { timeline, timelineHtml } from '../../compiler/src/timeline/index.ts';
import { weighOut, weighOutHtml } from '../../compiler/src/weigh-out/index.ts';
import { launch } from '../card/browser.ts';
import { card } from '../card/support.ts';
import { folderWith, program } from '../cli/nappe.ts';
import { order } from '../course/support.ts';
import { faultsOf, handoutTags, ownTags, shown } from './pages.ts';
import { faultyOf, formulaOf, handoutOf, strings } from './strings.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launch();
});
afterAll(async () => {
  await browser?.close();
});

test('the strings are many, and do what is said of them where nothing holds them', async () => {
  expect(strings.length).toBeGreaterThan(400);
  const some = strings.filter((_, i) => i % 4 === 0);
  const { noise, requests } = await shown(browser, some, 1);
  expect(noise.filter((one) => one.startsWith('ran')).length).toBeGreaterThan(10);
  expect(requests.length).toBeGreaterThan(2);
  const page = await browser.newPage();
  expect((await faultsOf(page, strings, ownTags)).length).toBeGreaterThan(150);
  await page.close();
});

async function expectAllowed(pages: readonly string[], tags: readonly string[]): Promise<void> {
  const page = await browser.newPage();
  expect(await faultsOf(page, pages, tags)).toEqual([]);
  await page.close();
}

async function expectQuiet(pages: readonly string[], tags: readonly string[]): Promise<void> {
  await expectAllowed(pages, tags);
  expect(await shown(browser, pages)).toEqual({ requests: [], noise: [] });
}

/** A part of the strings, for a page whose other sizes and languages had all of them. */
const part = strings.filter((_, i) => i % 5 === 0);

let made: readonly Card[] | undefined;

/** A card of each string. */
function cards(): readonly Card[] {
  made ??= strings.map((text) => card({ text: formulaOf(text) }));
  return made;
}

describe('pages of a formula', () => {
  const source = (text: string) => ({ text: formulaOf(text) });

  test('cards', async () => {
    await expectQuiet(cards().map(cardHtml), ownTags);
  });

  test('bench cards in US measures, in French', async () => {
    await expectQuiet(
      part.map((text) => cardHtml(card(source(text), { detail: 'brief', units: 'both', language: 'fr' }))),
      ownTags,
    );
  });

  test('lists, timelines and labels', async () => {
    const pages = part.flatMap((text) => {
      const one = order(source(text));
      return [
        weighOutHtml(weighOut([one])),
        timelineHtml(timeline([one], { ready: '18:30' })),
        labelHtml(labelOf(one, { region: 'eu', made: '2025-11-25', checked: true })),
      ];
    });
    await expectQuiet(pages, ownTags);
  });
});

/** A workspace of one file. */
function alone(path: string, text: string) {
  const read = (wanted: string) => (wanted === path ? { text } : { refused: 'missing' as const, why: 'there is no such file' });
  return createWorkspace({ root: '/work', read });
}

function handout(text: string) {
  const path = '/work/note.md';
  const workspace = alone(path, text);
  const made = handoutFrom({ workspace, path, fileName: (one) => one.replace('/work/', ''), date: '2025-11-25' });
  if (!made) throw new Error('too deep');
  const picture = (): Picture => ({ refused: 'missing', why: 'there is no such file' });
  return { html: handoutHtml(made, workspace, picture).html, markdown: handoutMarkdown(made) };
}

describe('handouts', () => {
  let booklets: readonly ReturnType<typeof handout>[];
  beforeAll(() => {
    booklets = strings.map((text) => handout(handoutOf(text)));
  });

  test('as pages', async () => {
    await expectQuiet(
      booklets.map(({ html }) => html),
      handoutTags,
    );
  });

  test('with what the fences ask for', async () => {
    const fence = (lines: string) => `\`\`\`nappe\n${lines}\`\`\`\n`;
    const asked = fence('weigh-out for 24 glasses\ntimeline ready 18:30\n');
    await expectQuiet(
      part.flatMap((text) => [`${fence(formulaOf(text))}\n${asked}`, fence(faultyOf(text))]).map((text) => handout(text).html),
      handoutTags,
    );
  });

  test('as Markdown, and cards as Markdown, read by a reader that lets HTML stand', async () => {
    const reader = unified().use(remarkParse).use(remarkGfm).use(remarkRehype, { allowDangerousHtml: true });
    const read = (markdown: string): string =>
      `<body><main>${toHtml(reader.runSync(reader.parse(markdown)), { allowDangerousHtml: true })}</main>`;
    const ofCards = cards().map((one) => read(cardMarkdown(one)));
    await expectAllowed(ofCards, [...handoutTags, 'input']);
    const pages = [...booklets.map(({ markdown }) => read(markdown)), ...ofCards];
    await expectAllowed(pages, [...handoutTags, 'input', 'img']);
    // Pictures stay for the forge to show: none is read for them here, and where they stand is the author's word.
    const { noise } = await shown(browser, pages);
    expect(noise.filter((one) => !one.startsWith('console: Failed to load resource'))).toEqual([]);
  });
});

/** It is asked for by its name alone, once. */
const ownScript = /<script src="\/preview\.js" defer(?:="")?><\/script>/;

describe('the preview', () => {
  test('of formulas and of faults, as the page and as the part that is put into it', async () => {
    const mainOf = (source: string) => previewMain(alone('/work/a.nappe', source), '/work/a.nappe', { with: [] });
    const ten = strings.flatMap((_, i) => (i % 10 === 0 ? [strings.slice(i, i + 10)] : []));
    const pages = part.map((text) => previewHtml(text, mainOf(formulaOf(text)), '/preview.js').replace(ownScript, ''));
    const parts = ten.map((some) => `<body><main>${previewPart(mainOf(some.map(faultyOf).join('\n')))}</main>`);
    await expectQuiet([...pages, ...parts], ownTags);
  });

  test('served, in a file named for an attack, and drawn anew as it is saved', async () => {
    const name = '<img src=x onerror=alert(1)>.nappe';
    const some = strings.filter((_, i) => i % 8 === 0);
    const folder = folderWith({ [name]: some.map(formulaOf).join('\n') });
    const child = spawn(process.execPath, [program, 'preview', name], { cwd: folder, stdio: ['ignore', 'pipe', 'ignore'] });
    onTestFinished(() => void child.kill('SIGKILL'));
    const url = await new Promise<string>((resolve) =>
      child.stdout.once('data', (data: Buffer) => resolve(data.toString().trim())),
    );
    const page = await browser.newPage();
    const noise: string[] = [];
    page.on('console', (message) => noise.push(message.text()));
    page.on('pageerror', (error) => noise.push(error.message));
    page.on('dialog', (dialog) => {
      noise.push(dialog.message());
      void dialog.dismiss();
    });
    page.on('request', (request) => {
      if (!request.url().startsWith(new URL(url).origin)) noise.push(request.url());
    });
    await page.goto(url);
    await page.waitForFunction(() => document.querySelector('.state') !== null);
    expect(await page.locator('article').count()).toBe(some.length);
    writeFileSync(join(folder, name), some.map(faultyOf).join('\n'));
    await page.waitForSelector('aside li.error');
    const html = (await page.content()).replace(ownScript, '').replace(/<p class="state".*?<\/p>/, '');
    expect(await faultsOf(page, [html], ownTags)).toEqual([]);
    expect(noise).toEqual([]);
    await page.close();
  });
});
