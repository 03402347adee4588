/** Which pages were last sent before a file changed, and so may show what is no longer true. */
export class StalePages {
  #changes = 0;
  /** How many changes there had been when a page was last asked for, by address. */
  readonly #servedAt = new Map<string, number>();

  change(): void {
    this.#changes += 1;
  }

  serve(address: string): void {
    this.#servedAt.set(address, this.#changes);
  }

  /** Whether there are any; they are taken to be told. */
  takeStale(): boolean {
    const stale = [...this.#servedAt].filter(([, at]) => at < this.#changes);
    for (const [address] of stale) this.#servedAt.delete(address);
    return stale.length > 0;
  }
}
