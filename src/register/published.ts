import type { Bench } from '../model/bench.ts';
import { lookup, type Lookup } from './lookup.ts';
import type { Figure, Finding, Register } from './register.ts';

/** A bench with its register, indexed once: what everything that is printed is taken from. */
export interface Published {
  readonly bench: Bench;
  readonly register: Register;
  readonly find: Lookup;
  /** The figure with this id; undefined when there is none. */
  figure(id: string): Figure | undefined;
  /** Every figure of one session alone, in the order of the register. */
  figuresOf(session: string): readonly Figure[];
  findingsOf(key: string, id: string): readonly Finding[];
}

export function publish(bench: Bench, register: Register): Published {
  const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
  const bySession = Map.groupBy(
    register.figures.filter(({ of }) => of['than'] === undefined),
    ({ of }) => of['session'],
  );
  return {
    bench,
    register,
    find: lookup(bench),
    figure: (id) => byId.get(id),
    figuresOf: (session) => bySession.get(session) ?? [],
    findingsOf: (key, id) => register.findings.filter(({ where }) => where[key] === id),
  };
}
