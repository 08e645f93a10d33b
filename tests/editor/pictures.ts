/** The two pictures of the README, taken in the real editor: a fault where it stands with its card beside, and a card. */
import { mkdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { cardFrame, frameOfCard, go, openFile, retype, root, run, startEditor } from './editor.ts';

/** Bytes; a README should open on a slow line. */
const largest = 150_000;

const folder = join(root, 'samples/pictures');
mkdirSync(folder, { recursive: true });
const editor = await startEditor({ 'custard.nappe': 'extension/walkthrough/pouring-custard.nappe' });
try {
  const { page } = editor;
  await page.setViewportSize({ width: 1160, height: 680 });
  await openFile(page, 'custard.nappe');
  await page.keyboard.press('Control+B');
  await run(page, 'Nappe: Open the Card Beside');
  const card = cardFrame(page);
  await card.locator('h1.title', { hasText: 'Pouring custard' }).waitFor();
  await page.keyboard.press('Control+1');
  await retype(page, 13, 11, 5, '95');
  await page.locator('.view-overlays .squiggly-error').first().waitFor();
  await go(page, 13, 11);
  await card.locator('.stamp').first().waitFor();
  await card.locator('.steps > li.here').waitFor();
  await run(page, 'Problems: Focus on Problems View');
  await page.locator('.markers-panel .monaco-list-row', { hasText: 'custard-curdles' }).first().waitFor();
  await page.keyboard.press('Control+1');
  const frame = await frameOfCard(page);
  await frame.evaluate(() => window.scrollTo(0, 0));
  await page.locator('.codelens-decoration', { hasText: 'makes 570 g' }).first().waitFor();
  await page.waitForTimeout(600);
  await page.screenshot({ path: join(folder, 'editor.png') });

  await page.keyboard.press('Escape');
  await retype(page, 13, 11, 2, '82-84');
  await card.locator('.stamp').waitFor({ state: 'detached' });
  await run(page, 'Nappe: Save the Card as HTML or Markdown…');
  const file = join(editor.folder, 'card.html');
  const input = page.locator('.quick-input-widget input[type="text"]').first();
  await page.waitForFunction(() =>
    document.querySelector<HTMLInputElement>('.quick-input-widget input')?.value.endsWith('.html'),
  );
  await input.fill(file);
  await page.locator('.quick-input-widget').getByText('OK', { exact: true }).click();
  await page.locator('.notification-toast', { hasText: 'The card is saved' }).waitFor();
  await page.setViewportSize({ width: 860, height: 900 });
  await page.setContent(readFileSync(file, 'utf8'));
  await page.screenshot({ path: join(folder, 'card.png') });
} finally {
  await editor.stop();
}
for (const name of ['editor.png', 'card.png']) {
  const { size } = statSync(join(folder, name));
  console.log(`samples/pictures/${name}  ${Math.round(size / 1000)} kB`);
  if (size > largest) throw new Error(`${name} is larger than ${largest / 1000} kB`);
}
