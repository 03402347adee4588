import type { Bench } from '../model/bench.ts';
import type { Compilation } from './compilation.ts';
import type { Lookup } from './lookup.ts';
import type { ConfigurationLaw } from './rate-law/rate-laws.ts';
import type { Figure, Finding, Register } from './register.ts';

/** A bench with all that was computed from it, indexed once: what everything that is printed is taken from. */
export interface Published {
  readonly bench: Bench;
  readonly register: Register;
  readonly find: Lookup;
  /** Every configuration with its rate law, in bench order. */
  readonly laws: readonly ConfigurationLaw[];
  /** The figure with this id; undefined when there is none. */
  figure(id: string): Figure | undefined;
  /** Every figure of one session alone, in the order of the register. */
  figuresOf(session: string): readonly Figure[];
  findingsOf(key: string, id: string): readonly Finding[];
}

export function publish(
  { bench, find }: Compilation,
  register: Register,
  laws: readonly ConfigurationLaw[],
): Published {
  const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
  const bySession = Map.groupBy(
    register.figures.filter(({ of }) => of['than'] === undefined),
    ({ of }) => of['session'],
  );
  return {
    bench,
    register,
    find,
    laws,
    figure: (id) => byId.get(id),
    figuresOf: (session) => bySession.get(session) ?? [],
    findingsOf: (key, id) => register.findings.filter(({ where }) => where[key] === id),
  };
}
