/** The parser's own rules: no ambiguity, and a lookahead that decides as Chevrotain's does. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { LineParser } from '../../grammar/src/parser/line-parser.ts';
import { startScan } from '../../grammar/src/scanner/scan.ts';
import { scanTimed } from '../../grammar/src/scanner/scanner.ts';

test('Chevrotain finds no ambiguity in the rules', () => {
  expect(() => new LineParser({ recovers: true, validated: true })).not.toThrow();
});

test("the one-token lookahead takes the ways that Chevrotain's takes", () => {
  const [quick, checked] = [new LineParser({ recovers: true }), new LineParser({ recovers: true, validated: true })];
  const words = [
    'a',
    '"b"',
    ',',
    ':',
    '(',
    ')',
    'to',
    'at',
    'for',
    'into',
    'in',
    'with',
    'of',
    'and',
    'until',
    'when',
    'rest of',
    'as',
    'while',
  ];
  const measures = [
    '1',
    '2 g',
    '5 %',
    '80 °C',
    '10 min',
    '3 mm',
    '9 x 3 cm',
    '65 brix',
    '200 bloom',
    '1 g/ml',
    '18:30',
    'overnight',
  ];
  const rules = [
    'step',
    'ingredientLine',
    'makesLine',
    'choiceLine',
    'keepsLine',
    'takeLine',
    'requestLine',
    'equipmentLine',
  ] as const;
  const line = fc.array(fc.constantFrom(...words, ...measures), { maxLength: 9 }).map((parts) => parts.join(' '));
  fc.assert(
    fc.property(line, fc.constantFrom(...rules), (text, rule) => {
      const [one, other] = [quick, checked].map((parser) => {
        const scan = startScan(text, text.length);
        scanTimed(scan, 0);
        parser.start(scan.tokens);
        parser[rule]();
        return JSON.stringify([parser.failed, parser.errors.map((error) => error.message), parser.draft]);
      });
      expect(one).toBe(other);
    }),
    { numRuns: 2000 },
  );
});
