import type { Bench, Setting, WriteUp } from '../model/bench.ts';
import { ProblemsError, type Problem } from '../model/problem.ts';
import { problemsError } from '../model/problem-text.ts';

/** What a bench holds, by name: known even where some of its files are faulty. */
export interface Inventory {
  readonly bodies: readonly string[];
  readonly rigs: readonly string[];
  readonly sessions: readonly string[];
  readonly displayPairs: readonly string[];
  readonly methods: readonly string[];
  readonly reports: readonly string[];
  /** Empty where `data/settings.yaml` is faulty. */
  readonly settings: readonly Setting[];
  /** Those whose front matter is sound. */
  readonly writeUps: readonly WriteUp[];
}

/** The mistakes of a bench, with what could be found out besides, so that write-ups can be checked all the same. */
export class UnsoundBenchError extends ProblemsError {
  readonly inventory: Inventory;

  constructor(problems: readonly Problem[], inventory: Inventory) {
    const { problems: sorted, message } = problemsError(problems);
    super(sorted, message);
    this.inventory = inventory;
  }
}

/** What a sound bench holds. */
export function inventoryOf(bench: Bench): Inventory {
  const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  return {
    bodies: ids(bench.bodies),
    rigs: ids(bench.rigs),
    sessions: ids(bench.sessions),
    displayPairs: ids(bench.displayPairs),
    methods: ids(bench.methods),
    reports: ids(bench.reports),
    settings: bench.settings,
    writeUps: [...bench.methods, ...bench.reports],
  };
}
