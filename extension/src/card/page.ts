/** The script of the card's page: draws the card, keeps its scroll and what was chosen, marks steps and leads to their lines. */
import { drawBar, readWish } from './bar.ts';
import type { FromPage, Kept, ToPage, Wish } from './messages.ts';

declare function acquireVsCodeApi(): {
  postMessage(message: FromPage): void;
  getState(): Kept | undefined;
  setState(kept: Kept): void;
};

const editor = acquireVsCodeApi();
const problem = document.getElementById('problem')!;
const host = document.getElementById('card')!;
/** The card's own look stays inside, and the frame's outside. */
const paper = host.attachShadow({ mode: 'open' });
const marks = sheetOf(`
  .steps > li { cursor: pointer; scroll-margin-top: 6rem; }
  .steps > li:hover { background: #f6f1ea; }
  .steps > li.here { background: #fbe9c8; box-shadow: inset .25rem 0 #8c3a0a; }
  .steps > li:focus-visible { outline: 2px solid #8c3a0a; outline-offset: -2px; }`);

let kept = editor.getState();
let isFirst = true;
let here: readonly number[] = [];

window.addEventListener('message', ({ data }: MessageEvent<ToPage>) => {
  if (data.type === 'card') draw(data);
  else if (data.type === 'mark') mark(data.steps);
  else say(data.problem);
});
window.addEventListener('scroll', () => keep({ scroll: window.scrollY }), { passive: true });
document.getElementById('bar')!.addEventListener('submit', (event) => event.preventDefault());
document.getElementById('bar')!.addEventListener('input', () => wishFor(readWish(kept?.wish ?? {})));
document.getElementById('save')!.addEventListener('click', () => editor.postMessage({ type: 'save' }));
paper.addEventListener('click', (event) => lead(event.target));
paper.addEventListener('keydown', (event) => {
  if ((event as KeyboardEvent).key === 'Enter') lead(event.target);
});
editor.postMessage({ type: 'ready' });

function draw({ uri, wish, card }: Extract<ToPage, { type: 'card' }>): void {
  const scroll = isFirst ? (kept?.scroll ?? 0) : window.scrollY;
  isFirst = false;
  say('');
  drawBar(card, wish);
  const page = new DOMParser().parseFromString(card.html, 'text/html');
  const styles = [...page.querySelectorAll('style')].map(({ textContent }) => textContent ?? '');
  paper.adoptedStyleSheets = [sheetOf(styles.join('\n')), marks];
  paper.replaceChildren(...[...page.querySelectorAll('article')].map((article) => document.importNode(article, true)));
  for (const step of stepItems()) step.tabIndex = 0;
  host.hidden = false;
  mark(here, false);
  window.scrollTo({ top: scroll });
  keep({ uri, wish, scroll });
}

function mark(steps: readonly number[], shows = true): void {
  const moved = steps.join() !== here.join();
  here = steps;
  for (const step of stepItems()) {
    const is = steps.includes(step.value);
    step.classList.toggle('here', is);
    if (is) step.setAttribute('aria-current', 'step');
    else step.removeAttribute('aria-current');
    if (is && shows && moved) step.scrollIntoView({ block: 'nearest' });
  }
}

/** Under a problem the last card stays, pale: one keystroke later it may be whole again. */
function say(text: string): void {
  problem.textContent = text;
  problem.hidden = text === '';
  host.classList.toggle('stale', text !== '');
}

function lead(target: EventTarget | null): void {
  if (!(target instanceof Element) || target.closest('a')) return;
  const step = target.closest<HTMLLIElement>('.steps > li');
  if (step) editor.postMessage({ type: 'go', step: step.value });
}

function wishFor(wish: Wish): void {
  keep({ wish });
  editor.postMessage({ type: 'wish', wish });
}

function keep(part: Partial<Kept>): void {
  if (!kept && part.uri === undefined) return;
  kept = { uri: '', wish: {}, scroll: 0, ...kept, ...part };
  editor.setState(kept);
}

function stepItems(): readonly HTMLLIElement[] {
  return [...paper.querySelectorAll<HTMLLIElement>('.steps > li')];
}

/** A sheet made in script: no inline style that the page's policy would refuse. */
function sheetOf(css: string): CSSStyleSheet {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(css);
  return sheet;
}
