/** The packaged extension in a real VS Code: one formula opened, broken, mended, printed, renamed, laid out and completed. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Frame, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, test } from 'vitest';
import {
  cardFrame,
  cursor,
  type Editor,
  frameOfCard,
  go,
  lineText,
  openFile,
  patience,
  retype,
  run,
  screenshot,
  startEditor,
  until,
} from './editor.ts';

let editor: Editor;

beforeAll(async () => {
  editor = await startEditor({
    'custard.nappe': 'extension/walkthrough/pouring-custard.nappe',
    'bases.nappe': 'samples/bases.nappe',
    'bavarois.nappe': 'samples/hojicha-bavarois.nappe',
    'booklet.md': 'extension/README.md',
  });
}, 3 * patience);
afterAll(() => editor?.stop());
afterEach(async ({ task }) => {
  if (task.result?.state === 'fail' && editor) await screenshot(editor.page, `failed-${task.name.replace(/\W+/g, '-')}`);
});

/** The card that shows a text, of those there are. */
async function frameShowing(page: Page, title: string): Promise<Frame> {
  let found: Frame | undefined;
  await until(async () => {
    for (const frame of page.frames())
      if (
        (await frame
          .locator('h1.title', { hasText: title })
          .count()
          .catch(() => 0)) > 0
      )
        found = frame;
    return found !== undefined;
  });
  return found as Frame;
}

/** Whether some webview, whichever it is, shows a text. */
async function someFrameSays(page: Page, text: string): Promise<boolean> {
  const said = await Promise.all(
    page.frames().map((frame) => frame.evaluate(() => document.body?.textContent ?? '').catch(() => '')),
  );
  return said.some((words) => words.includes(text));
}

const squiggle = '.view-overlays .squiggly-error';

test(
  'a sample opens, coloured, with nothing wrong',
  async () => {
    const { page } = editor;
    await openFile(page, 'custard.nappe');
    const status = page.locator('.statusbar-item', { hasText: '570 g' }).first();
    await status.waitFor();
    expect(await page.locator(squiggle).count()).toBe(0);
    const colours = await page
      .locator('.view-line span[class*="mtk"]')
      .evaluateAll((spans) => new Set(spans.map((span) => getComputedStyle(span).color)).size);
    expect(colours).toBeGreaterThan(3);
    await screenshot(page, '1-open');
  },
  2 * patience,
);

test(
  'broken by typing, it is underlined and listed with our code; the quick fix mends it',
  async () => {
    const { page } = editor;
    await retype(page, 13, 11, 5, '95');
    await page.locator(squiggle).first().waitFor();
    await run(page, 'Problems: Focus on Problems View');
    const entry = page.locator('.markers-panel .monaco-list-row', { hasText: 'custard-curdles' });
    await entry.first().waitFor();
    expect(await entry.first().textContent()).toContain('The custard may reach 95');
    await page.locator('.statusbar-item', { hasText: '1 error' }).first().waitFor();
    await screenshot(page, '2-broken');

    await page.keyboard.press('Control+1');
    await go(page, 13, 11);
    await page.keyboard.press('Control+.');
    // The first of the list is chosen.
    await page.locator('.action-widget .monaco-list-row.focused', { hasText: 'Change the reading to 82-84' }).waitFor();
    await page.keyboard.press('Enter');
    await page.locator(squiggle).waitFor({ state: 'detached' });
    await until(
      async () => (await page.locator('.markers-panel .monaco-list-row', { hasText: 'custard-curdles' }).count()) === 0,
    );
    expect(await lineText(page, 13)).toContain('cook to 82-84 °C until nappe');
    await screenshot(page, '3-mended');
  },
  4 * patience,
);

test(
  'the card follows the typing, marks the step under the cursor, and a click on a step leads to its line',
  async () => {
    const { page } = editor;
    await run(page, 'Nappe: Open the Card Beside');
    const card = cardFrame(page);
    await card.locator('.title', { hasText: 'Pouring custard' }).waitFor();
    await card.locator('.weigh .amount', { hasText: '400 g' }).waitFor();

    await page.keyboard.press('Control+1');
    await retype(page, 7, 3, 3, '500');
    await card.locator('.weigh .amount', { hasText: '500 g' }).waitFor();

    await go(page, 12, 3);
    await card.locator('.steps > li.here', { hasText: /temper/i }).waitFor();
    await screenshot(page, '4-card');

    await card.locator('.steps > li', { hasText: /chill/i }).click();
    await until(async () => (await cursor(page)) === 'Ln 15, Col 3');
    await card.locator('.steps > li.here', { hasText: /chill/i }).waitFor();
  },
  4 * patience,
);

