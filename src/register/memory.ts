/**
 * Results of a pure function that were computed before, by what they were computed from: plain data, as JSON.
 *
 * While files are being edited, all sessions but one are as they were, and estimating is most of the work.
 */
export class Memory<Input, Result> {
  readonly #compute: (input: Input) => Result;
  readonly #known = new Map<string, Result>();
  readonly #used = new Set<string>();

  constructor(compute: (input: Input) => Result) {
    this.#compute = compute;
  }

  readonly recall = (input: Input): Result => {
    const key = JSON.stringify(input);
    const result = this.#known.get(key) ?? this.#compute(input);
    this.#known.set(key, result);
    this.#used.add(key);
    return result;
  };

  /** Forgets what nobody has asked for since this was last called. */
  forgetUnused(): void {
    for (const key of this.#known.keys()) if (!this.#used.has(key)) this.#known.delete(key);
    this.#used.clear();
  }
}
