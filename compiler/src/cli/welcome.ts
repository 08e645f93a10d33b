/** What `nappe` alone says: what it is for, and the next thing to type from where one stands. */
import { readdirSync } from 'node:fs';

export function welcome(folder: string = process.cwd()): string {
  const found = formulasIn(folder);
  return [
    'Nappe checks pastry formulas written as plain text, and makes cards from them.',
    '',
    ...(found.length > 0 ? firstSteps(found[0] as string) : hint),
    '',
    'All commands:    nappe --help',
    'One command:     nappe check --help',
    '',
  ].join('\n');
}

/** Nothing to check here yet. */
const hint = [
  'There is no formula in this folder yet. To begin with one that works:',
  '',
  '    nappe new             writes a starter formula and says what to do with it',
];

function firstSteps(file: string): string[] {
  const name = /^[\w.-]+$/.test(file) ? file : `"${file}"`;
  return [
    'In this folder:',
    '',
    '    nappe check           says what is wrong in its formulas',
    `    nappe card ${name} -o card.html`,
    '                          makes a card to print',
  ];
}

function formulasIn(folder: string): string[] {
  try {
    return readdirSync(folder)
      .filter((name) => name.endsWith('.nappe'))
      .sort();
  } catch {
    return [];
  }
}
