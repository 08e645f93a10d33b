/** Scale the formula: asks for a yield or a factor and rewrites the amounts in the text. */
import { type ScaleAnswer, scaleRequest } from 'nappe-server/protocol';
import { window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { ask, formulaEditor, placeOf } from '../ask.ts';

export async function scaleFormula(client: BaseLanguageClient): Promise<void> {
  const editor = formulaEditor();
  if (!editor) return;
  const place = placeOf(editor);
  const text = await window.showInputBox({
    title: 'Scale the formula',
    prompt: 'How much should it make? A yield such as “24 glasses” or “2.4 kg”, or a factor such as “× 2”.',
    placeHolder: '24 glasses',
  });
  if (!text?.trim()) return;
  const answer = await ask<ScaleAnswer>(client, scaleRequest, { ...place, ...wanted(text.trim()) });
  if (answer) await workspace.applyEdit(await client.protocol2CodeConverter.asWorkspaceEdit(answer.edit));
}

/** `× 2`, `2x`, `1/2` are factors; everything else is a yield, which the server reads. */
function wanted(text: string): { factor: number } | { for: string } {
  const [, over, under] =
    /^[x×]\s*(\d+(?:\.\d+)?)(?:\/(\d+))?$/i.exec(text) ?? /^(\d+(?:\.\d+)?)(?:\/(\d+)|\s*[x×])$/i.exec(text) ?? [];
  return over === undefined ? { for: text } : { factor: Number(over) / Number(under ?? 1) };
}
