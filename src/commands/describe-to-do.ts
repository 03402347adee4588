/** What there is to do for whoever publishes, as text for a terminal. Pages say of it what concerns a reader. */
import type { Changes } from '../ledger/compare.ts';
import type { Bench } from '../model/bench.ts';
import { plural } from '../register/provenance.ts';
import type { Finding, Severity } from '../register/register.ts';

/** Findings that say the same, with everything of which they say it. */
export interface AlikeFindings extends Pick<Finding, 'severity' | 'message' | 'hint'> {
  /** `skelby-uhd25-a`; `vennick-q4, balcony`. */
  readonly where: readonly string[];
}

const WEIGHT: Readonly<Record<Severity, number>> = { warning: 0, caution: 1, note: 2 };

/** The gravest first. */
export function alikeFindings(findings: readonly Finding[]): readonly AlikeFindings[] {
  const sorted = findings.toSorted((a, b) => WEIGHT[a.severity] - WEIGHT[b.severity]);
  return [...Map.groupBy(sorted, ({ message, hint }) => `${message} ${hint}`).values()].flatMap((same) =>
    same.slice(0, 1).map(({ severity, message, hint }) => ({
      severity,
      message,
      hint,
      where: same.map(({ where }) => Object.values(where).join(', ')),
    })),
  );
}

export interface ToDo {
  readonly bench: Pick<Bench, 'planned' | 'plannedPairs' | 'drafts'>;
  readonly findings: readonly Finding[];
  readonly changes: Pick<Changes, 'moved' | 'gone' | 'added'>;
  /** Paths of pictures and clips that no text shows. */
  readonly unshown: readonly string[];
}

/**
 * Everything, or what concerns these ids: a finding of one of them, a planned session of that name or body, a draft.
 * Says so where there is nothing.
 */
export function describeToDo({ bench, findings, changes, unshown }: ToDo, ids: readonly string[] = []): string {
  const concerns = (...names: readonly string[]): boolean =>
    ids.length === 0 || names.some((name) => ids.some((id) => name === id || name.includes(`/${id}.`)));
  const found = alikeFindings(findings.filter(({ where }) => concerns(...Object.values(where))));
  const planned = bench.planned.filter(({ id, body, rig }) => concerns(id, body, rig)).map(({ id }) => id);
  const pairs = bench.plannedPairs
    .filter(({ id, display, against }) => concerns(id, display, against))
    .map(({ id }) => id);
  const drafts = (bench.drafts ?? []).filter((id) => concerns(id));
  const pictures = unshown.filter((path) => concerns(path));
  const blocks = [
    ...found.map(
      ({ severity, where, message, hint }) => `${SAID[severity]}  ${where.join('; ')}\n  ${message}\n  → ${hint}`,
    ),
    list(`${plural(planned.length, 'session')} to measure, planned already:`, planned),
    list(`${plural(pairs.length, 'comparison')} of two displays to make, planned already:`, pairs),
    list(`${plural(drafts.length, 'draft')} to finish: take draft: true out of the front matter.`, drafts),
    list(`${plural(pictures.length, 'picture')} that no text shows: show or remove.`, pictures),
    ids.length === 0 ? describeUnrecorded(changes) : '',
  ].filter((block) => block !== '');
  return blocks.length === 0 ? 'Nothing to do.' : blocks.join('\n\n');
}

const SAID: Readonly<Record<Severity, string>> = { warning: 'Warning', caution: 'Caution', note: 'Note   ' };

function list(heading: string, names: readonly string[]): string {
  return names.length === 0 ? '' : [heading, ...names.map((name) => `  ${name}`)].join('\n');
}

function describeUnrecorded({ moved, gone, added }: ToDo['changes']): string {
  const all = [
    [moved.length, 'moved'],
    [gone.length, 'gone'],
    [added.length, 'new'],
  ] as const;
  const counts = all.filter(([count]) => count > 0).map(([count, what]) => `${count} ${what}`);
  if (counts.length === 0) return '';
  return `Not recorded yet: ${counts.join(', ')}. See what: npm run build. Then npm run record, with the reason.`;
}
