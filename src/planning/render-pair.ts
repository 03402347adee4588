/** A comparison of two displays that is still to be made: how many readings it takes, and its files. */
import { pairFront, type DescribedPair } from '../ingest/render-display-pair.ts';
import type { PairSetup } from '../analysis/plan-pairs.ts';
import type { Design } from '../analysis/precision.ts';
import type { Lookup } from '../register/lookup.ts';
import { pairSetup } from '../register/displays/pair-input.ts';
import { describeDesign } from './plan-text.ts';
import { COLUMNS, type SessionFiles } from './render-session.ts';

/** As the simulation needs it. */
export function setupOfPair(pair: DescribedPair, find: Lookup): PairSetup {
  return pairSetup({ ...pair, resolutionMs: pair.sourceTimer.resolutionMs ?? 1 }, find);
}

/** `pit-monitor-beside-bench-panel`, with a number where that is taken. */
export function newPairId({ display, against, method }: DescribedPair, taken: ReadonlySet<string>): string {
  const stem = `${display}-${method === 'side-by-side' ? 'beside' : 'mirrors'}-${against}`;
  for (let number = 1; ; number += 1) {
    const id = number === 1 ? stem : `${stem}-${number}`;
    if (!taken.has(id)) return id;
  }
}

/** The two files of a comparison that is still to be made: what is asked for is said in comments, so that none of it is published. */
export function renderPlannedPair(pair: DescribedPair, plan: Design): SessionFiles {
  const between =
    pair.method === 'side-by-side' ? 'unplug the splitter and plug it in again' : 'stop and start the mirroring';
  return {
    front: [
      '---',
      '# Still to be filled in: date (YYYY-MM-DD), room, and the names of timer and observer. Remove "planned" when the readings are typed.',
      `# Plan: ${describeDesign(plan)}, not at regular steps. Between clips, ${between}.`,
      '# Two running timers are a large flickering target: warn those present. Displays get warm; leave mains wiring to licensed people.',
      pairFront(pair, { planned: true }).trimEnd(),
      '---',
      '',
    ].join('\n'),
    readings: `${COLUMNS['two-timers']}\n`,
  };
}
