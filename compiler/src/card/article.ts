/** The card as HTML nodes: one `article`, to stand alone on a page or inside a handout. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import { componentSections } from './article-components.ts';
import { factSections } from './article-facts.ts';
import { languageOf } from './languages/index.ts';
import { measuresFor } from './measures.ts';
import type { Card } from './model.ts';
import { readingsOf } from './readings.ts';
import { heading, named, notesOf, type Sheet } from './sheet.ts';
import { temperatureSvg } from './temperature-svg.ts';
import { typeset } from './typeset.ts';

export interface ArticleOptions {
  /** Level of the card's own heading, 1 to 4. */
  readonly level?: 1 | 2 | 3 | 4;
  /** Stands before every id: no two cards of a page may share one. */
  readonly prefix?: string;
}

export function cardArticle(card: Card, options: ArticleOptions = {}): Element {
  const language = languageOf(card.language);
  const sheet: Sheet = {
    card,
    language,
    measures: measuresFor(language, card.units),
    level: options.level ?? 1,
    prefix: options.prefix ?? '',
    full: card.detail === 'full',
  };
  const article = h(
    'article',
    { className: ['card', card.detail, densityOf(card)], lang: card.language, ariaLabelledBy: `${sheet.prefix}title` },
    [
      ...unchecked(sheet),
      header(sheet),
      ...(sheet.full ? notesOf(card.notes) : []),
      h('div', { className: ['parts'] }, componentSections(sheet)),
      ...(sheet.full ? temperatureSection(sheet) : []),
      ...factSections(sheet),
      footer(sheet),
    ],
  );
  return typeset(article, card.language);
}

/** How close a bench card must be set to stay on one page: by the rows it has. */
function densityOf(card: Card): 'roomy' | 'close' | 'dense' {
  const rows = card.components.reduce(
    (sum, { ingredients, steps }) =>
      sum +
      2 +
      Math.max(
        steps.reduce((lines, { text, stages }) => lines + Math.ceil(text.length / 70) + (stages.length > 0 ? 1 : 0), 0),
        ingredients.length,
      ),
    0,
  );
  return rows <= 18 ? 'roomy' : rows <= 32 ? 'close' : 'dense';
}

function unchecked(sheet: Sheet): Element[] {
  const { card, language } = sheet;
  if (card.checked) return [];
  const errors = card.diagnostics.filter(({ severity }) => severity === 'error');
  return [
    h('section', { className: ['unchecked'], ariaLabel: language.labels.unchecked }, [
      h('p', { className: ['stamp'] }, language.labels.unchecked),
      h('p', language.labels.uncheckedWhy),
      h(
        'ul',
        errors.map(({ code, line, file, message }) =>
          h('li', [
            h('code', code),
            ` ${file === card.file ? '' : `${file}, `}${language.labels.line} ${line}: `,
            named(message),
          ]),
        ),
      ),
    ]),
  ];
}

function header(sheet: Sheet): Element {
  const { card, language } = sheet;
  const { labels } = language;
  const meta = [
    ...(card.by ? [h('span', [`${labels.by} `, named(card.by)])] : []),
    ...(card.edition ? [h('span', [`${labels.version} `, named(card.edition)])] : []),
    h('span', [`${labels.printed} `, h('time', { dateTime: card.date }, card.date)]),
  ];
  const facts: [string, (string | Element)[]][] = [
    [labels.makes, [card.makes.text, ...madeMass(sheet)]],
    ...(card.served ? [[labels.served, [card.served]] as [string, string[]]] : []),
    ...(card.keeps ? [[labels.keeps, [card.keeps]] as [string, string[]]] : []),
    ...(Object.keys(card.choices).length > 0
      ? [[labels.choices, [named(Object.values(card.choices).join(', '))]] as [string, Element[]]]
      : []),
  ];
  return h('header', [
    heading(sheet, 0, { id: `${sheet.prefix}title`, className: ['title'] }, named(card.formula)),
    h(
      'p',
      { className: ['meta'] },
      meta.flatMap((item, index) => (index === 0 ? [item] : [' · ', item])),
    ),
    h(
      'dl',
      { className: ['facts'] },
      facts.map(([term, value]) => h('div', [h('dt', term), h('dd', value)])),
    ),
    ...(card.scaling.length === 0
      ? []
      : [
          h('p', { className: ['unseen'] }, labels.scaling),
          h(
            'ul',
            { className: ['scaling'] },
            card.scaling.map((sentence) => h('li', sentence)),
          ),
        ]),
  ]);
}

function madeMass({ card, measures }: Sheet): Element[] {
  const { grams, text } = card.makes;
  if (grams === null || text === measures.roughMass(grams)) return [];
  return [h('span', { className: ['quiet'] }, ` ≈ ${measures.roughMass(grams)}`)];
}

function temperatureSection(sheet: Sheet): Element[] {
  const { card, language, measures, prefix } = sheet;
  const { temperature } = card;
  const { labels } = language;
  if (!temperature) return [];
  return [
    h('section', { className: ['curve'] }, [
      heading(sheet, 1, {}, labels.temperatureLine),
      h('section', { className: ['scroll'], tabIndex: 0, ariaLabel: labels.temperatureLine }, [
        temperatureSvg(temperature, language, measures, prefix),
      ]),
      h('section', { className: ['scroll'], tabIndex: 0, ariaLabel: `${labels.temperatureLine}: ${labels.step}` }, [
        h('table', { className: ['readings'] }, [
          h('thead', [
            h(
              'tr',
              [labels.step, labels.time, labels.starts, labels.ends, labels.window].map((label) =>
                h('th', { scope: 'col' }, label),
              ),
            ),
          ]),
          h(
            'tbody',
            readingsOf(temperature, measures).map(({ step, text, cells }) =>
              h('tr', [
                h('th', { scope: 'row' }, [h('b', String(step)), ' ', named(text)]),
                ...cells.map((cell) => h('td', whole(cell))),
              ]),
            ),
          ),
        ]),
      ]),
    ]),
  ];
}

/** Each reading of a cell stays in one piece; `→` is where a line may break. */
const whole = (cell: string): (string | Element)[] =>
  cell.split(' → ').flatMap((part, index) => [...(index === 0 ? [] : [' → ']), h('span', { className: ['time'] }, part)]);

function footer({ card, language }: Sheet): Element {
  const last = card.cautions[card.cautions.length - 1] ?? '';
  return h('footer', [
    h('p', { className: ['plan'] }, last),
    h('p', { className: ['colophon'] }, [
      named(card.formula),
      ...(card.edition ? [` · ${language.labels.version} `, named(card.edition)] : []),
      ` · ${card.date} · `,
      named(card.file),
    ]),
  ]);
}
