/** The card as Markdown with tables (GFM), for handouts and for reading as text. */
import type { BlockContent, Heading, ListItem, PhrasingContent, Root } from 'mdast';
import { languageOf } from './languages/index.ts';
import type { Language } from './languages/language.ts';
import { bullets, headingAt, markdownOf, paragraph, strong, table, text } from './mdast.ts';
import { type Measures, measuresFor } from './measures.ts';
import type { Card, CardComponent, CardStep } from './model.ts';
import { noteTree } from './notes.ts';
import { allergenWords } from './nutrition.ts';
import { nutritionTable } from './nutrition-table.ts';
import { readingsOf } from './readings.ts';

export const cardMarkdown = (card: Card): string => markdownOf(cardMdast(card));

/** As a tree, its first heading at `level`. */
export function cardMdast(card: Card, level: 1 | 2 | 3 = 1): Root {
  const language = languageOf(card.language);
  const measures = measuresFor(language, card.units);
  const scene: Scene = { card, language, measures, level, full: card.detail === 'full' };
  return {
    type: 'root',
    children: [
      ...unchecked(scene),
      heading(scene, 0, card.formula),
      ...header(scene),
      ...(scene.full ? notes(card.notes) : []),
      ...card.components.flatMap((component) => componentBlocks(scene, component)),
      ...(scene.full ? temperatureBlocks(scene) : []),
      ...(scene.full ? differenceBlocks(scene) : []),
      ...factBlocks(scene),
    ],
  };
}

interface Scene {
  readonly card: Card;
  readonly language: Language;
  readonly measures: Measures;
  readonly level: number;
  readonly full: boolean;
}

const heading = ({ level }: Scene, below: number, value: string): Heading => headingAt(level + below, value);
const notes = (all: readonly string[]): BlockContent[] =>
  all.map((note) => ({ type: 'blockquote', children: noteTree(note).children as BlockContent[] }));

function unchecked({ card, language: { labels } }: Scene): BlockContent[] {
  if (card.checked) return [];
  const errors = card.diagnostics.filter(({ severity }) => severity === 'error');
  return [
    paragraph(strong(labels.unchecked.toLocaleUpperCase(card.language)), text(`. ${labels.uncheckedWhy}`)),
    bullets(
      errors.map(({ code, line, message }) => [{ type: 'inlineCode', value: code }, text(` ${labels.line} ${line}: ${message}`)]),
    ),
  ];
}

function header({ card, language: { labels } }: Scene): BlockContent[] {
  const meta = [
    ...(card.by ? [`${labels.by} ${card.by}`] : []),
    ...(card.edition ? [`${labels.version} ${card.edition}`] : []),
    `${labels.printed} ${card.date}`,
  ];
  const choices = Object.values(card.choices);
  const facts: [string, string][] = [
    [labels.makes, card.makes.text],
    ...(card.served ? [[labels.served, card.served] as [string, string]] : []),
    ...(card.keeps ? [[labels.keeps, card.keeps] as [string, string]] : []),
    ...(choices.length > 0 ? [[labels.choices, choices.join(', ')] as [string, string]] : []),
  ];
  return [
    paragraph(text(meta.join(' · '))),
    bullets([
      ...facts.map(([term, value]) => [strong(`${term}:`), text(` ${value}`)]),
      ...card.scaling.map((sentence) => [text(sentence)]),
    ]),
  ];
}

function componentBlocks(scene: Scene, component: CardComponent): (BlockContent | Heading)[] {
  const { language, measures, full, card } = scene;
  const { labels } = language;
  const cups = card.units !== 'metric';
  const mass = component.grams ? ` (≈ ${measures.roughMass(component.grams)})` : '';
  const percent = (value: number | null): PhrasingContent[] => [text(value === null ? '' : measures.percent(value))];
  const rows = component.ingredients.map((i) => [
    [strong(i.written)],
    ...(cups ? [[text(i.cups ?? '')]] : []),
    [text([i.name, ...i.attributes].join(', '))],
    percent(i.percent),
    ...(component.bakers ? [percent(i.bakersPercent)] : []),
  ]);
  const head = [
    labels.amount,
    ...(cups ? [labels.usMeasure] : []),
    labels.ingredient,
    labels.share,
    ...(component.bakers ? [labels.bakers] : []),
  ];
  return [
    heading(scene, 1, `${component.isAssembly ? labels.assembly : component.name}${mass}`),
    ...(component.from ? [paragraph(text(`${labels.from} ${component.from}`))] : []),
    ...(full ? notes(component.notes) : []),
    ...(rows.length > 0
      ? [
          table(head, rows, [
            'right',
            ...(cups ? (['left'] as const) : []),
            'left',
            'right',
            ...(component.bakers ? (['right'] as const) : []),
          ]),
        ]
      : []),
    ...(full
      ? component.ingredients.flatMap((i) => (i.notes.length > 0 ? [paragraph(strong(i.name)), ...notes(i.notes)] : []))
      : []),
    ...(component.steps.length > 0
      ? [
          {
            type: 'list' as const,
            ordered: true,
            start: component.steps[0]!.number,
            spread: false,
            children: component.steps.map((step) => stepItem(scene, step)),
          },
        ]
      : []),
  ];
}

