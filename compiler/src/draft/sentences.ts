/** Prose cut into sentences, word for word; a point after an abbreviation that never ends one or inside a number ends none. */

const abbreviations = /(?:^|[\s(])(?:approx|tbsp|tsp|oz|lb|no|c|s|env|cuill|ca|bzw|evtl|usw|el|tl|z\. ?b|e\.g|i\.e|fl|vs)\.$/iu;

export function sentencesOf(paragraph: string): readonly string[] {
  const sentences: string[] = [];
  let from = 0;
  for (const end of paragraph.matchAll(/[.!?]["”’)]?\s+(?=["“(]?[\p{Lu}\d])/gu)) {
    const sentence = paragraph.slice(from, end.index + end[0].trimEnd().length);
    if (abbreviations.test(sentence)) continue;
    sentences.push(sentence.trim());
    from = end.index + end[0].length;
  }
  const rest = paragraph.slice(from).trim();
  return rest === '' ? sentences : [...sentences, rest];
}
