import { estimateClassicalInterval } from '../support/classical-interval.ts';
import { estimateSession } from '../../src/analysis/estimate.ts';
import type { SessionInput } from '../../src/analysis/session-input.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { lookup } from '../../src/register/lookup.ts';
import { sessionInput } from '../../src/register/session-input.ts';
import { foldersOf } from '../../src/site/publication.ts';
import { PROJECT } from '../support/project-files.ts';
import { chainOf, generateSessions } from './generated-bench.ts';
import { describeRatio, describeSpread, printTable } from './measure.ts';

const SESSIONS = 144;
const AIM_MS = 4;
/** One textbook interval is over long before the clock of the processor has moved. */
const REPEATS = 2000;

/** One session's estimate, for every session of the demonstration, and for every condition of the generated bench. */
export async function benchEstimate(): Promise<void> {
  const bench = await readBench(foldersOf(PROJECT));
  const find = lookup(bench);
  const committed = bench.sessions.map((session) => sessionInput(session, find));
  report(`Estimate of one session of the demonstration (${committed.length} sessions`, committed);
  const generated = generateSessions(SESSIONS).map(
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
  report(`Estimate of one session of 3 runs of 10 readings (${SESSIONS} sessions`, generated);
}

/** Each against the textbook interval of the same readings. */
function report(heading: string, inputs: readonly SessionInput[]): void {
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
  printTable(`${heading}, in turn, processor time)`, [
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
