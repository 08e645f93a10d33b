/** What a line's attributes say worked into its kind: composition, phase, storage, acidity, pasteurisation. */
import type { Attribute } from 'nappe-grammar';
import { type Refusal, withAlcohol, withBrix, withCocoa, withFat, withSolids, withSugar } from '../catalogue/index.ts';
import type { Kind, Phase } from '../catalogue/kind.ts';

type Share = Extract<Attribute, { kind: 'share' }>['of'];

const byShare: Readonly<Record<Share, (kind: Kind, percent: number) => Kind | Refusal>> = {
  cocoa: withCocoa,
  fat: withFat,
  sugar: withSugar,
  alcohol: withAlcohol,
  solids: withSolids,
};

/** Shares are worked in one after the other; solids and brix last, because they speak of the whole. */
const order: readonly (Share | 'brix')[] = ['cocoa', 'fat', 'sugar', 'alcohol', 'brix', 'solids'];

/**
 * The kind as the line describes it. A figure that cannot be said of it is handed to `refuse` and left out; of a kind whose
 * composition is not known nothing is refused, because nothing is known.
 */
export function adjusted(
  kind: Kind,
  attributes: readonly Attribute[],
  refuse: (attribute: Attribute, why: string) => void,
): Kind {
  let result = kind;
  for (const attribute of inOrder(attributes)) {
    if (result.composition === null && (attribute.kind === 'share' || attribute.kind === 'brix')) continue;
    const next = applied(result, attribute);
    if ('error' in next) refuse(attribute, next.error);
    else result = next;
  }
  return result;
}

function applied(kind: Kind, attribute: Attribute): Kind | Refusal {
  switch (attribute.kind) {
    case 'share':
      return byShare[attribute.of](kind, (attribute.percent.low + attribute.percent.high) / 2);
    case 'brix':
      return withBrix(kind, (attribute.brix.low + attribute.brix.high) / 2);
    case 'pH':
      return { ...kind, pH: (attribute.pH.low + attribute.pH.high) / 2 };
    case 'phase':
      return withPhase(kind, attribute.phase as Phase);
    case 'state':
      return withState(kind, attribute.state);
    default:
      return kind;
  }
}

/** What is bought frozen is kept frozen; as it thaws it is what it was. */
const withPhase = (kind: Kind, phase: Phase): Kind =>
  phase === 'frozen' ? { ...kind, phase, storage: 'frozen' } : { ...kind, phase };

function withState(kind: Kind, state: Extract<Attribute, { kind: 'state' }>['state']): Kind {
  if (state === 'raw') return { ...kind, pasteurised: false };
  return state === 'fresh' ? kind : { ...kind, pasteurised: true };
}

const inOrder = (attributes: readonly Attribute[]): readonly Attribute[] => [...attributes].sort((a, b) => rank(a) - rank(b));

const rank = (attribute: Attribute): number =>
  attribute.kind === 'share' ? order.indexOf(attribute.of) : attribute.kind === 'brix' ? order.indexOf('brix') : order.length;
