/** What can be named at a point of the method: ingredients by any of their words, what was mixed up, the current matter. */
import { nameKey } from 'nappe-grammar';
import { singulars } from './kinds.ts';

interface Known {
  /** As the draft calls it. */
  readonly name: string;
  /** Other ways the recipe may call it, by key. */
  readonly also: readonly string[];
  /** What is only listed, such as sugar for dusting, is not meant where something weighed can be. */
  readonly weighed: boolean;
}

/** Follows the notation's rule that matter is used once, so that no step names what is no longer there by itself. */
export class Names {
  private known: readonly Known[];
  private used: ReadonlySet<string>;
  /** `known` after a step that was understood; what an unknown step leaves is not. */
  private current: boolean;

  constructor(known: readonly Known[], used: ReadonlySet<string> = new Set(), current = false) {
    this.known = known;
    this.used = used;
    this.current = current;
  }

  copy(): Names {
    return new Names(this.known, this.used, this.current);
  }

  become(other: Names): void {
    this.known = other.known;
    this.used = other.used;
    this.current = other.current;
  }

  hasCurrent(): boolean {
    return this.current;
  }

  /** The one thing still to be had that these words mean: by its whole name, else by words only it has; null where none or several. */
  find(text: string): string | null {
    const key = nameKey(
      text
        .replace(/^(?:(?:the|all|your|hot|warm|cold|cooled|le|la|les|l')\s?)+(?=\s|\p{L})/iu, (lead) =>
          /[\s']$/.test(lead) ? '' : lead,
        )
        .trim(),
    );
    if (key === '') return null;
    const free = this.known.filter(({ name }) => !this.used.has(name));
    const forms = [key, ...singulars(key), `${key}s`];
    const exact = free.filter(({ name, also }) => forms.some((form) => nameKey(name) === form || also.includes(form)));
    if (exact.length === 1) return exact[0]?.name ?? null;
    if (exact.length > 1) return null;
    const has = ({ name, also }: Known): boolean =>
      [nameKey(name), ...also].some((one) => forms.some((form) => ` ${one} `.includes(` ${form} `)));
    // Among all, used ones too: “the sugar” of two sugars is neither.
    const all = this.known.filter(has);
    const meant = all.length > 1 ? all.filter(({ weighed }) => weighed) : all;
    return meant.length === 1 && free.includes(meant[0] as Known) ? (meant[0]?.name ?? null) : null;
  }

  /** Whether it can be the other party of a step. */
  acted(name: string): boolean {
    return !this.used.has(name);
  }

  /** After an understood step: what was combined with others is used up, what was acted on alone keeps its name. */
  after(verb: string, parties: readonly string[], target: string | null): boolean {
    const adds = ['add', 'fold'].includes(verb) && target === null;
    if (adds && (!this.current || parties.length === 0)) return false;
    const used = new Set(this.used);
    const keeps = ['bloom', 'soak'].includes(verb) || (parties.length === 1 && target === null && !adds);
    if (['bloom', 'soak', 'dissolve'].includes(verb) && target !== null) used.add(target);
    if (!keeps) for (const name of parties) used.add(name);
    this.used = used;
    this.current = true;
    return true;
  }

  /** After a sentence that was not understood: whatever it names may be anywhere now, and so may what was in hand. */
  unsure(sentence: string): void {
    const key = ` ${nameKey(sentence).replace(/[.,;:!?()]/g, ' ')} `;
    const used = new Set(this.used);
    for (const { name, also } of this.known) {
      const words = [nameKey(name), ...also].flatMap((one) => [one, ...one.split(' ').filter((word) => word.length > 3)]);
      if (words.some((word) => key.includes(` ${word} `) || key.includes(` ${word}s `))) used.add(name);
    }
    this.used = used;
    this.current = false;
  }
}
