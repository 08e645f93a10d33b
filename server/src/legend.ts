/** The kinds of semantic tokens the server gives, in the order of their numbers. */
import type { SemanticTokensLegend } from 'vscode-languageserver';

export const tokenTypes = [
  'keyword',
  'function',
  'variable',
  'class',
  'struct',
  'enumMember',
  'property',
  'number',
  'type',
  'string',
  'comment',
  'namespace',
] as const;

export const tokenModifiers = ['declaration'] as const;

export const legend: SemanticTokensLegend = { tokenTypes: [...tokenTypes], tokenModifiers: [...tokenModifiers] };
