/** How a name is written where it is inserted: bare where the line reads it whole, else in quotes. */
import { connectives, nameKey, parseLine } from 'nappe-grammar';

/** After a verb, a connective or a comma of a step. */
export const inStep = (name: string): string => written(name, `mix ${name}`);

/** Behind the quantity of an ingredient line. */
export const inIngredient = (name: string): string => written(name, `1 g ${name}`);

function written(name: string, line: string): string {
  if (isPlain(name)) return name;
  const read = parseLine(line, 'formula');
  const found = read.kind === 'step' ? read.operands : read.kind === 'ingredient' ? [read] : [];
  const [only, second] = found;
  const whole = only && !second && read.problems.length === 0 && only.name.key === nameKey(name);
  return whole ? name : `"${name}"`;
}

/** Words of letters alone, none of them a word of the notation: the line need not be read to know. */
const isPlain = (name: string): boolean =>
  /^\p{L}[\p{L}\p{M} '-]*$/u.test(name) &&
  !name
    .toLowerCase()
    .split(' ')
    .some((word) => joining.has(word));

const joining: ReadonlySet<string> = new Set([...connectives, 'rest', 'half', 'each', 'some', 'is', '']);
