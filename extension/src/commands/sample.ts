/** The walkthrough's sample: a formula that works, in a new document that is saved nowhere until one wishes. */
import { Uri, window, workspace } from 'vscode';

export async function openSample(extension: Uri): Promise<void> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(extension, 'walkthrough', 'pouring-custard.nappe'));
  const document = await workspace.openTextDocument({ language: 'nappe', content: new TextDecoder().decode(bytes) });
  await window.showTextDocument(document);
}
