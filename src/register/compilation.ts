import type { BudgetedValue } from '../analysis/components.ts';
import type { Bench } from '../model/bench.ts';
import { lookup, type Lookup } from './lookup.ts';
import type { Figure, Finding } from './register.ts';
import { compileSession, type Estimator, type SessionFigures } from './session-figures.ts';

/** A bench whose sessions are estimated: what every further comparison starts from. */
export interface Compilation {
  readonly bench: Bench;
  readonly find: Lookup;
  /** In the order of the bench. */
  readonly sessions: readonly SessionFigures[];
  session(id: string): SessionFigures;
  /** A session's total with its named components; those that sessions have in common carry the same key. */
  budgetOf(id: string): BudgetedValue;
}

/** What one kind of comparison adds to the register. */
export interface Contribution {
  readonly figures: readonly Figure[];
  readonly findings: readonly Finding[];
}

export function compileSessions(bench: Bench, estimator?: Estimator): Compilation {
  const find = lookup(bench);
  const sessions = bench.sessions.map((session) => compileSession(session, find, estimator));
  const byId = new Map(sessions.map((compiled) => [compiled.session.id, compiled]));
  const session = (id: string): SessionFigures => {
    const compiled = byId.get(id);
    if (compiled === undefined) throw new Error(`no session '${id}' on this bench`);
    return compiled;
  };
  return {
    bench,
    find,
    sessions,
    session,
    budgetOf: (id) => {
      const {
        estimate,
        session: { rig },
      } = session(id);
      return {
        value: estimate.value,
        components: estimate.components.map((component) => ({
          ...component,
          sharedKey: component.sharedKey === null ? null : `${component.sharedKey}:${rig}`,
        })),
      };
    },
  };
}
