/** `claim-broken`: the formula says it is free from something that is in it. */
import type { Allergen } from '../catalogue/kind.ts';
import type { Run, WeighedLine } from '../run/trace.ts';
import type { Fix, Place, Report, Rule } from './rule.ts';

const nuts: readonly Allergen[] = ['almond', 'hazelnut', 'walnut', 'cashew', 'pecan', 'brazil-nut', 'pistachio', 'macadamia'];

/** What breaks a claim: `nuts` is any of them, and wheat is gluten. */
const breaks = (claim: Allergen | 'nuts'): readonly Allergen[] =>
  claim === 'nuts' ? nuts : claim === 'gluten' ? ['gluten', 'wheat'] : [claim];

function check(run: Run, report: Report): void {
  const lines = run.blocks.flatMap((block) => block.lines.filter(({ used }) => used));
  for (const claim of run.formula.freeFrom) {
    const broken = breaks(claim.allergen);
    const holding = lines.filter((line) => allergensOf(line).some((allergen) => broken.includes(allergen)));
    const unknown = lines.filter(({ line }) => line.substance.is === 'kind' && !line.substance.known);
    const culprits = holding.length > 0 ? holding : unknown;
    if (culprits.length === 0) continue;
    report({
      severity: holding.length > 0 ? 'error' : 'warning',
      place: claim.place,
      numbers: {
        claim: claim.allergen,
        ingredient: culprits[0]!.line.label,
        others: new Set(culprits.map(({ line }) => line.id)).size - 1,
        known: holding.length > 0,
      },
      related: related(culprits),
      fixes: holding.length > 0 ? withdrawn(run, claim.place) : [],
    });
  }
}

const allergensOf = ({ line }: WeighedLine): readonly Allergen[] =>
  line.substance.is === 'kind' ? line.substance.kind.allergens : [];

function related(culprits: readonly WeighedLine[]) {
  const lines = [...new Set(culprits.map(({ line }) => line))].slice(0, 5);
  return lines.map((line) => ({ place: line.place, message: `${line.label} is weighed here` }));
}

/** Takes the word out of the claim, or the whole claim where it is the only word. */
function withdrawn(run: Run, place: Place): readonly Fix[] {
  const same = run.formula.freeFrom
    .map((claim) => claim.place)
    .filter(({ line, block }) => line === place.line && block === place.block);
  const at = same.findIndex(({ start }) => start === place.start);
  const before = same[at - 1];
  const after = same[at + 1];
  const span = before
    ? { start: before.end, end: place.end }
    : after
      ? { start: place.start, end: after.start }
      : { start: 0, end: place.end };
  return [{ title: 'Withdraw the claim', edits: [{ ...place, ...span, text: '' }] }];
}

const rest = `  200 g  plain flour
   60 g  ground almonds
  160 g  butter, 18 °C
   80 g  caster sugar
  cream butter, caster sugar until smooth
  add plain flour, ground almonds
  bake at 160 °C for 20 min until golden
`;

export const claimBroken: Rule = {
  code: 'claim-broken',
  severities: ['error', 'warning'],
  title: 'It is not free from what it says',
  decides: 'An error where an ingredient is known to hold it; a warning where the allergens of one are not known.',
  safety: true,
  served: true,
  why: 'A guest with an allergy relies on the claim. Everything weighed counts, also what is strained out, dusted on or greased with, because traces of it stay. `nuts` means every nut of the list, and wheat is gluten.',
  remedy:
    'Take the claim out, or replace the ingredient. Say what an ingredient of your own holds with `allergen` in its `ingredient` block.',
  source:
    'Regulation (EU) 1169/2011, Annex II, for the list. Traces from the kitchen are not judged here; the local food code decides.',
  examples: {
    bad: `formula Almond shortbread, sold as nut-free
  free from nuts   // expect: claim-broken
${rest}`,
    good: `formula Almond shortbread
  free from egg
${rest}`,
  },
  message: (n) => {
    const more = Number(n.others) > 0 ? ` (and ${n.others} more)` : '';
    return n.known
      ? `It says free from ${n.claim}, which this holds: ${n.ingredient}${more}.`
      : `It says free from ${n.claim}, and nothing is known of the allergens in: ${n.ingredient}${more}.`;
  },
  check,
};
