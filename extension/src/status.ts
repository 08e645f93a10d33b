/** The status item: what the formula under the cursor makes, and how many faults its file has. */
import { type StatusAnswer, statusRequest } from 'nappe-server/protocol';
import { DiagnosticSeverity, Disposable, languages, StatusBarAlignment, window, workspace } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { placeOf } from './ask.ts';

/** Milliseconds after the last keystroke or move. */
const quiet = 150;

export class Status implements Disposable {
  private readonly item = window.createStatusBarItem('nappe.status', StatusBarAlignment.Left, 10);
  private readonly listeners: Disposable;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly client: BaseLanguageClient) {
    this.item.name = 'Nappe';
    this.item.command = 'nappe.openCard';
    const soon = () => {
      clearTimeout(this.timer);
      this.timer = setTimeout(() => void this.update(), quiet);
    };
    this.listeners = Disposable.from(
      window.onDidChangeActiveTextEditor(soon),
      window.onDidChangeTextEditorSelection(soon),
      workspace.onDidChangeTextDocument(soon),
      languages.onDidChangeDiagnostics(soon),
    );
    soon();
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.listeners.dispose();
    this.item.dispose();
  }

  private async update(): Promise<void> {
    const editor = window.activeTextEditor;
    if (editor?.document.languageId !== 'nappe') {
      this.item.hide();
      return;
    }
    const answer = await this.client.sendRequest<StatusAnswer | null>(statusRequest, placeOf(editor));
    if (window.activeTextEditor !== editor) return;
    const own = languages.getDiagnostics(editor.document.uri).filter(({ source }) => source === 'nappe');
    const errors = own.filter(({ severity }) => severity === DiagnosticSeverity.Error).length;
    const warnings = own.filter(({ severity }) => severity === DiagnosticSeverity.Warning).length;
    const faults = [counted(errors, 'error'), counted(warnings, 'warning')].filter((words) => words !== '').join(', ');
    const mark = errors > 0 ? '$(error)' : warnings > 0 ? '$(warning)' : '$(check)';
    this.item.text = [`${mark} ${answer?.makes || 'Nappe'}`, faults].filter((part) => part !== '').join(' · ');
    this.item.tooltip = `${answer?.formula ?? 'No formula here'}: ${faults || 'nothing wrong found'}. Opens the card.`;
    this.item.show();
  }
}

const counted = (count: number, noun: string): string => (count === 0 ? '' : `${count} ${noun}${count === 1 ? '' : 's'}`);
