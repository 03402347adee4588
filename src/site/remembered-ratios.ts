/** Ratios that were computed before: while the program runs, and on disk from one run to the next, all in one file. */
import { estimateRatios, type NoRatio, type Ratio, type RatiosAsked } from '../analysis/ratio.ts';
import { nameOf, Store } from '../memory/memory.ts';

/** By the digest of the two values, with all that is known of their errors, and of the level. */
type Known = ReadonlyMap<string, Ratio | NoRatio>;

export class RememberedRatios {
  readonly #store = new Store('ratios', ['src/analysis', 'src/model']);
  #known: Known | undefined;
  #used = new Map<string, Ratio | NoRatio>();
  readonly #compute: typeof estimateRatios;

  constructor(compute = estimateRatios) {
    this.#compute = compute;
  }

  readonly recall = ({ values, pairs, level }: RatiosAsked): readonly (Ratio | NoRatio)[] => {
    this.#known ??= this.#restored();
    const known = this.#known;
    const digests = values.map((value) => nameOf('', value));
    return pairs.flatMap((pair) => {
      const name = nameOf(String(level), [digests[pair[0]], digests[pair[1]]]);
      const found = known.get(name) ?? this.#used.get(name) ?? this.#compute({ values, pairs: [pair], level })[0];
      if (found === undefined) return [];
      this.#used.set(name, found);
      return [found];
    });
  };

  /** Keeps what was asked for since this was last called, and forgets the rest. */
  keepUsed(): void {
    const [known, used] = [this.#known ?? new Map(), this.#used];
    if (used.size !== known.size || [...used.keys()].some((name) => !known.has(name)))
      this.#store.put(this.#name, used);
    this.#known = used;
    this.#used = new Map();
  }

  get #name(): string {
    return this.#store.nameOf('all');
  }

  #restored(): Known {
    const kept = this.#store.get(this.#name);
    return kept instanceof Map ? kept : new Map();
  }
}
