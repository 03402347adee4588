import { differingSettings } from '../../analysis/matched-pairs.ts';
import { pairComponents } from '../../analysis/components.ts';
import type { Level } from '../../analysis/variation.ts';
import type { Session } from '../../model/bench.ts';
import type { Compilation } from '../compilation.ts';
import { sessionTitle } from '../labels.ts';
import type { Lookup } from '../lookup.ts';
import { lowerFirst } from '../traits.ts';
import type { SessionPair } from './family.ts';

/** Of what a comparison speaks, by what the bench knows of other clips and days. */
const SPEAKS_OF: Readonly<Record<Level, string>> = {
  clips: 'It speaks of the clips of these two sessions: how much other days differ, the bench does not state.',
  day: 'It speaks of the days of these two sessions: how much other days differ, the bench does not state.',
  condition: '',
};

/** What is compared, in what the two sessions differ besides, and what becomes of the rig's terms. */
export function describePair(compilation: Compilation, pair: SessionPair): string {
  const { bench, session } = compilation;
  const [a, b] = [session(pair.a).session, session(pair.b).session];
  const nameOf = (one: Session): string => `${sessionTitle(bench, one)} (${one.id})`;
  return [
    `${nameOf(a)} less ${nameOf(b)}.`,
    describeContext(compilation, a, b),
    describeRigTerms(compilation, pair, a, b),
    SPEAKS_OF[session(pair.a).estimate.speaksOf],
  ]
    .filter(Boolean)
    .join(' ');
}

/** In what the conditions of two sessions differ, in words: `stabiliser (On, Off)`. */
export function describeDiffering(find: Lookup, a: Session, b: Session): readonly string[] {
  const settings = differingSettings(a.settings, b.settings).map((id) => {
    const level = ({ settings }: Session): string =>
      settings[id] === undefined ? 'not stated' : find.level(id, settings[id]);
    return `${lowerFirst(find.setting(id).label)} (${level(a)}, ${level(b)})`;
  });
  const links = ({ links: ids }: Session): string => ids.map((id) => find.link(id).name).join(' and ') || 'no link';
  return [
    ...settings,
    ...(a.body === b.body && a.firmware !== b.firmware
      ? [`firmware (${a.firmware ?? 'not stated'}, ${b.firmware ?? 'not stated'})`]
      : []),
    ...(a.links.join() === b.links.join() ? [] : [`links (${links(a)}, ${links(b)})`]),
    ...(a.display === b.display ? [] : [`display (${find.display(a.display).name}, ${find.display(b.display).name})`]),
    ...(a.method === b.method ? [] : [`way of reading (${a.method}, ${b.method})`]),
  ];
}

function describeContext({ find }: Compilation, a: Session, b: Session): string {
  const differing = describeDiffering(find, a, b);
  const [only] = differing;
  if (only === undefined) return a.body === b.body ? 'Both are in one condition.' : 'Both are in the same condition.';
  return differing.length === 1
    ? `The two differ in ${only}.`
    : `The two differ in ${listWords(differing)}, so the figure is of all of these together.`;
}

function describeRigTerms({ budgetOf, find }: Compilation, pair: SessionPair, a: Session, b: Session): string {
  if (a.rig !== b.rig) {
    return `They were taken on different rigs (${find.rig(a.rig).name}, ${find.rig(b.rig).name}): the uncertain terms of both rigs are kept, and the displays’ own delays are part of the figure.`;
  }
  const { shared } = pairComponents(budgetOf(pair.a), budgetOf(pair.b));
  const equal = shared
    .filter((both) => both.a.standardUncertainty > 0 && both.a.standardUncertainty === both.b.standardUncertainty)
    .map((both) => both.a.name);
  return equal.length === 0
    ? 'Both were taken on one rig, so what the rig adds cancels.'
    : `Both were taken on one rig, so its terms cancel: ${listWords(equal)}.`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listWords(words: readonly string[], joint: 'and' | 'or' = 'and'): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} ${joint} ${last}`;
}
