/** What stands in a fence's place, as HTML nodes: cards, lists, timelines, comparisons, notation as text, and what went wrong. */
import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Line } from 'nappe-grammar';
import { cardArticle } from '../card/article.ts';
import type { Card } from '../card/model.ts';
import { comparisonArticle } from '../compare/index.ts';
import { timelineArticle } from '../timeline/index.ts';
import { titleOf as timelineTitle } from '../timeline/words.ts';
import { weighOutArticle } from '../weigh-out/index.ts';
import type { Part } from './model.ts';
import { sourceListing } from './source.ts';

export interface Drawn {
  readonly element: Element;
  /** For the list of contents; null for what is part of the text. */
  readonly entry: { readonly text: string; readonly anchor: string } | null;
}

/** `id` is the page's own for this part; `level` that of its heading. */
export function drawn(part: Part, id: string, level: number, lines: readonly Line[]): Drawn {
  const depth = Math.min(4, Math.max(1, level)) as 1 | 2 | 3 | 4;
  switch (part.is) {
    case 'card':
      return {
        element: benchCard(cardArticle(forClass(part.card), { level: depth, prefix: `${id}-` }), part.card),
        entry: { text: part.card.formula, anchor: `${id}-title` },
      };
    case 'weigh-out':
      return named(weighOutArticle(part.list, depth), id, 'Weigh-out');
    case 'timeline':
      return named(timelineArticle(part.plan, depth, `${id}-`), id, timelineTitle(part.plan));
    case 'compare':
      return named(comparisonArticle(part.comparison, depth), id, `What changed: ${part.comparison.formula}`);
    case 'source':
      return { element: sourceListing(lines.slice(part.first, part.end)), entry: null };
    default:
      return {
        element: h('p', { className: ['fault'], role: 'note' }, [h('b', `Line ${part.fault.line}: `), part.fault.message]),
        entry: null,
      };
  }
}

function named(element: Element, id: string, text: string): Drawn {
  return { element: { ...element, properties: { ...element.properties, id } }, entry: { text, anchor: id } };
}

/** A class works from one page: everything to weigh and do, and what the teacher noted; no curve, no figures of nutrition, no other choices. */
export const forClass = (card: Card): Card => ({
  ...card,
  detail: 'full',
  temperature: null,
  differences: [],
  nutrition: { per100g: null, perPortion: null, portionGrams: null, unknown: [] },
  components: card.components.map((component) => ({
    ...component,
    steps: component.steps.map((step) => ({ ...step, reasons: [] })),
  })),
});

/** Set as closely as a bench card, and as its rows and notes need to be to print on one page. */
function benchCard(element: Element, card: Card): Element {
  const own = new Set(['full', 'roomy', 'close', 'dense']);
  const names = [element.properties.className ?? []].flat().filter((name) => !own.has(String(name)));
  return { ...element, properties: { ...element.properties, className: [...names.map(String), 'brief', ...densityOf(card)] } };
}

/** By the lines it takes, notes and cautions among them; measured on A4 and Letter. */
function densityOf({ components, cautions, notes, scaling }: Card): readonly string[] {
  const linesOf = (text: string, width: number): number => Math.ceil(text.length / width);
  const noteLines = (all: readonly string[], width: number): number => all.reduce((sum, note) => sum + linesOf(note, width), 0);
  const body = components.reduce((sum, { ingredients, steps, notes: remarks }) => {
    const left = ingredients.reduce((lines, one) => lines + linesOf([one.name, ...one.attributes].join(', '), 26), 1);
    const right = steps.reduce(
      (lines, { text, stages, notes: said }) => lines + linesOf(text, 66) + (stages.length > 0 ? 1.5 : 0) + noteLines(said, 70),
      0,
    );
    return sum + 2 + Math.max(left, right) + noteLines(remarks, 100);
  }, 0);
  const rows = body + noteLines(notes, 100) + noteLines(scaling, 110) + noteLines(cautions, 110);
  if (rows <= limits.roomy) return ['roomy'];
  if (rows <= limits.close) return ['close'];
  return rows <= limits.large ? ['dense', 'large'] : ['dense'];
}

const limits = { roomy: 24, close: 40, large: 54 } as const;
