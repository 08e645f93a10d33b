/** Random texts, and the texts that once failed: every promise holds on each. */
import { describe, expect, test } from 'vitest';
import { checksWhole, parsesWhole, placesInside, sameOnCrlf, sameWhenLaidOut } from './promises.ts';
import { holdsOn, patience } from './run.ts';
import { bytes, failures, texts, written } from './texts.ts';

describe('of any text', () => {
  test('bytes are read whole, and laying out settles', patience, () => holdsOn(bytes, 'bytes are read whole', 400, parsesWhole));
  test('lines are read whole, and laying out settles', patience, () => holdsOn(texts, 'lines are read whole', 300, parsesWhole));
  test('checking never breaks', patience, () => holdsOn(bytes, 'bytes are checked', 300, checksWhole));
  test('every place is inside the file', patience, () => holdsOn(texts, 'places are inside', 150, placesInside));
  test('CRLF or LF, the answers are the same', patience, () => holdsOn(texts, 'CRLF is LF', 100, sameOnCrlf));
  test('laying out changes no diagnostic and no trace', patience, () =>
    holdsOn(texts, 'layout means nothing', 80, sameWhenLaidOut),
  );
});

describe('of written formulas', () => {
  test.each([parsesWhole, placesInside, sameOnCrlf, sameWhenLaidOut])('%o', patience, (promise) => {
    for (const text of written) promise(text);
  });
});

describe('of what failed before', () => {
  test('there is some', () => expect(failures.length).toBeGreaterThan(0));
  test.each(failures.map((text, i) => ({ text, i })))('failure $i', patience, ({ text }) => {
    for (const promise of [parsesWhole, placesInside, sameOnCrlf, sameWhenLaidOut]) promise(text);
  });
});
