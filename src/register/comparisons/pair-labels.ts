import type { Bench, Session } from '../../model/bench.ts';
import { columnsOf, describeShared, isSilent, labelSessions } from '../labels.ts';
import { lookup } from '../lookup.ts';
import { describeLevels } from '../level-words.ts';
import { traitsOf, type Trait } from '../traits.ts';
import { conditionKey } from './conditions.ts';
import { differenceId, type SessionPair } from './family.ts';

export interface PairLabel {
  /** Heading under which the row stands: the setting; empty where there is none. */
  readonly group: string;
  /** `Off → On: UHD 3840 × 2160, 25 frames/s`, `Vennick Q4 against Skelby Dome`. */
  readonly row: string;
}

export interface PairLabels {
  of(pair: SessionPair): PairLabel;
  /** What all sessions share, as one or two sentences. */
  readonly shared: string;
}

/**
 * Names for the comparisons of a table or chart: each says what its two sessions differ in, and what sets the pair
 * apart.
 */
export function labelPairs(bench: Bench, pairs: readonly SessionPair[]): PairLabels {
  const find = lookup(bench);
  const sessions = [...new Set(pairs.flatMap(({ a, b }) => [a, b]))].map(find.session);
  const rows = new Map(sessions.map((session) => [session.id, traitsOf(session, bench)]));
  const columns = columnsOf([...rows.values()]);
  const ofBody = new Map(
    [...Map.groupBy(sessions, ({ body }) => body)].map(([body, own]) => [
      body,
      columnsOf(own.flatMap(({ id }) => [rows.get(id) ?? []])),
    ]),
  );
  const names = labelSessions(bench, sessions).of;
  const onlyBodiesDiffer = new Set(sessions.map(conditionKey)).size === 1;
  const nameOf = ({ id, body }: Session): string => (onlyBodiesDiffer ? find.body(body).name : (names.get(id) ?? id));

  const labels = pairs.map((pair): PairLabel => {
    const [a, b] = [find.session(pair.a), find.session(pair.b)];
    if (pair.step === undefined) return { group: '', row: `${nameOf(a)} against ${nameOf(b)}` };
    const { setting, from, to } = pair.step;
    const at = traitIndexOf(bench, setting);
    const told = (rows.get(b.id) ?? []).filter((trait: Trait, index) => {
      const column = (trait.role === 'body-setting' ? ofBody.get(b.body) : columns)?.[index];
      return (
        index !== at && trait.role !== 'last-resort' && !(column && isSilent(column) && column.common.key === trait.key)
      );
    });
    return {
      group: find.setting(setting).label,
      row: [
        describeLevels(find, setting, from, to),
        told
          .map(({ short }) => short)
          .filter(Boolean)
          .join(', '),
      ]
        .filter(Boolean)
        .join(': '),
    };
  });
  const told = labels.map((label, index): readonly [string, PairLabel] => {
    const pair = pairs[index] ?? { a: '', b: '' };
    const same = labels.filter(({ group, row }) => group === label.group && row === label.row).length > 1;
    const days = [...new Set([find.session(pair.a).date, find.session(pair.b).date])].join(' and ');
    return [differenceId(pair), same ? { ...label, row: `${label.row}, ${days}` } : label];
  });
  const byId = new Map(told);
  return {
    of: (pair) => byId.get(differenceId(pair)) ?? { group: '', row: `${pair.a} against ${pair.b}` },
    shared: describeShared(columns),
  };
}

/** Where a setting stands among the traits of a session: the body first, then the rate, then the others as declared. */
function traitIndexOf({ settings }: Bench, setting: string): number {
  return setting === 'rate' ? 1 : 2 + settings.filter(({ id }) => id !== 'rate').findIndex(({ id }) => id === setting);
}
