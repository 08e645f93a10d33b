/** Insert a component from the bases: picks one the folder offers, takes it, and weighs it where the cursor is on an empty line. */
import { type Base, type BasesAnswer, basesRequest } from 'nappe-server/protocol';
import { SnippetString, WorkspaceEdit, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { ask, formulaEditor } from '../ask.ts';

export async function takeComponent(client: BaseLanguageClient): Promise<void> {
  const editor = formulaEditor();
  if (!editor) return;
  const { document } = editor;
  const answer = await ask<BasesAnswer>(client, basesRequest, { uri: document.uri.toString() });
  const items = (answer?.bases ?? []).map((base) => ({ label: base.name, description: base.file, base }));
  if (items.length === 0) {
    void window.showInformationMessage(
      'No other file of this folder has a component to take. A component that stands above any formula is one.',
    );
    return;
  }
  const picked = await window.showQuickPick(items, { title: 'Insert a component from the bases', matchOnDescription: true });
  if (!picked) return;
  const edit = new WorkspaceEdit();
  edit.set(document.uri, await client.protocol2CodeConverter.asTextEdits([picked.base.edit]));
  await workspace.applyEdit(edit);
  await weigh(picked.base);

  async function weigh({ name }: Base): Promise<void> {
    const { line } = editor!.selection.active;
    if (document.lineAt(line).isEmptyOrWhitespace && line > picked!.base.edit.range.start.line)
      await editor!.insertSnippet(
        new SnippetString(`  \${1:100} g  ${name.replaceAll(/[$}\\]/g, '\\$&')}`),
        document.lineAt(line).range,
      );
  }
}
