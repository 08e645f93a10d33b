/** One rule explained, for `nappe explain`, the editor's link and the reference page: all from the rule object. */
import { nearestNames } from '../resolve/nearest.ts';
import { ruleOf, rules } from './registry.ts';
import type { Rule } from './rule.ts';

/** A line of the index: every code with its severities and title, in the order of the registry. */
export const codeIndex = (): readonly {
  readonly code: string;
  readonly severities: Rule['severities'];
  readonly title: string;
  readonly safety: boolean;
}[] => rules.map(({ code, severities, title, safety }) => ({ code, severities, title, safety: safety === true }));

/** Codes near to one that does not exist. */
export const nearestCodes = (code: string): readonly string[] =>
  nearestNames(
    code,
    rules.map((rule) => ({ key: rule.code, text: rule.code })),
  );

/** The rule as Markdown, with a heading of the given depth; null for an unknown code. */
export function explainMarkdown(code: string, depth = 2): string | null {
  const rule = ruleOf(code);
  if (!rule) return null;
  const sub = '#'.repeat(depth + 1);
  return [
    `${'#'.repeat(depth)} \`${rule.code}\``,
    `**${rule.title}.** Severity: ${severities(rule)}.${rule.safety ? ' A safety code: where it is allowed, the card says so.' : ''}`,
    rule.why,
    `${sub} What to do\n\n${rule.remedy}`,
    `${sub} Raised here\n\n${fence(rule.examples.bad)}`,
    `${sub} Not raised here\n\n${fence(rule.examples.good)}`,
    `Source: ${rule.source}`,
  ].join('\n\n');
}

/** The rule as plain text for a terminal; null for an unknown code. */
export function explainText(code: string): string | null {
  const rule = ruleOf(code);
  if (!rule) return null;
  return [
    `${rule.code}: ${rule.title} (${severities(rule)}${rule.safety ? '; safety code' : ''})`,
    wrapped(rule.why),
    `What to do\n${wrapped(rule.remedy)}`,
    `Raised here\n\n${indented(rule.examples.bad)}`,
    `Not raised here\n\n${indented(rule.examples.good)}`,
    `Source\n${wrapped(rule.source)}`,
  ].join('\n\n');
}

/** The reference page of all rules. */
export function referencePage(): string {
  const rows = rules.map(
    (rule) => `| [\`${rule.code}\`](#${rule.code})${rule.safety ? ' †' : ''} | ${rule.severities.join(', ')} | ${rule.title} |`,
  );
  const table = ['| code | severity | title |', '| --- | --- | --- |', ...rows].join('\n');
  const intro = 'Every code the checker raises. Those marked † are safety codes: where one is allowed, the card says so.';
  return `${['# Diagnostics', intro, table, ...rules.map((rule) => explainMarkdown(rule.code) ?? '')].join('\n\n')}\n`;
}

const severities = ({ severities: all, decides }: Rule): string =>
  `${all.join(' or ')}${decides === undefined ? '' : `: ${decides.replace(/\.$/, '')}`}`;

const fence = (example: string): string => `\`\`\`nappe\n${example.trimEnd()}\n\`\`\``;

const indented = (example: string): string =>
  example
    .trimEnd()
    .split('\n')
    .map((line) => (line === '' ? '' : `    ${line}`))
    .join('\n');

/** Words in lines of at most 96 columns. */
function wrapped(text: string): string {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > 96) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join('\n');
}