test(
  'the card keeps its yield, units, language and scroll while the text changes',
  async () => {
    const { page } = editor;
    const card = cardFrame(page);
    await card.locator('#for').fill('2 kg');
    await card.locator('#language').selectOption('fr');
    await card.locator('.title').waitFor();
    await until(
      async () =>
        /kg/.test((await card.locator('.facts').textContent()) ?? '') &&
        (await card.locator('article').getAttribute('lang')) === 'fr',
    );
    const frame = await frameOfCard(page);
    await frame.evaluate(() => window.scrollTo(0, 220));
    const before = await card.locator('.weigh').textContent();
    await page.keyboard.press('Control+1');
    await retype(page, 8, 3, 3, '120');
    await until(async () => (await card.locator('.weigh').textContent()) !== before);
    expect(await card.locator('#for').inputValue()).toBe('2 kg');
    expect(await card.locator('#language').inputValue()).toBe('fr');
    expect(await frame.evaluate(() => window.scrollY)).toBe(220);
    await screenshot(page, '5-card-in-french');
    await card.locator('#for').fill('');
    await card.locator('#language').selectOption('en');
  },
  3 * patience,
);

test(
  'the card’s page may run and load nothing but the extension’s own',
  async () => {
    const frame = await frameOfCard(editor.page);
    const policy = await frame.evaluate(() => document.querySelector('meta[http-equiv]')?.getAttribute('content'));
    expect(policy).toMatch(/^default-src 'none'; script-src \S+ ?\S*; style-src \S+ ?\S*; base-uri 'none'; form-action 'none'$/);
    expect(policy).not.toMatch(/unsafe|\*(?!\.vscode)/);
    expect(
      await frame.evaluate(() => {
        const script = document.createElement('script');
        script.textContent = 'window.ran = true';
        document.body.append(script);
        return 'ran' in window;
      }),
    ).toBe(false);
  },
  patience,
);

test(
  'a name is renamed where it is given and where it is used',
  async () => {
    const { page } = editor;
    await page.keyboard.press('Control+1');
    await go(page, 10, 58);
    await page.keyboard.press('F2');
    const input = page.locator('.rename-box input.rename-input');
    await input.waitFor();
    await input.fill('yolk base');
    await page.keyboard.press('Enter');
    await until(async () => (await lineText(page, 12)).includes('temper whole milk into yolk base') === true);
    expect(await lineText(page, 10)).toContain('as yolk base');
  },
  2 * patience,
);

test(
  'a line out of place is laid out',
  async () => {
    const { page } = editor;
    await go(page, 15, 1);
    await page.keyboard.type('      ');
    await page.keyboard.press('Escape');
    await run(page, 'Format Document');
    await until(async () => (await lineText(page, 15)) === '  chill to 4 °C for 3 h');
  },
  2 * patience,
);

test(
  'a line is completed from what is there to act on',
  async () => {
    const { page } = editor;
    await go(page, 15, 26);
    await page.keyboard.press('End');
    await page.keyboard.press('Enter');
    await page.keyboard.type('garn', { delay: 60 });
    const row = page.locator('.suggest-widget .monaco-list-row', { hasText: 'garnish' }).first();
    await row.waitFor();
    await screenshot(page, '6-completion');
    await page.keyboard.press('Escape');
    await page.keyboard.press('Control+Z');
  },
  2 * patience,
);

test(
  'the formula is scaled in its own text',
  async () => {
    const { page } = editor;
    const amount = async () => await lineText(page, 7);
    expect(await amount()).toContain('500 g');
    await run(page, 'Nappe: Scale the Formula…');
    const input = page.locator('.quick-input-widget input[type="text"]').first();
    await input.waitFor();
    await input.fill('× 2');
    await page.keyboard.press('Enter');
    await until(async () => (await amount())?.includes('1000 g') === true || (await amount())?.includes('1 kg') === true);
  },
  2 * patience,
);

test(
  'what changed since the last commit is said in words',
  async () => {
    const { page } = editor;
    await run(page, 'Nappe: Compare with the Last Commit');
    await until(() => someFrameSays(page, 'What changed: Pouring custard'));
    await screenshot(page, '7-changes');
  },
  2 * patience,
);

