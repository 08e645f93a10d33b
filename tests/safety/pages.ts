/**
 * Pages held against what is allowed in them, in Chromium: its own parser says what they hold, and then it shows them. What is allowed is
 * written here and not taken from the sanitiser's settings.
 */
import type { Browser, Page } from 'playwright-core';

/** What the program's own pages are made of. */
export const ownTags =
  'html head meta title style body main article header footer section h1 h2 h3 h4 h5 h6 p span bdi strong em b i time dl dt dd div ul ol li table caption thead tbody tr th td code pre del blockquote a br hr sup sub aside svg defs pattern desc rect text line g path circle'.split(
    ' ',
  );

/** What Markdown and the harmless of HTML may bring into a handout: nothing that loads, sends, runs or frames. */
export const handoutTags = [
  ...ownTags,
  ...'nav details summary kbd ins s strike q samp var tt dfn abbr ruby rp rt tfoot colgroup col'.split(' '),
];

const attributes =
  'abbr align alt aria-describedby aria-hidden aria-label aria-labelledby axis charset cite class colspan content cx cy d data-footnote-backref data-footnote-ref data-footnotes datetime fill headers height href id itemprop lang name open patterntransform patternunits r role rowspan rx src type checked disabled scope span start stroke tabindex title transform value viewbox width x x1 x2 y y1 y2'.split(
    ' ',
  );

/** What of the pages is not allowed, in short words. */
export async function faultsOf(page: Page, pages: readonly string[], tags: readonly string[]): Promise<readonly string[]> {
  return page.evaluate(
    ({ all, allowedTags, allowedAttributes }) => {
      const faults = new Set<string>();
      for (const html of all) {
        const read = new DOMParser().parseFromString(html, 'text/html');
        for (const element of read.querySelectorAll('*')) {
          const tag = element.tagName.toLowerCase();
          if (tag === 'script' && element.getAttribute('type') === 'application/ld+json') {
            JSON.parse(element.textContent ?? '');
            continue;
          }
          if (!allowedTags.includes(tag)) faults.add(`<${tag}> in ${html.slice(0, 100)}`);
          for (const { name, value } of element.attributes) {
            const shown = `<${tag} ${name}="${value.slice(0, 60)}">`;
            if (!allowedAttributes.includes(name.toLowerCase())) faults.add(shown);
            else if (
              ['href', 'src'].includes(name) &&
              URL.canParse(value, 'https://example.org/') &&
              !['http:', 'https:', 'mailto:'].includes(new URL(value, 'https://example.org/').protocol)
            )
              faults.add(shown);
          }
        }
        if ([...read.body.children].some((child) => !['MAIN', 'SCRIPT'].includes(child.tagName)))
          faults.add(`something beside <main> in ${html.slice(0, 100)}`);
      }
      return [...faults];
    },
    { all: pages, allowedTags: tags, allowedAttributes: attributes },
  );
}

/** The pages in frames, scripts allowed, so many in each one below the other: what they ask for, run and say. */
export async function shown(
  browser: Browser,
  pages: readonly string[],
  together = 40,
): Promise<{ readonly requests: readonly string[]; readonly noise: readonly string[] }> {
  const page = await browser.newPage();
  const noise: string[] = [];
  const requests: string[] = [];
  await page.route('**/*', (route) => {
    requests.push(route.request().url());
    return route.abort();
  });
  page.on('console', (message) => noise.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => noise.push(`error: ${error.message}`));
  // A dialog waits for an answer; what would open one is counted instead.
  await page.exposeFunction('ran', (text: string) => noise.push(`ran: ${text}`));
  await page.addInitScript(() => {
    const ran = (text: unknown) => (window.top as unknown as { ran(text: string): void }).ran(String(text));
    Object.assign(window, { alert: ran, prompt: ran, confirm: ran });
  });
  await page.setContent('<title>pages</title>');
  const joined = pages.flatMap((_, at) => (at % together === 0 ? [joinedPage(pages.slice(at, at + together))] : []));
  await page.evaluate(
    (all) =>
      Promise.all(
        all.map(
          (html) =>
            new Promise<void>((resolve) => {
              const frame = document.createElement('iframe');
              // Nothing is laid out, which would take most of the time; what loads or runs does so all the same.
              frame.style.display = 'none';
              frame.onload = () => resolve();
              frame.srcdoc = html;
              document.body.append(frame);
            }),
        ),
      ),
    joined,
  );
  // What waits for its turn, such as a picture that fails, has had it.
  await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 100)));
  await page.close();
  return { requests: requests.filter((url) => !/^(?:about:|data:)/.test(url)), noise };
}

/** The head of the first, and the bodies of all, as they are written. */
const joinedPage = ([first = '', ...others]: readonly string[]): string =>
  first + others.map((html) => html.slice(html.indexOf('<body>'))).join('\n');
