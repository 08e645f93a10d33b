/** The semantic tokens last given for each file, for the next difference. */
export class TokenMemory {
  private readonly last = new Map<string, { readonly id: string; readonly data: readonly number[] }>();
  private count = 0;

  /** Gives the new answer's id. */
  keep(path: string, data: readonly number[]): string {
    this.count += 1;
    const id = String(this.count);
    this.last.set(path, { id, data });
    return id;
  }

  /** Null where another answer was given since. */
  get(path: string, id: string): readonly number[] | null {
    const known = this.last.get(path);
    return known?.id === id ? known.data : null;
  }

  drop(path: string): void {
    this.last.delete(path);
  }
}
