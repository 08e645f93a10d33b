/** Pictures of a handout: those beside its file are put into the page, no other is fetched. */
import type { Element, Root } from 'hast';
import { visit } from 'unist-util-visit';
import { locate } from '../resolve/paths.ts';
import type { Fault, Picture } from './model.ts';

/** Changes the tree: every picture holds its own data, or is replaced by its words. */
export function inlined(tree: Root, from: string, root: string, picture: (path: string) => Picture): readonly Fault[] {
  const faults: Fault[] = [];
  visit(tree, 'element', (element, index, parent) => {
    if (element.tagName !== 'img' || !parent || index === undefined) return;
    const src = String(element.properties.src ?? '');
    const found = src === '' ? { why: 'it says no file' } : read(src, from, root, picture);
    if ('base64' in found) {
      element.properties.src = `data:${found.type};base64,${found.base64}`;
      return;
    }
    faults.push({
      line: element.position?.start.line ?? 0,
      message: `The picture “${shown(src)}” is not in the page: ${found.why}.`,
    });
    parent.children[index] = wordsFor(element);
  });
  return faults;
}

function read(src: string, from: string, root: string, picture: (path: string) => Picture): Picture | { readonly why: string } {
  const file = decoded(src.split(/[?#]/u)[0] ?? '');
  const located = locate(file, from, root);
  return 'outside' in located ? { why: located.outside } : picture(located.path);
}

/** Markdown writes spaces and letters of a path in percent. */
function decoded(src: string): string {
  try {
    return decodeURIComponent(src);
  } catch {
    return src;
  }
}

const wordsFor = ({ properties }: Element): Element => ({
  type: 'element',
  tagName: 'em',
  properties: {},
  children: [{ type: 'text', value: String(properties.alt ?? '') }],
});

const shown = (src: string): string => (src.length > 100 ? `${src.slice(0, 99)}…` : src);
