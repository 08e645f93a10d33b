/** One card beside its text: asks the server for it, hands it to the page, and leads between steps and lines. */
import { type CardAnswer, type CardParams, cardRequest, type Problem } from 'nappe-server/protocol';
import { Selection, TextEditorRevealType, Uri, ViewColumn, type WebviewPanel, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import type { FromPage, ToPage, Wish } from './messages.ts';
import { pageHtml } from './page-html.ts';
import { saveCard } from './save.ts';

/** Milliseconds between keystrokes that are drawn as one. */
const quiet = 60;

export class CardPanel {
  private wish: Wish;
  /** Until the first answer says which formula it stands in. */
  private line: number | undefined;
  private answer: CardAnswer | null = null;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private asked = 0;

  constructor(
    private readonly panel: WebviewPanel,
    extension: Uri,
    private readonly client: BaseLanguageClient,
    private readonly uri: string,
    at: Wish | { readonly line: number },
  ) {
    this.line = 'line' in at ? at.line : undefined;
    this.wish = 'line' in at ? {} : at;
    const { webview } = panel;
    webview.options = { enableScripts: true, enableForms: true, localResourceRoots: [Uri.joinPath(extension, 'dist')] };
    webview.onDidReceiveMessage((message: FromPage) => this.take(message));
    webview.html = pageHtml(webview, extension);
    panel.iconPath = Uri.joinPath(extension, 'images', 'file.svg');
    panel.onDidDispose(() => clearTimeout(this.timer));
  }

  reveal(at: Wish | { readonly line: number }): void {
    this.line = 'line' in at ? at.line : undefined;
    this.wish = { ...this.wish, ...('line' in at ? {} : at) };
    if ('line' in at) this.wish = without(this.wish, 'formula');
    this.panel.reveal(undefined, true);
    this.redrawSoon();
  }

  redrawSoon(): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.redraw(), quiet);
  }

  /** Marks the steps that stand where the cursor is; a note belongs to the step above it. */
  mark(): void {
    const editor = window.visibleTextEditors.find(({ document }) => document.uri.toString() === this.uri);
    if (!editor || !this.answer) return;
    let { line } = editor.selection.active;
    while (line > 0 && editor.document.lineAt(line).text.trimStart().startsWith('|')) line -= 1;
    const steps = this.answer.steps.filter((step) => step.line === line && Uri.parse(step.uri).toString() === this.uri);
    this.tell({ type: 'mark', steps: steps.map(({ number }) => number) });
  }

  async save(): Promise<void> {
    const answer = await this.ask({ markdown: true });
    if (!('problem' in answer)) await saveCard(answer, this.uri);
    else void window.showWarningMessage(answer.problem);
  }

  dispose(): void {
    this.panel.dispose();
  }

  private async redraw(): Promise<void> {
    this.asked += 1;
    const own = this.asked;
    const answer = await this.ask({});
    if (own !== this.asked) return;
    if ('problem' in answer) {
      this.tell({ type: 'problem', problem: answer.problem });
      return;
    }
    this.answer = answer;
    this.line = undefined;
    this.wish = { ...this.wish, formula: answer.formula };
    this.panel.title = `Card: ${answer.formula}`;
    const { units = setting('card.units', 'metric'), language = setting('card.language', 'en') } = this.wish;
    const { html, formula, formulas, choices, makes, languages } = answer;
    const card = { html, formula, formulas, choices, makes, languages, units, language };
    this.tell({ type: 'card', uri: this.uri, wish: this.wish, card });
    this.mark();
  }

  private async ask(more: Partial<CardParams>): Promise<CardAnswer | Problem> {
    const { choices, ...wish } = this.wish;
    const params: CardParams = {
      uri: this.uri,
      ...wish,
      ...(choices && { choices: Object.values(choices) }),
      ...(this.line !== undefined && { line: this.line }),
      ...more,
    };
    const answer = await this.client.sendRequest<CardAnswer | Problem | null>(cardRequest, params);
    return answer ?? { problem: 'The card could not be made.' };
  }

  private async take(message: FromPage): Promise<void> {
    if (message.type === 'ready') this.redrawSoon();
    else if (message.type === 'save') await this.save();
    else if (message.type === 'go') await this.go(message.step);
    else {
      this.wish = message.wish;
      this.redrawSoon();
    }
  }

  /** To the line of a step, in the editor that shows its file where there is one. */
  private async go(number: number): Promise<void> {
    const step = this.answer?.steps.find((one) => one.number === number);
    if (!step) return;
    const uri = Uri.parse(step.uri);
    const shown = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    const document = await workspace.openTextDocument(uri);
    const editor = await window.showTextDocument(document, { viewColumn: shown?.viewColumn ?? ViewColumn.One });
    const at = editor.document.lineAt(Math.min(step.line, document.lineCount - 1));
    editor.selection = new Selection(
      at.lineNumber,
      at.firstNonWhitespaceCharacterIndex,
      at.lineNumber,
      at.firstNonWhitespaceCharacterIndex,
    );
    editor.revealRange(at.range, TextEditorRevealType.InCenterIfOutsideViewport);
  }

  private tell(message: ToPage): void {
    void this.panel.webview.postMessage(message);
  }
}

const setting = <T>(name: string, otherwise: T): T => workspace.getConfiguration('nappe').get(name, otherwise);

function without(wish: Wish, key: keyof Wish): Wish {
  const { [key]: _, ...rest } = wish;
  return rest;
}
