/** Components on the page: what to weigh at the left, what to do at the right. */
import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { CardComponent, CardIngredient, CardStep } from './model.ts';
import type { Segment } from './sentence.ts';
import { heading, named, notesOf, type Sheet } from './sheet.ts';

export const componentSections = (sheet: Sheet): Element[] => sheet.card.components.map((component) => section(sheet, component));

function section(sheet: Sheet, component: CardComponent): Element {
  const { language, measures, full, card } = sheet;
  const alone = card.components.length === 1;
  const title = component.isAssembly ? language.labels.assembly : component.name;
  const first = component.steps[0]?.number ?? 1;
  return h('section', { className: ['component'] }, [
    h('div', { className: ['head'] }, [
      heading(sheet, 1, {}, alone ? language.labels.ingredients : named(title)),
      ...(component.from ? [h('span', { className: ['quiet'] }, [`${language.labels.from} `, named(component.from)])] : []),
      ...(component.grams !== null && component.grams > 0
        ? [h('span', { className: ['mass'] }, `≈ ${measures.roughMass(component.grams)}`)]
        : []),
    ]),
    ...(full ? notesOf(component.notes) : []),
    h('div', { className: component.ingredients.length > 0 ? ['work'] : ['work', 'steps-only'] }, [
      ...(component.ingredients.length > 0 ? [ingredients(sheet, component)] : []),
      ...(component.steps.length > 0
        ? [
            h(
              'ol',
              { className: ['steps'], start: first },
              component.steps.map((step) => stepItem(sheet, step)),
            ),
          ]
        : []),
    ]),
  ]);
}

function ingredients(sheet: Sheet, component: CardComponent): Element {
  const { labels } = sheet.language;
  const columns = [labels.amount, labels.ingredient, labels.share, ...(component.bakers ? [labels.bakers] : [])];
  return h('table', { className: ['weigh'] }, [
    h('caption', { className: ['unseen'] }, `${labels.ingredients}: ${component.isAssembly ? labels.assembly : component.name}`),
    h('thead', [
      h(
        'tr',
        columns.map((label) => h('th', { scope: 'col' }, label)),
      ),
    ]),
    h(
      'tbody',
      component.ingredients.map((ingredient) => row(sheet, component, ingredient)),
    ),
  ]);
}

function row({ measures, full }: Sheet, component: CardComponent, ingredient: CardIngredient): Element {
  const percent = (value: number | null): string => (value === null ? '' : measures.percent(value));
  return h('tr', [
    h('td', { className: ['amount'] }, amounts(ingredient)),
    h('th', { scope: 'row' }, [
      named(ingredient.name),
      ...(ingredient.attributes.length > 0
        ? [h('span', { className: ['attributes'] }, [', ', named(ingredient.attributes.join(', '))])]
        : []),
      ...(full ? notesOf(ingredient.notes) : []),
    ]),
    h('td', { className: ['share'] }, percent(ingredient.percent)),
    ...(component.bakers ? [h('td', { className: ['share'] }, percent(ingredient.bakersPercent))] : []),
  ]);
}

/** The first figure large, what else it is in below: `6 pc` over `300 g`, `480 g` over `1 lb 0.9 oz` and `2 cup`. */
function amounts({ written, cups }: CardIngredient): ElementContent[] {
  const [first = '', ...others] = written
    .replace(/[()]/gu, '/')
    .split('/')
    .map((part) => part.trim());
  const below = [...others.filter((part) => part !== ''), ...(cups ? [cups] : [])];
  return [{ type: 'text', value: first }, ...below.map((part) => h('span', { className: ['other'] }, part))];
}

function stepItem(sheet: Sheet, step: CardStep): Element {
  const { language, full } = sheet;
  return h('li', { ...(step.critical && { className: ['critical'] }), value: step.number }, [
    h('span', { className: ['no'], ariaHidden: 'true' }, String(step.number)),
    h('p', { className: ['do'] }, [
      ...(step.critical ? [h('strong', { className: ['flag'] }, language.labels.critical), ' '] : []),
      ...step.phrase.map((segment) => words(segment, step.critical)),
    ]),
    ...(step.stages.length > 0 ? [h('p', { className: ['unseen'] }, language.labels.additions), stages(step)] : []),
    ...(full && step.reasons.length > 0
      ? [
          h('p', { className: ['why'] }, [
            h('span', { className: ['quiet'] }, `${language.labels.why}: `),
            step.reasons.join(' '),
          ]),
        ]
      : []),
    ...(full ? notesOf(step.notes) : []),
  ]);
}

function words(segment: Segment, critical: boolean): ElementContent {
  switch (segment.kind) {
    case 'temperature':
      return critical
        ? h('strong', { className: ['reading'] }, segment.text)
        : h('span', { className: ['temperature'] }, segment.text);
    case 'amount':
      return h('span', { className: ['grams'] }, segment.text);
    case 'time':
      return h('span', { className: ['time'] }, segment.text);
    case 'sign':
      return h('em', named(segment.text));
    case 'name':
      return named(segment.text);
    default:
      return { type: 'text', value: segment.text };
  }
}

function stages(step: CardStep): Element {
  return h(
    'ol',
    { className: ['stages'] },
    step.stages.map(({ amount, tool, temperature }) =>
      h('li', [
        h('span', { className: ['grams'] }, amount),
        ...(tool ? [h('span', { className: ['tool'] }, named(tool))] : []),
        ...(temperature ? [h('span', { className: ['temperature'] }, temperature)] : []),
      ]),
    ),
  );
}
