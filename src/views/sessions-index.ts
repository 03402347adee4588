/** Every session, and by what the list of them can be narrowed down. */
import { labelSessions } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { inBenchOrder } from '../register/select.ts';
import { namedSession, type NamedSession } from './named-session.ts';

export interface SessionsFilter {
  /** `body`: part of the ids and classes on the page. */
  readonly id: string;
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly label: string }[];
}

export interface SessionsIndex {
  readonly filters: readonly SessionsFilter[];
  readonly rows: readonly {
    readonly session: NamedSession;
    readonly date: string;
    readonly total: Figure | undefined;
    /** `body-brae rig-attic rate-0`: what it is, option by option. */
    readonly classes: string;
  }[];
}

export function sessionsIndex({ bench, find, figure }: Pick<Published, 'bench' | 'find' | 'figure'>): SessionsIndex {
  const sessions = inBenchOrder(bench, bench.sessions);
  const labels = labelSessions(bench, sessions);
  const rates = find
    .setting('rate')
    .levels.filter(({ id }) => sessions.some(({ settings }) => settings['rate'] === id));
  const rateId = (level: string | undefined): string => String(rates.findIndex(({ id }) => id === level));
  return {
    filters: [
      { id: 'body', label: 'Body', options: used(bench.bodies, ({ id }) => sessions.some(({ body }) => body === id)) },
      { id: 'rig', label: 'Rig', options: used(bench.rigs, ({ id }) => sessions.some(({ rig }) => rig === id)) },
      {
        id: 'rate',
        label: 'Frame rate',
        options: rates.map(({ id, label }) => ({ id: rateId(id), label: `${label} frames/s` })),
      },
    ],
    rows: sessions.map(({ id, date, body, rig, settings }) => ({
      session: namedSession(bench, id, labels.of.get(id)),
      date,
      total: figure(`total/${id}`),
      classes: `body-${body} rig-${rig} rate-${rateId(settings['rate'])}`,
    })),
  };
}

function used<T extends { readonly id: string; readonly name: string }>(
  all: readonly T[],
  isUsed: (one: T) => boolean,
): SessionsFilter['options'] {
  return all.filter(isUsed).map(({ id, name }) => ({ id, label: name }));
}

/** The stylesheet that narrows the list down: a chosen option hides every row that is not of it. */
export function filterRules({ filters }: Pick<SessionsIndex, 'filters'>): string {
  return filters
    .flatMap(({ id, options }) =>
      options.map((option) => {
        const name = `${id}-${option.id}`;
        return `main:has(#filter-${name}:checked) .sessions tbody tr:not(.${name}) { display: none; }`;
      }),
    )
    .join('\n');
}
