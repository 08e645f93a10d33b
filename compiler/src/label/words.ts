/** The words of a label, in pieces, so that every output can set the allergens off in its own way. */
import { setOff } from './allergens.ts';
import type { Declared, Label } from './model.ts';

export interface Piece {
  readonly text: string;
  readonly allergen: boolean;
}

const said = (text: string): Piece => ({ text, allergen: false });
const off = (text: string): Piece => ({ text, allergen: true });

/** `Ingredients: cream (MILK), sugar …`: in pieces, the allergens apart. */
export function ingredientPieces(label: Label): readonly Piece[] {
  const listed = label.ingredients.filter(({ strained }) => !strained);
  const strained = label.ingredients.filter(({ strained }) => strained);
  return [
    ...listed.flatMap((one, index) => [...(index === 0 ? [] : [said(', ')]), ...piecesOf(one, label)]),
    ...strained.flatMap((one, index) => [
      said(index === 0 ? (listed.length === 0 ? '' : '; steeped or in traces: ') : ', '),
      ...piecesOf(one, label),
    ]),
    said('.'),
  ];
}

function piecesOf({ name, allergens, percent, share, compound }: Declared, { region }: Label): readonly Piece[] {
  // The American list says allergens in the statement below it.
  const words = region === 'eu' ? allergens : [];
  const within = words.find((word) => setOff(name, word) !== null);
  const inside = within === undefined ? null : setOff(name, within);
  const brackets = [
    ...words.filter((word) => word !== within).map((word) => [off(word)]),
    ...(compound && share >= shortList ? [[said('list on its packet')]] : []),
  ];
  return [
    ...(inside ? [said(inside[0]), off(inside[1]), said(inside[2])] : [said(name)]),
    ...(percent === null ? [] : [said(` ${percentText(percent)}`)]),
    ...(brackets.length > 0
      ? [said(' ('), ...brackets.flatMap((part, index) => [...(index === 0 ? [] : [said(', ')]), ...part]), said(')')]
      : []),
  ].filter(({ text }) => text !== '');
}

/** Below 2 % of what is made a compound ingredient needs no list of its own (Annex VII, part E, 2(a)); its allergens it does. */
const shortList = 2;

/** Whole from 10 %, tenths below; over the whole where more went in than came out (Annex VIII, 3). */
export function percentText(percent: number): string {
  if (percent > 100) return `(${Math.round(percent)} g per 100 g)`;
  return `${percent >= 9.95 ? Math.round(percent) : Number(percent.toFixed(1))} %`;
}

export const allergenStatement = ({ contains, unknown, region }: Label): readonly string[] => [
  ...(contains.length > 0 ? [`Contains: ${statement(contains.map(({ name }) => name))}.`] : []),
  ...(contains.length === 0
    ? [
        `None of the ${region === 'us' ? 'nine major allergens' : 'allergens that must be declared'}, as far as the catalogue knows.`,
      ]
    : []),
  ...(unknown.length > 0 ? [`Not known for: ${unknown.join(', ')}. Read its packet.`] : []),
];

/** `tree nuts (almonds)` and `tree nuts (pecans)` are one entry. */
function statement(names: readonly string[]): string {
  const groups = new Map<string, string[]>();
  for (const name of names) {
    const open = name.indexOf(' (');
    const group = open < 0 ? name : name.slice(0, open);
    groups.set(group, [...(groups.get(group) ?? []), ...(open < 0 ? [] : [name.slice(open + 2, -1)])]);
  }
  return [...groups].map(([group, inside]) => (inside.length === 0 ? group : `${group} (${inside.join(', ')})`)).join(', ');
}

/** Lines below the list: quantity, storage, date. */
export const factLines = ({ netQuantity, storage, made, lastDay, perishable }: Label): readonly (readonly [string, string])[] => [
  ...(netQuantity === null ? [] : [['Net quantity', netQuantity] as const]),
  ['Keeps', storage ?? 'not written in the formula'],
  ['Made', made],
  ...(lastDay === null ? [] : [[perishable ? 'Use by' : 'Best before', lastDay] as const]),
];

export const titleOf = ({ formula, choices }: Label): string =>
  [formula, ...(Object.keys(choices).length > 0 ? [`(${Object.values(choices).join(', ')})`] : [])].join(' ');

export const unchecked = 'Not checked through: the formula has errors.';
