/** A kind of the catalogue in words: its row with the source. */
import { families, formatNumber, formatPercent, type Kind } from 'nappe';
import { asText, bullets, paragraphs } from './markup.ts';

export function kindText(kind: Kind, house = false): string {
  const { composition } = kind;
  const shares = composition
    ? constituentNames
        .filter(([key]) => composition[key] >= 0.005)
        .map(([key, word]) => `${word} ${formatPercent(composition[key])}`)
    : [];
  return paragraphs(
    `**${asText(kind.name)}** · ${house ? 'house ingredient' : familyOf(kind)}, ${kind.phase}, kept ${kind.storage}`,
    shares.length > 0 ? shares.join(' · ') : 'Its composition is not known.',
    bullets([
      kind.density !== null && `Density ${formatNumber(kind.density, 2)} g/ml`,
      kind.piece !== null && `One piece weighs ${formatNumber(kind.piece)} g`,
      kind.pH !== null && `pH ${formatNumber(kind.pH)}`,
      kind.absorbs !== null && `Takes up ${formatNumber(100 * kind.absorbs, 0)} % of its mass`,
      kind.allergens.length > 0 && `Allergens: ${kind.allergens.join(', ')}`,
      kind.synonyms.length > 0 && `Also called ${asText(kind.synonyms.slice(0, 6).join(', '))}`,
    ]),
    `Source: ${asText(kind.source.text)}`,
  );
}

const familyOf = (kind: Kind): string =>
  families.find(({ kinds }) => kinds.some(({ name }) => name === kind.name))?.name ?? 'ingredient';

const constituentNames: readonly (readonly [keyof NonNullable<Kind['composition']>, string])[] = [
  ['water', 'water'],
  ['milkFat', 'milk fat'],
  ['cocoaButter', 'cocoa butter'],
  ['otherFat', 'other fat'],
  ['sucrose', 'sucrose'],
  ['otherSugars', 'other sugars'],
  ['starch', 'starch'],
  ['protein', 'protein'],
  ['fibre', 'fibre'],
  ['ash', 'minerals'],
  ['alcohol', 'alcohol'],
];
