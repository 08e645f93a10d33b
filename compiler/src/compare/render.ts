/** A comparison as text, Markdown, HTML and data. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { List, Root } from 'mdast';
import remarkGfm from 'remark-gfm';
import remarkStringify from 'remark-stringify';
import { unified } from 'unified';
import { pageHtml } from '../card/page.ts';
import { named } from '../card/sheet.ts';
import { plain } from '../card/text.ts';
import type { Change, Comparison } from './model.ts';
import { grouped } from './words.ts';

const nothing = 'Nothing changed in meaning.';

/** For a terminal: the versions, then a line a change. */
export function comparisonText(comparison: Comparison): string {
  const lines = [`${comparison.formula}: ${versions(comparison)}`];
  if (comparison.changes.length === 0) lines.push(`  ${nothing}`);
  for (const { component, sentences } of grouped(comparison)) {
    lines.push(`  ${component}`);
    for (const { change, name, text } of sentences) lines.push(`    ${lineOf(change).padStart(6)}  ${name}: ${text}`);
  }
  return `${lines.map(plain).join('\n')}\n`;
}

/** Which files; one, where git compares two states of it. */
const versions = ({ old, new: next }: Comparison): string => (old === next ? next : `${old} → ${next}`);

/** The line it stands on now, else where it stood. */
const lineOf = ({ oldLine, newLine }: Change): string =>
  newLine !== null ? `:${newLine}` : oldLine !== null ? `-:${oldLine}` : '';

/** For a pull request or a forge. */
export function comparisonMarkdown(comparison: Comparison, level: 1 | 2 | 3 = 2): string {
  return unified()
    .use(remarkGfm)
    .use(remarkStringify, { bullet: '-', emphasis: '_' })
    .stringify(comparisonMdast(comparison, level));
}

export function comparisonMdast(comparison: Comparison, level: 1 | 2 | 3 = 2): Root {
  const text = (value: string) => ({ type: 'text' as const, value: plain(value) });
  const list = (items: ReturnType<typeof grouped>[number]['sentences']): List => ({
    type: 'list',
    ordered: false,
    spread: false,
    children: items.map(({ name, text: said }) => ({
      type: 'listItem',
      spread: false,
      children: [{ type: 'paragraph', children: [{ type: 'strong', children: [text(name)] }, text(`: ${said}`)] }],
    })),
  });
  return {
    type: 'root',
    children: [
      { type: 'heading', depth: level, children: [text(`What changed: ${comparison.formula}`)] },
      { type: 'paragraph', children: [{ type: 'emphasis', children: [text(versions(comparison))] }] },
      ...(comparison.changes.length === 0 ? [{ type: 'paragraph' as const, children: [text(nothing)] }] : []),
      ...grouped(comparison).flatMap(({ component, sentences }) => [
        { type: 'heading' as const, depth: Math.min(6, level + 1) as 2, children: [text(component)] },
        list(sentences),
      ]),
    ],
  };
}

/** An article that stands in a handout or a page; its look is the card's. */
export function comparisonArticle(comparison: Comparison, level = 1): Element {
  return h('article', { className: ['card', 'comparison'] }, [
    h('header', [
      h(`h${level}`, { className: ['title'] }, ['What changed: ', named(comparison.formula)]),
      h('p', { className: ['meta'] }, plain(versions(comparison))),
    ]),
    comparison.changes.length === 0 ? h('p', nothing) : null,
    ...grouped(comparison).map(({ component, sentences }) =>
      h('section', { className: ['component'] }, [
        h('div', { className: ['head'] }, [h(`h${Math.min(6, level + 1)}`, [named(component)])]),
        h('table', [
          h('thead', [
            h('tr', [h('th', { scope: 'col' }, 'What'), h('th', { scope: 'col' }, 'Before'), h('th', { scope: 'col' }, 'Now')]),
          ]),
          h(
            'tbody',
            sentences.map(({ change, name }) =>
              h('tr', [h('th', { scope: 'row' }, [named(name)]), h('td', plain(before(change))), h('td', plain(after(change)))]),
            ),
          ),
        ]),
      ]),
    ),
  ]);
}

const before = ({ old, kind }: Change): string => old ?? (kind === 'diagnostic' ? 'not raised' : 'not there');
const after = ({ new: next, kind }: Change): string => next ?? (kind === 'diagnostic' ? 'no longer raised' : 'gone');

export function comparisonHtml(comparisons: readonly Comparison[]): string {
  return pageHtml({
    language: 'en',
    title: `What changed: ${comparisons.map(({ formula }) => formula).join(', ')}`,
    main: comparisons.map((comparison) => comparisonArticle(comparison)),
  });
}

/** One object for all formulas of the two files. */
export const comparisonJson = (comparisons: readonly Comparison[]) => ({
  version: 1 as const,
  changes: comparisons.flatMap(({ changes }) => changes),
});
