import { estimateClassicalInterval } from '../support/classical-interval.ts';
import { estimateSession } from '../../src/analysis/estimate.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { chainOf, generateSessions } from './generated-bench.ts';
import { describeRatio, describeSpread, printTable } from './measure.ts';

const SESSIONS = 144;
const AIM_MS = 4;
/** One textbook interval is over long before the clock of the processor has moved. */
const REPEATS = 2000;

/** One session's estimate, for every body, condition and rig of the generated bench, against the textbook interval. */
export async function benchEstimate(): Promise<void> {
  const inputs = generateSessions(SESSIONS).map(
    ({ rig, condition, runs }): SessionInput => ({
      method: 'two-timers',
      chain: chainOf(rig, condition.rate),
      resolutionMs: 1,
      runs: runs.map((stamps) => ({
        latenciesMs: stamps.map(({ sourceMs, shownMs }) => sourceMs - shownMs),
        sourceMs: stamps.map(({ sourceMs }) => sourceMs),
      })),
    }),
  );
  const [ours, textbook]: [number[], number[]] = [[], []];
  for (const round of ['warm-up', 'measured']) {
    for (const input of inputs) {
      const runs = input.runs.map(({ latenciesMs }) => latenciesMs);
      const oursMs = millisecondsOf(1, () => estimateSession(input));
      const textbookMs = millisecondsOf(REPEATS, () => estimateClassicalInterval(runs));
      if (round === 'warm-up') continue;
      ours.push(oursMs);
      textbook.push(textbookMs);
    }
  }
  printTable(`Estimate of one session of 3 runs of 10 readings (${SESSIONS} sessions, in turn, processor time)`, [
    ['ours', `${describeSpread(ours, 'ms', 3)} (aim: at most ${AIM_MS} ms)`],
    ['textbook interval', describeSpread(textbook, 'ms', 4)],
    ['ratio', describeRatio(ours, textbook)],
  ]);
}

/** Processor time of this thread: what else the machine does is not counted. */
function millisecondsOf(repeats: number, work: () => unknown): number {
  const start = process.threadCpuUsage();
  for (let repeat = 0; repeat < repeats; repeat += 1) work();
  const { user, system } = process.threadCpuUsage(start);
  return (user + system) / 1000 / repeats;
}
