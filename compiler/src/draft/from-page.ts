/** A recipe in a page's schema.org data (https://schema.org/Recipe as JSON-LD), or in such data alone. */
import type { Element, ElementContent, Root } from 'hast';
import { fromHtml } from 'hast-util-from-html';
import { visit } from 'unist-util-visit';
import type { Found, Part, Written } from './model.ts';

type Data = Readonly<Record<string, unknown>>;

/** Null where no `Recipe` stands in it. */
export const foundInPage = (html: string): Found | null => unlessTooDeep(() => recipeOfPage(html));

function recipeOfPage(html: string): Found | null {
  const found: Data[] = [];
  visit(fromHtml(html), 'element', (element: Element) => {
    if (element.tagName !== 'script' || !/^application\/ld\+json/i.test(String(element.properties.type ?? ''))) return;
    const data = parsed(textOf(element));
    if (data !== undefined) found.push(...recipesIn(data));
  });
  return found[0] ? recipe(found[0]) : null;
}

/** Null where it is no JSON or holds no `Recipe`. */
export function foundInData(json: string): Found | null {
  const data = parsed(json);
  const first = data === undefined ? undefined : recipesIn(data)[0];
  return first ? unlessTooDeep(() => recipe(first)) : null;
}

/** What is nested so deep that no program can walk it is no recipe. */
function unlessTooDeep(read: () => Found | null): Found | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text.replace(/^\ufeff/, ''));
  } catch {
    return undefined;
  }
}

/** In the order they stand, over lists and `@graph`. */
function recipesIn(data: unknown, depth = 0): Data[] {
  if (Array.isArray(data)) return depth > 8 ? [] : data.flatMap((one) => recipesIn(one, depth + 1));
  if (!isData(data) || depth > 8) return [];
  const types = listOf(data['@type']).map((type) => String(type).replace(/^.*[/:]/, ''));
  if (types.includes('Recipe')) return [data];
  return ['@graph', 'mainEntity', 'mainEntityOfPage', 'itemListElement', 'item'].flatMap((key) =>
    recipesIn(data[key], depth + 1),
  );
}

function recipe(data: Data): Found {
  const lines = listOf(data.recipeIngredient ?? data.ingredients).flatMap((one) => said(one));
  const parts: Part[] = [{ heading: null, ingredients: lines, prose: [] }];
  const prose = parts[0]?.prose as Written[];
  const read = (step: unknown): void => {
    if (isData(step) && Array.isArray(step.itemListElement)) {
      const heading = said(step.name)[0]?.text;
      if (heading) prose.push({ text: `${heading}:`, line: null });
      for (const one of step.itemListElement) read(one);
    } else prose.push(...said(isData(step) ? (step.text ?? step.name) : step));
  };
  for (const step of listOf(data.recipeInstructions)) read(step);
  const author = listOf(data.author).map((one) => (isData(one) ? one.name : one));
  return {
    title: said(data.name)[0]?.text ?? null,
    by: said(author[0])[0]?.text ?? null,
    yield:
      listOf(data.recipeYield)
        .flatMap((one) => said(one))
        .sort((a, b) => b.text.length - a.text.length)[0]?.text ?? null,
    notes: said(data.description).map(({ text }) => text),
    parts,
  };
}

/** Lines of a text that may hold markup and entities. */
function said(value: unknown): Written[] {
  if (typeof value !== 'string' && typeof value !== 'number') return [];
  const text = textOf(fromHtml(String(value), { fragment: true }));
  return text
    .split(/[\r\n]+/)
    .map((line) => line.split(/\s+/).join(' ').trim())
    .filter((line) => line !== '')
    .map((line) => ({ text: line, line: null }));
}

const breaks = new Set(['p', 'br', 'li', 'div', 'ol', 'ul', 'h1', 'h2', 'h3', 'h4', 'tr']);

function textOf(node: Root | ElementContent): string {
  if (node.type === 'text') return node.value;
  if (!('children' in node)) return '';
  const inner = node.children.map((child) => (child.type === 'doctype' ? '' : textOf(child))).join('');
  return node.type === 'element' && breaks.has(node.tagName) ? `\n${inner}\n` : inner;
}

const isData = (value: unknown): value is Data => typeof value === 'object' && value !== null && !Array.isArray(value);

const listOf = (value: unknown): readonly unknown[] =>
  value === undefined || value === null ? [] : Array.isArray(value) ? value : [value];