function stepItem({ language: { labels }, full }: Scene, step: CardStep): ListItem {
  const words = step.phrase.map(
    (segment): PhrasingContent =>
      segment.kind === 'temperature' && step.critical
        ? strong(segment.text)
        : segment.kind === 'sign'
          ? { type: 'emphasis', children: [text(segment.text)] }
          : text(segment.text),
  );
  const stages = step.stages.map(({ amount, tool, temperature }, index) => [
    text([`${index + 1}. ${amount}`, tool, temperature].filter((part) => part !== null).join(', ')),
  ]);
  return {
    type: 'listItem',
    spread: false,
    children: [
      paragraph(...(step.critical ? [strong(`▲ ${labels.critical}:`), text(' ')] : []), ...words),
      ...(stages.length > 0 ? [bullets(stages)] : []),
      ...(full && step.reasons.length > 0 ? [paragraph(text(`${labels.why}: ${step.reasons.join(' ')}`))] : []),
      ...(full ? notes(step.notes) : []),
    ],
  };
}

function temperatureBlocks(scene: Scene): (BlockContent | Heading)[] {
  const { card, language, measures } = scene;
  const { labels } = language;
  if (!card.temperature) return [];
  const rows = readingsOf(card.temperature, measures).map(({ step, cells }) =>
    [String(step), ...cells].map((cell) => [text(cell)]),
  );
  return [
    heading(scene, 1, labels.temperatureLine),
    table([labels.step, labels.time, labels.starts, labels.ends, labels.window], rows, ['right', 'left', 'left', 'left', 'left']),
  ];
}

function differenceBlocks(scene: Scene): (BlockContent | Heading)[] {
  const { card, language } = scene;
  const { labels } = language;
  if (card.differences.length === 0) return [];
  return [
    heading(scene, 1, labels.differences),
    ...card.differences.flatMap(({ choice, value, changes }) => [
      heading(scene, 2, `${choice}: ${value}`),
      bullets(
        changes.map(({ what, now, other }) => [
          strong(`${what}:`),
          text(` ${other}${now === '' ? '' : ` (${labels.instead} ${now})`}`),
        ]),
      ),
    ]),
  ];
}

function factBlocks(scene: Scene): (BlockContent | Heading)[] {
  const { card, language, measures, full } = scene;
  const { labels } = language;
  const { contains, unknown, claims } = card.allergens;
  const facts = full ? nutritionTable(card, language, measures) : null;
  return [
    heading(scene, 1, labels.allergens),
    paragraph(
      ...(contains.length === 0
        ? [text(labels.noAllergens)]
        : [text(`${labels.contains} `), strong(allergenWords(contains, language)), text('.')]),
      ...(unknown.length > 0 ? [text(` ${labels.unknownAllergens}: ${unknown.join(', ')}.`)] : []),
      ...(claims.length > 0 ? [text(` ${labels.freeFrom} ${allergenWords(claims, language)}.`)] : []),
    ),
    ...(facts
      ? [
          heading(scene, 1, labels.nutrition),
          table(
            ['', ...facts.columns],
            facts.rows.map(({ name, cells }) => [[text(name)], ...cells.map((cell) => [text(cell)])]),
            ['left', ...facts.columns.map(() => 'right' as const)],
          ),
          paragraph(text([labels.nutritionBasis, facts.remark].filter((part) => part !== null).join(' '))),
        ]
      : []),
    heading(scene, 1, labels.cautions),
    bullets(card.cautions.map((caution) => [text(caution)])),
    ...(card.allowed.length > 0
      ? [
          heading(scene, 1, labels.allowed),
          bullets(
            card.allowed.map(({ code, line, reason }) => [
              { type: 'inlineCode', value: code },
              text(` (${labels.line} ${line}): ${reason || labels.noReason}`),
            ]),
          ),
        ]
      : []),
  ];
}
