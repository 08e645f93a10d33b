/** The cards that are open beside their texts: one a file, redrawn when the server says that it is stale. */
import { type CardChangedParams, cardChanged } from 'nappe-server/protocol';
import { commands, Disposable, Uri, ViewColumn, type WebviewPanel, window } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { formulaEditor } from '../ask.ts';
import { CardPanel } from './card-panel.ts';
import type { Kept, Wish } from './messages.ts';

export class Cards implements Disposable {
  private readonly byUri = new Map<string, CardPanel>();
  private readonly listeners: Disposable;
  private latest: CardPanel | null = null;

  constructor(
    private readonly extension: Uri,
    private readonly client: BaseLanguageClient,
    started: Promise<void>,
  ) {
    this.listeners = Disposable.from(
      client.onNotification(cardChanged, ({ uris }: CardChangedParams) => {
        for (const uri of uris) this.byUri.get(Uri.parse(uri).toString())?.redrawSoon();
      }),
      window.onDidChangeTextEditorSelection(({ textEditor }) => this.byUri.get(textEditor.document.uri.toString())?.mark()),
      window.registerWebviewPanelSerializer('nappe.card', {
        deserializeWebviewPanel: async (panel: WebviewPanel, kept: Kept | undefined) => {
          await started;
          if (kept) this.adopt(panel, kept.uri, kept.wish);
          else panel.dispose();
        },
      }),
    );
  }

  /** The card of the formula under the cursor, or of the one a lens stands over. */
  open(where?: { readonly uri: string; readonly formula: string }): void {
    const editor = where ? null : formulaEditor();
    const uri = where ? Uri.parse(where.uri).toString() : editor?.document.uri.toString();
    if (uri === undefined) return;
    const at: Wish | { readonly line: number } = where
      ? { formula: where.formula }
      : { line: editor?.selection.active.line ?? 0 };
    const known = this.byUri.get(uri);
    if (known) {
      known.reveal(at);
      return;
    }
    const panel = window.createWebviewPanel('nappe.card', 'Card', { viewColumn: ViewColumn.Beside, preserveFocus: true });
    this.adopt(panel, uri, at);
  }

  async export(): Promise<void> {
    await this.latest?.save();
  }

  dispose(): void {
    this.listeners.dispose();
    for (const card of [...this.byUri.values()]) card.dispose();
  }

  private adopt(panel: WebviewPanel, uri: string, wish: Wish | { readonly line: number }): void {
    const card = new CardPanel(panel, this.extension, this.client, uri, wish);
    this.byUri.set(uri, card);
    this.front(card);
    panel.onDidChangeViewState(() => panel.active && this.front(card));
    panel.onDidDispose(() => {
      this.byUri.delete(uri);
      if (this.latest === card) this.front([...this.byUri.values()].at(-1) ?? null);
    });
  }

  private front(card: CardPanel | null): void {
    this.latest = card;
    void commands.executeCommand('setContext', 'nappe.cardOpen', card !== null);
  }
}
