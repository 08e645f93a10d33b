/** The real browser of the card tests: pages opened from text, and the layout faults a test can name. */
import { existsSync } from 'node:fs';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';

/** Debian's; elsewhere say where it is. */
const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium';

export async function launch(): Promise<Browser> {
  if (!existsSync(executablePath)) throw new Error(`these tests need Chromium at ${executablePath}, or its path in CHROMIUM`);
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  });
}

export interface Opened {
  readonly page: Page;
  /** Everything the page asked for. */
  readonly requests: readonly string[];
  /** What it wrote to the console or opened as a dialog. */
  readonly noise: readonly string[];
}

export async function open(browser: Browser, html: string, options: BrowserContextOptions = {}): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 1000, height: 900 }, ...options });
  const page = await context.newPage();
  const requests: string[] = [];
  const noise: string[] = [];
  page.on('request', (request) => requests.push(request.url()));
  page.on('console', (message) => noise.push(message.text()));
  page.on('pageerror', (error) => noise.push(error.message));
  page.on('dialog', (dialog) => {
    noise.push(dialog.message());
    void dialog.dismiss();
  });
  await page.setContent(html, { waitUntil: 'load' });
  return { page, requests, noise };
}

/** Width in CSS pixels of what A4 (210 mm) and Letter (8.5 in) have between margins of 12 mm. */
export const printWidths = { A4: Math.floor(((210 - 24) / 25.4) * 96), Letter: Math.floor((8.5 - 24 / 25.4) * 96) } as const;

/** Pages of a PDF that Chromium wrote; its page objects are not compressed. */
export const pagesOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b(?!s)/gu)?.length ?? 0;

/** Faults of layout, each in words: text that leaves the page, texts that lie on each other, text too small to read. */
export function layoutFaults(page: Page, smallest: number): Promise<string[]> {
  return page.evaluate((least) => {
    const faults: string[] = [];
    const words = (element: Element): string =>
      `${element.tagName.toLowerCase()} “${(element.textContent ?? '').trim().slice(0, 40)}”`;
    const shown = (element: Element): boolean => {
      const style = getComputedStyle(element);
      return (
        style.visibility !== 'hidden' &&
        style.display !== 'none' &&
        element.closest('.unseen, title, desc, style, script') === null &&
        element.getClientRects().length > 0
      );
    };
    const page = document.documentElement;
    if (page.scrollWidth > window.innerWidth + 1)
      faults.push(`overflow: the page is ${page.scrollWidth} px wide in ${window.innerWidth}`);
    const leaves = [...document.querySelectorAll('main *')].filter(
      (element) =>
        shown(element) && [...element.childNodes].some((node) => node.nodeType === 3 && (node.textContent ?? '').trim() !== ''),
    );
    for (const element of leaves) {
      const box = element.getBoundingClientRect();
      if (element.closest('.scroll') === null && (box.right > window.innerWidth + 1 || box.left < -1))
        faults.push(`overflow: ${words(element)}`);
      const scale = element instanceof SVGTextElement ? (element.getScreenCTM()?.a ?? 1) : 1;
      const size = Number.parseFloat(getComputedStyle(element).fontSize) * scale;
      if (size < least - 0.05) faults.push(`small: ${words(element)} is ${size.toFixed(1)} px`);
    }
    // Inline texts flow, and cannot lie on each other; cells, items, paragraphs, headings and drawn labels could.
    const rows = leaves.filter(
      (element) =>
        element instanceof SVGTextElement ||
        ['block', 'table-cell', 'list-item', 'flex', 'grid'].includes(getComputedStyle(element).display),
    );
    const meets = (first: DOMRect, second: DOMRect): boolean =>
      Math.min(first.right, second.right) - Math.max(first.left, second.left) > 1.5 &&
      Math.min(first.bottom, second.bottom) - Math.max(first.top, second.top) > 2.5;
    // Text set in columns has one rectangle a column.
    const boxes = rows.map((row) => [...row.getClientRects()]);
    rows.forEach((a, index) => {
      for (let other = index + 1; other < rows.length; other++) {
        const b = rows[other]!;
        if (a.contains(b) || b.contains(a)) continue;
        if (boxes[index]!.some((first) => boxes[other]!.some((second) => meets(first, second))))
          faults.push(`overlap: ${words(a)} and ${words(b)}`);
      }
    });
    return faults;
  }, smallest);
}