test(
  'a component of the bases is taken',
  async () => {
    const { page } = editor;
    await openFile(page, 'bavarois.nappe');
    await run(page, 'Nappe: Insert a Component from the Bases…');
    const row = page.locator('.quick-input-list .monaco-list-row', { hasText: 'Italian meringue' });
    await row.first().click();
    // Two editors stand side by side here: the line is looked for in either.
    await page.locator('.view-line', { hasText: 'take Italian meringue from "bases.nappe"' }).first().waitFor();
  },
  2 * patience,
);

test(
  'a fault is explained on a page of its own',
  async () => {
    const { page } = editor;
    await openFile(page, 'custard.nappe');
    await retype(page, 13, 11, 5, '95');
    await page.locator(squiggle).first().waitFor();
    await go(page, 13, 11);
    await run(page, 'Nappe: Explain This Fault');
    await until(() => someFrameSays(page, 'custard-curdles'));
    await screenshot(page, '8-explained');
  },
  3 * patience,
);

test(
  'the walkthrough’s sample opens, unsaved, and is checked like any other',
  async () => {
    const { page } = editor;
    await page.keyboard.press('Control+1');
    await run(page, 'Nappe: Open the Sample Formula');
    await page.locator('.tab.active[data-resource-name^="Untitled"]').first().waitFor();
    await retype(page, 13, 11, 5, '95');
    await page.locator(squiggle).first().waitFor();
    await page.locator('.statusbar-item', { hasText: '1 error' }).first().waitFor();
    await screenshot(page, '9-sample');
  },
  2 * patience,
);

test(
  'the card is saved as a page and as Markdown',
  async () => {
    const { page, folder } = editor;
    await openFile(page, 'bavarois.nappe');
    await run(page, 'Nappe: Open the Card Beside');
    await until(() => someFrameSays(page, 'Hojicha bavarois'));
    for (const [name, begins] of [
      ['card.html', /^<!doctype html>/i],
      ['card.md', /^# Hojicha bavarois/],
    ] as const) {
      await page.keyboard.press('Control+1');
      await run(page, 'Nappe: Save the Card as HTML or Markdown…');
      const input = page.locator('.quick-input-widget input[type="text"]').first();
      // The dialog writes its own proposal first.
      await until(async () => (await input.inputValue().catch(() => '')).endsWith('hojicha-bavarois.html'));
      await input.fill(join(folder, name));
      await page.locator('.quick-input-widget').getByText('OK', { exact: true }).click();
      await until(async () => existsSync(join(folder, name)) && begins.test(readFileSync(join(folder, name), 'utf8')));
    }
    await screenshot(page, '10-saved');
  },
  3 * patience,
);

test(
  'after the window is loaded anew, the card is there again with what was chosen',
  async () => {
    const { page } = editor;
    const card = await frameShowing(page, 'Hojicha bavarois');
    await card.locator('select[data-choice="flavour"]').selectOption('raspberry');
    await until(async () => /raspberry purée/.test((await card.locator('.weigh').first().textContent()) ?? ''));
    await page.keyboard.press('Control+1');
    const loaded = page.waitForEvent('load');
    await run(page, 'Developer: Reload Window');
    await loaded;
    await page.locator('.monaco-workbench').waitFor();
    const again = await frameShowing(page, 'Hojicha bavarois');
    await until(async () => /raspberry purée/.test((await again.locator('.weigh').first().textContent()) ?? ''));
    expect(await again.locator('select[data-choice="flavour"]').inputValue()).toBe('raspberry');
    await screenshot(page, '11-again');
  },
  3 * patience,
);

test(
  'a fence in Markdown has the colours of a formula',
  async () => {
    const { page } = editor;
    await openFile(page, 'booklet.md');
    await go(page, 15);
    const classOf = (text: string) =>
      page
        .locator('.editor-instance')
        .first()
        .locator('.view-line > span > span', { hasText: new RegExp(`^\\s*${text}\\s*$`) })
        .first()
        .getAttribute('class');
    expect(await classOf('whisk')).toMatch(/mtk\d+/);
    await screenshot(page, '12-markdown');
    expect(await classOf('whisk')).not.toBe(await classOf('as'));
  },
  2 * patience,
);

test('nothing outside was asked for, and what is installed is small', () => {
  expect(editor.strangers).toEqual([]);
  const manifest = JSON.parse(readFileSync(join(editor.extensions, 'extensions.json'), 'utf8')) as {
    identifier: { id: string };
  }[];
  expect(manifest.map(({ identifier }) => identifier.id)).toEqual(['nappe.nappe-extension']);
});
