/** The catalogue as rows of text for a reference page: one a kind, figures in per cent, with its source. */
import { constituents } from '../matter/composition.ts';
import { families } from './catalogue.ts';
import type { Kind } from './kind.ts';

export interface CatalogueRow {
  readonly family: string;
  readonly name: string;
  readonly synonyms: string;
  readonly fr: string;
  /** `water 88.1, milk fat 3.3`: mass %, what is there. */
  readonly composition: string;
  /** `1.03 g/ml`, or empty. */
  readonly density: string;
  /** `50 g`, or empty. */
  readonly piece: string;
  readonly allergens: string;
  readonly source: string;
}

export const catalogueTable = (): readonly CatalogueRow[] =>
  families.flatMap(({ name, kinds }) => kinds.map((kind) => ({ family: name, ...rowOf(kind) })));

function rowOf(kind: Kind): Omit<CatalogueRow, 'family'> {
  const { composition } = kind;
  const shares = composition ? constituents.filter((name) => composition[name] >= 0.0005) : [];
  return {
    name: kind.name,
    synonyms: kind.synonyms.join(', '),
    fr: kind.fr,
    composition: shares.map((name) => `${words(name)} ${Math.round((composition?.[name] ?? 0) * 1000) / 10}`).join(', '),
    density: kind.density === null ? '' : `${kind.density} g/ml`,
    piece: kind.piece === null ? '' : `${kind.piece} g`,
    allergens: kind.allergens.join(', '),
    source: kind.source.text,
  };
}

/** `otherSugars` → `other sugars`. */
const words = (name: string) => name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`);
