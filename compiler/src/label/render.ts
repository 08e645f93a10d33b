/** A label as text, as a page, and as data. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import { pageHtml } from '../card/page.ts';
import { named } from '../card/sheet.ts';
import { formatNumber } from '../quantities/format.ts';
import type { Label, LabelIngredient } from './model.ts';

const compoundNote = 'An asterisk marks what is itself made of several things: copy the list from its pack in brackets after it.';

/** `raspberry purée (23 %)`, `dark chocolate* (SOYA)`. */
function words(ingredient: LabelIngredient): { readonly name: string; readonly share: string; readonly allergens: string } {
  const name = `${ingredient.strained ? 'infusion of ' : ''}${ingredient.name}${ingredient.compound ? '*' : ''}`;
  const share = ingredient.percent === null ? '' : ` (${formatNumber(ingredient.percent, ingredient.percent < 2 ? 1 : 0)} %)`;
  return {
    name,
    share,
    allergens: ingredient.allergens.length === 0 ? '' : ` (${ingredient.allergens.join(', ').toUpperCase()})`,
  };
}

const contains = (label: Label): string =>
  label.contains.length === 0
    ? 'none that must be declared, as far as the catalogue knows'
    : label.contains.map(({ name }) => name).join(', ');

const dates = (label: Label): string =>
  label.lastDay === null
    ? `Made ${label.made}. The formula does not say how long it keeps.`
    : `Made ${label.made}. ${label.perishable ? 'Use by' : 'Best before'} ${label.lastDay}.`;

const storage = (label: Label): string =>
  label.storage === null ? 'Storage: not written in the formula.' : `Keeps ${label.storage}.`;

const net = (label: Label): string => (label.netGrams === null ? '' : `Made in all: about ${formatNumber(label.netGrams, 0)} g.`);

export function labelText(label: Label): string {
  const list = label.ingredients.map((one) => Object.values(words(one)).join('')).join(', ');
  const lines = [
    label.formula,
    Object.values(label.choices).join(', '),
    '',
    `Ingredients: ${list}.`,
    `${label.region === 'us' ? 'Contains' : 'Allergens'}: ${contains(label)}.`,
    label.unknown.length > 0 ? `Not known to the catalogue, read the pack: ${label.unknown.join(', ')}.` : '',
    label.ingredients.some(({ compound }) => compound) ? compoundNote : '',
    '',
    ...nutritionLines(label),
    '',
    storage(label),
    dates(label),
    net(label),
    '',
    ...label.cautions.map((caution) => `! ${caution}`),
  ];
  return `${lines.filter((line, index) => line !== '' || (lines[index - 1] ?? '') !== '').join('\n')}\n`;
}

function nutritionLines({ nutrition }: Label): readonly string[] {
  if (!nutrition) return ['Nutrition: not known, because the composition of an ingredient is not.'];
  const width = Math.max(...nutrition.rows.map(({ name, inner }) => name.length + (inner ? 2 : 0)));
  return [
    `Nutrition ${nutrition.columns.join(' | ')}`,
    ...nutrition.rows.map(({ name, inner, cells }) => `  ${`${inner ? '  ' : ''}${name}`.padEnd(width + 2)}${cells.join(' | ')}`),
    ...(nutrition.remark === null ? [] : [nutrition.remark]),
  ];
}

export const labelHtml = (label: Label): string =>
  pageHtml({ language: 'en', title: `Label: ${label.formula}`, main: [labelArticle(label)] });

export function labelArticle(label: Label): Element {
  const { nutrition } = label;
  return h('article', { className: ['card', 'label'] }, [
    h('header', [
      h('h1', { className: ['title'] }, [named(label.formula)]),
      h('p', { className: ['meta'] }, Object.values(label.choices).join(', ')),
    ]),
    h('section', { className: ['component'] }, [
      h('h2', 'Ingredients'),
      h(
        'p',
        label.ingredients.flatMap((ingredient, index) => {
          const { name, share, allergens } = words(ingredient);
          return [index > 0 ? ', ' : '', named(name), share, allergens === '' ? '' : h('strong', allergens)];
        }),
      ),
      h('p', [h('strong', `${label.region === 'us' ? 'Contains' : 'Allergens'}: `), contains(label)]),
      label.unknown.length > 0 ? h('p', `Not known to the catalogue, read the pack: ${label.unknown.join(', ')}.`) : null,
      label.ingredients.some(({ compound }) => compound) ? h('p', { className: ['quiet'] }, compoundNote) : null,
    ]),
    h('section', { className: ['component'] }, [
      h('h2', 'Nutrition'),
      nutrition
        ? h('table', [
            h('thead', [
              h('tr', [
                h('th', { scope: 'col' }, 'Nutrient'),
                ...nutrition.columns.map((column) => h('th', { scope: 'col' }, column)),
              ]),
            ]),
            h(
              'tbody',
              nutrition.rows.map(({ name, inner, cells }) =>
                h('tr', [
                  h('th', { scope: 'row' }, inner ? `of which ${name.replace(/^of which /u, '')}` : name),
                  ...cells.map((cell) => h('td', cell)),
                ]),
              ),
            ),
          ])
        : h('p', 'Not known, because the composition of an ingredient is not.'),
      nutrition?.remark ? h('p', { className: ['quiet'] }, nutrition.remark) : null,
    ]),
    h('section', { className: ['component'] }, [
      h('h2', 'Storage'),
      h('p', `${storage(label)} ${dates(label)} ${net(label)}`.trim()),
    ]),
    h('section', { className: ['component'] }, [
      h('h2', 'Before it is sold'),
      h(
        'ul',
        label.cautions.map((caution) => h('li', caution)),
      ),
    ]),
  ]);
}

const rounded = (value: number | null, digits = 1): number | null =>
  value === null ? null : Math.round(value * 10 ** digits) / 10 ** digits;

export const labelJson = (label: Label) => ({
  version: 1 as const,
  ...label,
  netGrams: rounded(label.netGrams),
  ingredients: label.ingredients.map((ingredient) => ({
    ...ingredient,
    grams: rounded(ingredient.grams),
    percent: rounded(ingredient.percent),
  })),
});
