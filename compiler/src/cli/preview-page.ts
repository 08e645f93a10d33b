/** The page of `nappe preview`: the cards of one file with its faults beside them, and the script that draws it anew. */
import type { Element } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { h } from 'hastscript';
import { cardArticle, makeCard } from '../card/index.ts';
import { pageHtml } from '../card/page.ts';
import { plain } from '../card/text.ts';
import type { Diagnostic } from '../diagnostics/rule.ts';
import { checkUnit } from '../index.ts';
import { selectionWith } from '../resolve/choices.ts';
import type { Workspace } from '../resolve/workspace.ts';
import { positionsIn, shownPath } from './formula.ts';

export interface PreviewOptions {
  readonly with: readonly string[];
  readonly for?: string;
}

/** The file as it is now, as the content of `main`; whatever is wrong with it is said there. */
export function previewMain(workspace: Workspace, path: string, options: PreviewOptions): Element {
  const source = workspace.source(path);
  if ('refused' in source) return h('p', { className: ['no-card'] }, plain(`${shownPath(path)}: ${source.why}`));
  const { diagnostics, faults } = checkUnit(workspace, path, { with: options.with, fileName: shownPath });
  const broken = faults.map(({ message }) =>
    h('p', { className: ['no-card'] }, plain(`The program itself failed here: ${message.split('\n')[0]}`)),
  );
  return h('div', { className: ['both'] }, [
    h('div', { className: ['cards'] }, [...broken, ...cards(workspace, path, options)]),
    faultList(diagnostics, shownPath(path)),
  ]);
}

function cards(workspace: Workspace, path: string, options: PreviewOptions): Element[] {
  const unit = workspace.unit(path);
  const none = (text: string) => h('p', { className: ['no-card'] }, plain(text));
  if (unit.formulas.length === 0) return [none('There is no formula in this file yet.')];
  return unit.formulas.map((formula, index) => {
    if (formula.unreadable) return none(`${formula.name}: a line cannot be read, so there is no card yet.`);
    const { selection } = selectionWith(formula, options.with);
    const { diagnostics, allowed } = checkUnit(workspace, path, {
      with: Object.values(selection),
      only: formula,
      fileName: shownPath,
    });
    const opened = { workspace, unit, formula, positions: positionsIn(workspace, unit), shown: shownPath(path) };
    const card = makeCard(
      { ...opened, selection, diagnostics, allowed },
      {
        ...(options.for !== undefined && { for: options.for }),
        wholePieces: false,
        language: 'en',
        units: 'metric',
        date: new Date().toISOString().slice(0, 10),
      },
    );
    return 'problem' in card ? none(`${formula.name}: ${card.problem}`) : cardArticle(card, { prefix: `f${index}-` });
  });
}

function faultList(diagnostics: readonly Diagnostic[], shown: string): Element {
  const items = diagnostics.map(({ severity, code, message, line, file }) =>
    h('li', { className: [severity] }, [
      h('p', [
        h('b', severity),
        ` ${file === shown ? '' : `${plain(file)}, `}line ${line} `,
        h('span', { className: ['code'] }, code),
      ]),
      h('p', plain(message)),
    ]),
  );
  return h('aside', { ariaLabel: 'Faults' }, [h('h2', 'Faults'), items.length === 0 ? h('p', 'Nothing wrong.') : h('ol', items)]);
}

/** The whole page; `script` is the address of `previewScript`. */
export const previewHtml = (title: string, main: Element, script: string): string =>
  pageHtml({ language: 'en', title, main: [main], style, head: [h('script', { src: script, defer: true })] });

/** What the script puts into `main`. */
export const previewPart = (main: Element): string => toHtml(main);

/** Asks for the page's content again whenever the server says that something was saved. */
export const previewScript = `'use strict';
const state = document.createElement('p');
state.className = 'state';
state.setAttribute('role', 'status');
document.body.append(state);
const events = new EventSource('/events');
events.onopen = () => { state.textContent = ''; };
events.onerror = () => { state.textContent = 'The preview has ended; start nappe preview again.'; };
events.onmessage = async () => {
  const answer = await fetch(location.pathname, { headers: { Accept: 'text/x-main' } });
  if (answer.ok) document.querySelector('main').innerHTML = await answer.text();
};
`;

const style = `
main { max-width: 90rem; }
.both { display: grid; grid-template-columns: minmax(0, 1fr) 22rem; gap: 2.5rem; align-items: start; }
.both > aside { position: sticky; top: 1rem; max-height: calc(100vh - 2rem); overflow: auto; font: 1rem/1.4 system-ui, sans-serif; }
.both > aside h2 { font-size: 1.2rem; margin: 0 0 .5rem; }
.both > aside ol { list-style: none; margin: 0; padding: 0; }
.both > aside li { border-left: .3rem solid #57514a; padding: .1rem 0 .1rem .8rem; margin-bottom: 1rem; overflow-wrap: break-word; }
.both > aside li.error { border-color: #8c1d0a; }
.both > aside li.warning { border-color: #8c5a0a; }
.both > aside p { margin: 0; }
.both > aside .code { color: #57514a; }
.cards > * + * { margin-top: 3rem; }
.no-card { font: 1.1rem/1.4 system-ui, sans-serif; }
.state { position: fixed; bottom: 0; left: 0; right: 0; margin: 0; padding: 0 1rem; background: #16130f; color: #fff; font: 1rem/2 system-ui, sans-serif; }
@media (max-width: 60rem) { .both { grid-template-columns: minmax(0, 1fr); } .both > aside { position: static; max-height: none; order: -1; } }
@media print { .both { display: block; } .both > aside, .state { display: none; } }
`;
