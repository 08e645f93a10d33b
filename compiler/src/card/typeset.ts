/** Spaces that must not break: between a figure and its unit, and before French punctuation. */
import type { Element } from 'hast';
import { SKIP, visit } from 'unist-util-visit';

const unit = /(\d|[½⅓¼]) (?=(?:°C|°F|°Bx|kg|g|mg|ml|l|min|h|s|%|cm|mm|oz|lb|cup|tbsp|tsp|kJ|kcal)(?![\p{L}\p{N}]))/gu;
const frenchBefore = / (?=[:;!?»])/gu;
const frenchAfter = /« /gu;

/** Changes the text nodes under an element; code stays as it is. */
export function typeset(element: Element, language: string): Element {
  visit(element, (node) => {
    if (node.type === 'element' && (node.tagName === 'code' || node.tagName === 'pre')) return SKIP;
    if (node.type !== 'text') return undefined;
    node.value = node.value.replace(unit, '$1\u00a0');
    if (language === 'fr') node.value = node.value.replace(frenchBefore, '\u00a0').replace(frenchAfter, '«\u00a0');
    return undefined;
  });
  return element;
}
