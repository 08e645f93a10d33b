/** Compare with the last commit: what changed in meaning since then, as a preview. */
import { type CompareAnswer, compareRequest } from 'nappe-server/protocol';
import { commands, type Disposable, EventEmitter, extensions, Uri, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { ask, formulaEditor } from '../ask.ts';

const scheme = 'nappe-changes';

/** The part of the editor's own git extension that is used (its API, version 1). */
interface Git {
  getAPI(version: 1): { getRepository(uri: Uri): { show(ref: string, path: string): Promise<string> } | null };
}

export class Changes implements Disposable {
  private readonly pages = new Map<string, string>();
  private readonly changed = new EventEmitter<Uri>();
  private readonly provider: Disposable;

  constructor(private readonly client: BaseLanguageClient) {
    this.provider = workspace.registerTextDocumentContentProvider(scheme, {
      onDidChange: this.changed.event,
      provideTextDocumentContent: ({ path }) => this.pages.get(path) ?? '',
    });
  }

  async show(): Promise<void> {
    const editor = formulaEditor();
    if (!editor) return;
    const { uri } = editor.document;
    const oldText = await committed(uri);
    if ('problem' in oldText) {
      void window.showInformationMessage(oldText.problem);
      return;
    }
    const params = { old: uri.toString(), new: uri.toString(), oldText: oldText.text };
    const answer = await ask<CompareAnswer>(this.client, compareRequest, params);
    if (!answer) return;
    const page = Uri.from({ scheme, path: `${uri.path}.md` });
    this.pages.set(page.path, answer.markdown);
    this.changed.fire(page);
    await commands.executeCommand('markdown.showPreviewToSide', page);
  }

  dispose(): void {
    this.provider.dispose();
    this.changed.dispose();
  }
}

async function committed(uri: Uri): Promise<{ readonly text: string } | { readonly problem: string }> {
  const git = await extensions.getExtension<Git>('vscode.git')?.activate();
  const repository = git?.getAPI(1).getRepository(uri);
  if (!repository) return { problem: 'This file lies in no folder that git keeps, so there is no commit to compare with.' };
  try {
    return { text: await repository.show('HEAD', uri.fsPath) };
  } catch {
    return { problem: 'This file is not in the last commit yet, so there is nothing to compare it with.' };
  }
}
