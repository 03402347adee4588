/**
 * Names for the sessions of a table or chart: each says what sets it apart, and what they share is said once.
 *
 * A trait that all have in common is shared. One that most have is shared too, "unless stated", and said
 * only of those that depart from it. One without such a majority is said of every session.
 */
import type { Bench, Session } from '../model/bench.ts';
import { lookup } from './lookup.ts';
import { traitsOf, type Trait } from './traits.ts';

export interface Labels {
  /** By session id. */
  readonly of: ReadonlyMap<string, string>;
  /** What they share, as one or two sentences. Empty for a single session. */
  readonly shared: string;
}

interface Column {
  /** The commonest trait of the column. */
  readonly common: Trait;
  /** Share of the sessions that have it. */
  readonly share: number;
  /** Whether it goes without saying in a row that has it. */
  readonly silent: boolean;
}

export function labelSessions(bench: Bench, sessions: readonly Session[]): Labels {
  const find = lookup(bench);
  const rows = sessions.map((session) => traitsOf(session, bench, find));
  const [only] = rows;
  if (only !== undefined && rows.length === 1) {
    return { of: new Map([[sessions[0]?.id ?? '', join(only.filter(({ role }) => role === 'name'))]]), shared: '' };
  }
  const columns = (only ?? []).map((_, index) => columnOf(rows.flatMap((row) => row[index] ?? [])));
  const distinct = (row: readonly Trait[]): readonly Trait[] =>
    row.filter(({ key, role }, index) => role !== 'last-resort' && !(columns[index]?.silent === true && columns[index].common.key === key));
  const labels = tellApart(rows.map((row) => ({ row, label: join(distinct(row)) })));
  return { of: new Map(sessions.map(({ id }, index) => [id, labels[index] ?? id])), shared: describeShared(columns) };
}

/** `Orrin V2, 23.976 frames/s`. */
export function sessionTitle(bench: Bench, session: Session): string {
  return labelSessions(bench, [session]).of.get(session.id) ?? session.id;
}

function columnOf(traits: readonly Trait[]): Column {
  const groups = [...Map.groupBy(traits, ({ key }) => key).values()].sort((a, b) => b.length - a.length);
  const [largest = []] = groups;
  const [common = { key: '', short: '', full: '', role: 'last-resort' } satisfies Trait] = largest;
  const share = largest.length / traits.length;
  return { common, share, silent: share === 1 || (common.role === 'setting' && share > 0.5) };
}

function describeShared(columns: readonly Column[]): string {
  const list = (test: (column: Column) => boolean): string =>
    columns
      .filter((column) => column.silent && column.common.role !== 'last-resort' && column.common.full !== '' && test(column))
      .map(({ common }) => common.full)
      .join('; ');
  const sentences = [list(({ share }) => share === 1), list(({ share }) => share < 1)];
  return sentences
    .map((sentence, index) => (sentence === '' ? '' : `${capitalize(index === 1 ? `unless stated: ${sentence}` : sentence)}.`))
    .filter(Boolean)
    .join(' ');
}

/** Adds what was left out as a last resort (date, then id) to rows that would carry the same label. */
function tellApart(rows: readonly { row: readonly Trait[]; label: string }[]): readonly string[] {
  const depth = Math.max(0, ...rows.map(({ row }) => row.filter(({ role }) => role === 'last-resort').length));
  let labels = rows.map(({ label }) => label);
  for (let used = 1; used <= depth; used += 1) {
    const counts = Map.groupBy(labels, (label) => label);
    labels = labels.map((label, index) => {
      if (label !== '' && counts.get(label)?.length === 1) return label;
      const extra = rows[index]?.row.filter(({ role }) => role === 'last-resort')[used - 1];
      return [label, extra?.short].filter(Boolean).join(', ');
    });
  }
  return labels;
}

function join(traits: readonly Trait[]): string {
  return capitalize(traits.map(({ short }) => short).filter((short) => short !== '').join(', '));
}

function capitalize(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
