/** Requests to the server that answer with data or with a problem in words for a cook. */
import type { Problem } from 'nappe-server/protocol';
import { type TextEditor, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';

/** The answer; null where there is a problem, which is then shown. */
export async function ask<T extends object>(client: BaseLanguageClient, method: string, params: object): Promise<T | null> {
  const answer = await client.sendRequest<T | Problem | null>(method, params);
  if (answer === null) return null;
  if (!('problem' in answer)) return answer;
  void window.showWarningMessage(answer.problem);
  return null;
}

/** The open formula; null where none is in front, which is then said. */
export function formulaEditor(): TextEditor | null {
  const editor = window.activeTextEditor ?? window.visibleTextEditors.find(({ document }) => document.languageId === 'nappe');
  if (editor && ['nappe', 'markdown'].includes(editor.document.languageId)) return editor;
  void window.showInformationMessage('Open a formula first.');
  return null;
}

/** Where the cursor is, as requests take it. */
export const placeOf = ({ document, selection }: TextEditor) => ({
  uri: document.uri.toString(),
  line: selection.active.line,
});
