/** A program of its own, so that V8 optimises nothing away: how often any stretch of its code runs while each text is read. */
import { readFileSync } from 'node:fs';
import { Session } from 'node:inspector/promises';
import { createCache, parse } from 'nappe-grammar';

const texts: readonly string[] = JSON.parse(readFileSync(0, 'utf8'));
const session = new Session();
session.connect();
await session.post('Profiler.enable');
await session.post('Profiler.startPreciseCoverage', { callCount: true, detailed: true });
// What is made when first needed belongs to no text.
for (const text of texts) parse(text, createCache());

const counts: number[] = [];
for (const text of ['', ...texts]) {
  await session.post('Profiler.takePreciseCoverage');
  parse(text, createCache());
  const { result } = await session.post('Profiler.takePreciseCoverage');
  let count = 0;
  for (const { url, functions } of result)
    if (!url.startsWith('node:')) for (const { ranges } of functions) for (const range of ranges) count += range.count;
  counts.push(count);
}
const [none = 0, ...others] = counts;
process.stdout.write(JSON.stringify(others.map((count) => count - none)));
