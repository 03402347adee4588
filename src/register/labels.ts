/**
 * Names for the sessions of a table or chart: each says what sets it apart, and what they share is said once.
 *
 * A trait that all have in common is shared. One that most have is shared too, "unless stated", and said
 * only of those that depart from it. One without such a majority is said of every session.
 */
import type { Bench, Session } from '../model/bench.ts';
import { once } from '../model/once.ts';
import { capitalize } from './text.ts';
import { traitsOf, type Trait } from './traits.ts';

export interface Labels {
  /** By session id. */
  readonly of: ReadonlyMap<string, string>;
  /** What they share, as one or two sentences. Empty for a single session. */
  readonly shared: string;
}

export interface Column {
  /** The commonest trait of the column. */
  readonly common: Trait;
  /** Share of the sessions that have it. */
  readonly share: number;
}

export function labelSessions(bench: Bench, sessions: readonly Session[]): Labels {
  const rows = sessions.map((session) => traitsOf(session, bench));
  const [only] = rows;
  if (only !== undefined && rows.length === 1) {
    return { of: new Map([[sessions[0]?.id ?? '', join(only.filter(({ role }) => role === 'name'))]]), shared: '' };
  }
  const columns = columnsOf(rows);
  const ofBody = new Map([...Map.groupBy(rows, bodyOf)].map(([body, same]) => [body, columnsOf(same)]));
  const goesWithoutSaying =
    (row: readonly Trait[]) =>
    ({ key, role }: Trait, index: number): boolean => {
      const column = (role === 'body-setting' ? ofBody.get(bodyOf(row)) : columns)?.[index];
      return role === 'last-resort' || (column !== undefined && isSilent(column) && column.common.key === key);
    };
  const labels = rows.map((row) => {
    const silent = goesWithoutSaying(row);
    return join(row.filter((trait, index) => !silent(trait, index)));
  });
  const told = tellApart(labels, rows);
  return { of: new Map(sessions.map(({ id }, index) => [id, told[index] ?? id])), shared: describeShared(columns) };
}

/** By id, what sets each session apart from all others of the bench. */
export const namesOfSessions = once(
  (bench: Bench): ReadonlyMap<string, string> => labelSessions(bench, bench.sessions).of,
);

/** Names for the conditions of these sessions, whatever their bodies: rate and settings only. */
export function labelSettings(bench: Bench, sessions: readonly Session[]): Labels {
  const rows = sessions.map((session) => traitsOf(session, bench).slice(1, 1 + bench.settings.length));
  const columns = columnsOf(rows);
  const labels = rows.map((row) =>
    join(
      row.filter(
        ({ key, role }, index) =>
          role === 'name' ||
          columns[index] === undefined ||
          !isSilent(columns[index]) ||
          columns[index].common.key !== key,
      ),
    ),
  );
  return {
    of: new Map(sessions.map(({ id }, index) => [id, labels[index] ?? id])),
    shared: describeShared(columns.filter(({ share, common }) => share < 1 || common.role !== 'name')),
  };
}

/** `Vennick Q4, 25 frames/s`. */
export function sessionTitle(bench: Bench, session: Session): string {
  const titles = titlesOn(bench);
  const title = titles.get(session) ?? labelSessions(bench, [session]).of.get(session.id) ?? session.id;
  titles.set(session, title);
  return title;
}

/** Those that were asked for: most pages name sessions, and the same ones. */
const titlesOn = once((_bench: Bench) => new WeakMap<Session, string>());

/** The first trait of a row is its body. */
function bodyOf([body]: readonly Trait[]): string {
  return body?.key ?? '';
}

export function columnsOf(rows: readonly (readonly Trait[])[]): readonly Column[] {
  return (rows[0] ?? []).map((first, index) => {
    const groups = [...Map.groupBy(rows, (row) => row[index]?.key).values()].sort((a, b) => b.length - a.length);
    const [largest = []] = groups;
    return { common: largest[0]?.[index] ?? first, share: largest.length / rows.length };
  });
}

/** Whether the commonest trait of a column goes without saying in the rows that have it. */
export function isSilent({ common, share }: Column): boolean {
  return share === 1 || (common.role !== 'name' && share > 0.5);
}

export function describeShared(columns: readonly Column[]): string {
  const list = (test: (column: Column) => boolean): string =>
    columns
      .filter(
        (column) =>
          isSilent(column) &&
          column.common.full !== '' &&
          (column.share === 1 || column.common.role === 'setting') &&
          test(column),
      )
      .map(({ common }) => common.full)
      .join('; ');
  const sentences = [list(({ share }) => share === 1), list(({ share }) => share < 1)];
  return sentences
    .map((sentence, index) =>
      sentence === '' ? '' : `${capitalize(index === 1 ? `unless stated: ${sentence}` : sentence)}.`,
    )
    .filter(Boolean)
    .join(' ');
}

/** Rows that would carry the same label get the first last resort (date, then id) that differs among all of them. */
function tellApart(labels: readonly string[], rows: readonly (readonly Trait[])[]): readonly string[] {
  const extras = rows.map((row) => row.filter(({ role }) => role === 'last-resort').map(({ short }) => short));
  const groups = Map.groupBy(labels.keys(), (index) => labels[index]);
  return labels.map((label, index) => {
    const group = groups.get(label) ?? [];
    if (label !== '' && group.length === 1) return label;
    const depth = (extras[index] ?? []).findIndex(
      (_, at) => new Set(group.map((other) => extras[other]?.[at])).size === group.length,
    );
    return [label, extras[index]?.[depth]].filter(Boolean).join(', ');
  });
}

function join(traits: readonly Trait[]): string {
  return capitalize(
    traits
      .map(({ short }) => short)
      .filter((short) => short !== '')
      .join(', '),
  );
}
