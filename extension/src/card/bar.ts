/** The bar above the card: yield, choices, units, language; redrawn around the field that is being typed in. */
import type { ShownCard, Wish } from './messages.ts';

const make = document.getElementById('for') as HTMLInputElement;
const choices = document.getElementById('choices')!;
const units = document.getElementById('units') as HTMLSelectElement;
const language = document.getElementById('language') as HTMLSelectElement;

export function drawBar(card: ShownCard, wish: Wish): void {
  make.placeholder = card.makes;
  make.title = `A yield such as “24 glasses” or “2.4 kg”; empty: as written (${card.makes})`;
  if (document.activeElement !== make) make.value = wish.for ?? '';
  units.value = card.units;
  fill(
    language,
    card.languages.map(({ code, name }) => [code, name]),
    card.language,
  );
  const rows = [
    ...(card.formulas.length > 1 ? [{ id: '', label: 'Formula', values: card.formulas, value: card.formula }] : []),
    ...card.choices.map(({ name, values, value }) => ({ id: name, label: name, values, value })),
  ];
  if (choices.childElementCount !== rows.length) choices.replaceChildren(...rows.map(() => labelled()));
  rows.forEach(({ id, label, values, value }, index) => {
    const row = choices.children[index]!;
    const select = row.querySelector('select')!;
    row.firstChild!.textContent = `${label} `;
    select.dataset.choice = id;
    fill(
      select,
      values.map((one) => [one, one]),
      value,
    );
  });
}

/** What the bar says now; the formula where the bar has no say in it. */
export function readWish({ formula }: Wish): Wish {
  const selects = [...choices.querySelectorAll('select')];
  const picked = selects.find(({ dataset }) => dataset.choice === '')?.value ?? formula;
  const values = selects.flatMap(({ dataset, value }) => (dataset.choice ? [[dataset.choice, value] as const] : []));
  // Another formula has other choices and another yield.
  const isOther = picked !== formula;
  return {
    ...(picked !== undefined && { formula: picked }),
    ...(make.value.trim() !== '' && !isOther && { for: make.value.trim() }),
    ...(values.length > 0 && !isOther && { choices: Object.fromEntries(values) }),
    units: units.value === 'us' ? 'us' : 'metric',
    language: language.value,
  };
}

function labelled(): HTMLLabelElement {
  const label = document.createElement('label');
  label.append('', document.createElement('select'));
  return label;
}

function fill(select: HTMLSelectElement, options: readonly (readonly [string, string])[], value: string): void {
  const same = select.length === options.length && options.every(([code], index) => select.options[index]?.value === code);
  if (!same) select.replaceChildren(...options.map(([code, name]) => new Option(name, code)));
  if (document.activeElement !== select || select.value === '') select.value = value;
}
