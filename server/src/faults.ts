/** What breaks inside the program: told once each in the client's log, with what to send; everything else goes on. */
import type { Fault } from 'nappe';
import type { Connection } from 'vscode-languageserver';

export class Faults {
  private readonly told = new Set<string>();

  constructor(private readonly connection: Pick<Connection, 'console'>) {}

  /** A part of the server: a feature, the indexing. */
  report(part: string, error: unknown): void {
    this.tell(part, error instanceof Error ? (error.stack ?? error.message) : String(error));
  }

  /** Parts of the checker, as a check gave them. */
  reportAll(faults: readonly Fault[]): void {
    for (const { part, message } of faults) this.tell(part, message);
  }

  private tell(part: string, message: string): void {
    if (this.told.has(part)) return;
    this.told.add(part);
    this.connection.console.error(
      `Something in Nappe itself broke (${part}); everything else goes on. It is told once. Please report it with the formula you were writing and these lines:\n${message}`,
    );
  }
}
