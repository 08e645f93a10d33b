/** Saves a card as a page or as Markdown, by the ending that is chosen. */
import type { CardAnswer } from 'nappe-server/protocol';
import { Uri, window, workspace } from 'vscode';

export async function saveCard({ html, markdown, formula }: CardAnswer, source: string): Promise<void> {
  const name = `${formula.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-') || 'card'}.html`;
  const from = Uri.parse(source);
  const target = await window.showSaveDialog({
    title: 'Save the card',
    filters: { 'Web page': ['html'], Markdown: ['md'] },
    ...(from.scheme !== 'untitled' && { defaultUri: Uri.joinPath(from, '..', name) }),
  });
  if (!target) return;
  const text = target.path.toLowerCase().endsWith('.md') ? (markdown ?? '') : html;
  try {
    await workspace.fs.writeFile(target, new TextEncoder().encode(text));
  } catch (error) {
    void window.showErrorMessage(`The card could not be saved: ${error instanceof Error ? error.message : String(error)}`);
    return;
  }
  void window.showInformationMessage(`The card is saved as ${workspace.asRelativePath(target)}.`);
}
