/** The comparisons that write-ups ask for: one family each, so that a report's verdicts hold together. */
import { parseDurationMs } from '../ingest/quantities.ts';
import type { Bench, Part, WriteUp } from '../model/bench.ts';
import { pairOf } from './claims/claim.ts';
import { differenceId, pairOfId, type Family, type SessionPair } from '../register/comparisons/family.ts';
import { selectPairs, type PairQuery } from '../register/comparisons/select-pairs.ts';

/** Id of the family of a report or method note. */
export function writeUpFamilyId(folder: 'reports' | 'method', id: string): string {
  return `${folder === 'reports' ? 'report' : 'method'}-${id}`;
}

/** Only what can be asked for: a misspelt session or a margin that is none is reported by the check of write-ups. */
export function askedFamilies(bench: Bench, families: readonly Family[]): readonly Family[] {
  const sessions = new Set(bench.sessions.map(({ id }) => id));
  const of = (folder: 'reports' | 'method', { id, title, parts }: WriteUp): readonly Family[] => {
    const pairs = distinct(
      parts
        .flatMap((part) => pairsOf(part, families, bench))
        .filter(({ a, b }) => a !== b && sessions.has(a) && sessions.has(b)),
    );
    if (pairs.length === 0) return [];
    const family = writeUpFamilyId(folder, id);
    return [
      {
        id: family,
        of: { [folder === 'reports' ? 'report' : 'method']: id },
        group: family,
        groupTitle: `Compared in “${title}”`,
        inWords: `all that “${title}” asks for`,
        pairs,
      },
    ];
  };
  return [
    ...bench.reports.flatMap((report) => of('reports', report)),
    ...bench.methods.flatMap((method) => of('method', method)),
  ];
}

function pairsOf({ name, attributes }: Part, families: readonly Family[], bench: Bench): readonly SessionPair[] {
  const value = (key: string): unknown => {
    const attribute = attributes[key];
    return attribute?.known === true ? attribute.value : undefined;
  };
  const text = (key: string): string | undefined => (typeof value(key) === 'string' ? String(value(key)) : undefined);
  switch (name) {
    case 'Difference':
    case 'Ratio':
    case 'Verdict': {
      const [a, b] = [text('of'), text('than')];
      return a === undefined || b === undefined ? [] : [withMargin({ a, b }, text('margin'))];
    }
    case 'DifferenceTable':
    case 'DifferenceChart': {
      const query: PairQuery = {
        pairs: value('pairs') as PairQuery['pairs'],
        setting: text('setting'),
        body: text('body'),
        rig: text('rig'),
        where: value('where') as PairQuery['where'],
      };
      return selectPairs(bench, families, query).map((pair) => withMargin(pair, text('margin')));
    }
    case 'Figure':
    case 'FigureTable':
    case 'FigureChart':
      return [value('id'), value('ids')].flat().flatMap((id) => pairOfId(String(id)) ?? []);
    case 'Claim': {
      const pair = pairOf({
        of: text('of') ?? '',
        ...(text('than') === undefined ? {} : { than: String(text('than')) }),
      });
      return pair === undefined ? [] : [withMargin(pair, text('margin'))];
    }
    default:
      return [];
  }
}

/** A pair with the margin an author wrote; without one where it is none. */
export function withMargin(pair: SessionPair, margin: string | undefined): SessionPair {
  const marginMs = margin === undefined ? undefined : parseDurationMs(margin);
  return marginMs === undefined || marginMs === 0 ? pair : { ...pair, marginMs };
}

/** Each comparison once; one that is asked with a margin somewhere is not asked again without. */
function distinct(pairs: readonly SessionPair[]): readonly SessionPair[] {
  const stated = new Set(pairs.filter(({ marginMs }) => marginMs !== undefined).map(differenceId));
  const byQuestion = new Map<string, SessionPair>();
  for (const pair of pairs) {
    if (pair.marginMs === undefined && stated.has(differenceId(pair))) continue;
    const key = `${differenceId(pair)} ${pair.marginMs ?? ''}`;
    if (!byQuestion.has(key)) byQuestion.set(key, pair);
  }
  return [...byQuestion.values()];
}
