/** What was learnt of variation, set against what was stated before, in plain words. */
import { countRepeats, FEWEST_REPEATS } from '../../analysis/learn-variation.ts';
import type { Bench } from '../../model/bench.ts';
import {
  statedOf,
  type StatedLevel,
  type StatedLevels,
  type StatedSizes,
  type VariationStatement,
} from '../../model/variation-statement.ts';
import { plural } from '../provenance.ts';
import { roundTo } from '../text.ts';
import { clipCount } from './session-clips.ts';

const SPEAKS: Readonly<Record<VariationStatement['knows'], string>> = {
  clips: 'of the clips that were read, and of no more',
  day: 'of the day on which a session was measured',
  condition: 'of the condition, whatever the day',
};

export function describeLearnt(learnt: VariationStatement, bench: Bench): string {
  const before = bench.variation;
  const repeats = countRepeats(bench.sessions.map((session) => clipCount(session, bench)));
  const lines = [...Object.entries(learnt.bodies), ['a body without sessions', learnt.others] as const].map(
    ([body, levels]) => describeBody(body, levels, before && statedOf(before, body)),
  );
  return [
    `${plural(bench.sessions.length, 'session')}; ${plural(repeats.clips, 'clip')} repeated on a day, ${plural(repeats.days, 'day')} on which a condition was measured again.`,
    `Figures speak ${SPEAKS[learnt.knows]}${before && before.knows !== learnt.knows ? ` (until now: ${SPEAKS[before.knows]})` : ''}.${wanting(learnt, repeats.days)}`,
    ...(before === undefined ? [] : [describeSessions(learnt, before)]),
    '',
    'Root mean square change, in frames of the body:',
    ...lines,
  ].join('\n');
}

function wanting({ knows }: VariationStatement, days: number): string {
  return knows === 'condition'
    ? ''
    : ` To speak of the condition takes ${FEWEST_REPEATS} repeats on other days; there are ${days}.`;
}

function describeSessions({ sessions, analysis }: VariationStatement, before: VariationStatement): string {
  const ids = Object.keys(sessions);
  const added = ids.filter((id) => before.sessions[id] === undefined);
  const changed = ids.filter((id) => before.sessions[id] !== undefined && before.sessions[id] !== sessions[id]);
  const gone = Object.keys(before.sessions).filter((id) => sessions[id] === undefined);
  const parts = [
    ...(added.length > 0 ? [`new: ${added.join(', ')}`] : []),
    ...(changed.length > 0 ? [`changed: ${changed.join(', ')}`] : []),
    ...(gone.length > 0 ? [`gone: ${gone.join(', ')}`] : []),
    ...(analysis === before.analysis ? [] : [`analysis ${before.analysis} → ${analysis}`]),
    ...(before.stated === undefined ? [] : [`what was stated until now (${before.stated}) is replaced`]),
  ];
  return `Since ${before.date}: ${parts.length > 0 ? parts.join('; ') : 'the same sessions'}.`;
}

function describeBody(name: string, levels: StatedLevels, before: StatedLevels | undefined): string {
  const level = (which: 'clip' | 'day', words: string): string => {
    const [now, then] = [rms(levels[which]), before && rms(before[which])];
    const change = then === undefined || then === now ? '' : ` (was ${then})`;
    return `${words} ${now}${change}`;
  };
  return `  ${name}: ${level('clip', 'from clip to clip')}, ${level('day', 'from day to day')}`;
}

/** Of a change of which steps are a part: sd² + p(1 − p), averaged over the weights. */
function rms({ change, step }: StatedLevel): string {
  const mean = (sizes: StatedSizes, of: (size: number) => number): number =>
    sizes.reduce((sum, { size, weight }) => sum + weight * of(size), 0);
  return roundTo(Math.sqrt(mean(change, (size) => size ** 2) + mean(step, (p) => p * (1 - p))), 2);
}
