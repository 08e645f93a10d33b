/** Parameters as they come: checked before they are used, refused where they are not what the method asks for. */
import { ErrorCodes, type Position, type Range, ResponseError } from 'vscode-languageserver';
import { isPosition } from './encoding.ts';

type Record_ = Readonly<Record<string, unknown>>;

export function record(value: unknown): Record_ {
  if (typeof value !== 'object' || value === null) throw invalid('parameters are missing');
  return value as Record_;
}

export function uriIn(params: unknown): string {
  const { textDocument, uri } = record(params);
  const found = typeof textDocument === 'object' && textDocument !== null ? record(textDocument).uri : uri;
  if (typeof found !== 'string') throw invalid('textDocument.uri is missing');
  return found;
}

export function positionIn(params: unknown): Position {
  const { position } = record(params);
  if (!isPosition(position)) throw invalid('position is missing');
  return position;
}

export function rangeIn(params: unknown): Range {
  const { range } = record(params);
  if (!isRange(range)) throw invalid('range is missing');
  return range;
}

export function textIn(params: unknown, key: string): string {
  const value = record(params)[key];
  if (typeof value !== 'string') throw invalid(`${key} is missing`);
  return value;
}

export const isRange = (value: unknown): value is Range =>
  typeof value === 'object' &&
  value !== null &&
  'start' in value &&
  'end' in value &&
  isPosition(value.start) &&
  isPosition(value.end);

export const invalid = (what: string): ResponseError<void> => new ResponseError(ErrorCodes.InvalidParams, what);
