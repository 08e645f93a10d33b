/** Explain this fault: the page about the diagnostic under the cursor, as a preview. */
import { explanationUri } from 'nappe-server/protocol';
import { commands, type Diagnostic, languages, Uri, window } from 'vscode';
import { formulaEditor } from '../ask.ts';

export async function explainFault(): Promise<void> {
  const editor = formulaEditor();
  if (!editor) return;
  const { line } = editor.selection.active;
  const found = languages
    .getDiagnostics(editor.document.uri)
    .filter(({ source, range }) => source === 'nappe' && range.start.line <= line && range.end.line >= line);
  const codes = new Map(found.map((one) => [codeOf(one), one.message]));
  if (codes.size === 0) {
    void window.showInformationMessage('There is no fault on this line.');
    return;
  }
  const items = [...codes].map(([label, detail]) => ({ label, detail }));
  const picked = items.length === 1 ? items[0] : await window.showQuickPick(items, { title: 'Explain which fault?' });
  if (picked) await commands.executeCommand('markdown.showPreviewToSide', Uri.parse(explanationUri(picked.label)));
}

const codeOf = ({ code }: Diagnostic): string => String(typeof code === 'object' ? code.value : code);
