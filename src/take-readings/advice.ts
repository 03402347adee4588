/** What the next reading buys, in words: a further one of this clip against a new clip. */
import {
  averageNext,
  furtherReadings,
  NEXT_READING_TRIALS,
  tryNextReading,
  type NextReading,
} from '../analysis/next-reading.ts';
import { parseSessions, readSessions } from '../ingest/read-session.ts';
import { setupOfRig } from '../planning/setup-of-rig.ts';
import { lookup } from '../register/lookup.ts';
import { plural } from '../register/provenance.ts';
import { countedRuns } from '../register/session-input.ts';
import { describeSignificant } from '../register/text.ts';

/** A way is better where it leaves the interval narrower by this share at least. */
const WORTH = 0.03;

/** Undefined while nothing counts yet. Gives way to other requests between trials. */
export async function adviceOn(root: string, id: string): Promise<string | undefined> {
  const read = await readSessions(root, [id]);
  const bench = read && parseSessions(read).bench;
  const session = bench?.sessions.find((one) => one.id === id);
  const counts = session === undefined ? [] : countedRuns(session).map((run) => run.length);
  if (bench === undefined || session === undefined || counts.length === 0) return undefined;
  const find = lookup(bench);
  const setup = setupOfRig(find.rig(session.rig), session.rate, session.method, bench, find);
  const key = JSON.stringify([setup, counts]);
  const known = remembered.get(key) ?? (await simulate(setup, counts));
  remembered.set(key, known);
  return describeNext(known, counts.at(-1) ?? 1);
}

/** By setup and counts; a session passes through some thirty of them. */
const remembered = new Map<string, NextReading>();

async function simulate(setup: Parameters<typeof tryNextReading>[0], counts: readonly number[]): Promise<NextReading> {
  const trials: NextReading[] = [];
  for (let trial = 0; trial < NEXT_READING_TRIALS; trial += 1) {
    await new Promise((resolve) => setImmediate(resolve));
    trials.push(tryNextReading(setup, counts, trial));
  }
  return averageNext(trials);
}

/** `A new clip buys more: …` */
function describeNext({ nowMs, sameClipMs, newClipMs }: NextReading, readings: number): string {
  const more = plural(furtherReadings(readings), 'further reading');
  const show = (ms: number): string => `± ${describeSignificant(ms, 2, 'ms')}`;
  const numbers = `By simulation on this rig, from about ${show(nowMs)}: ${more} of this clip give ${show(sameClipMs)}; a new clip of ${plural(readings, 'reading')}, which is as much work, gives ${show(newClipMs)}.`;
  if (Math.min(sameClipMs, newClipMs) > (1 - WORTH) * nowMs) return `Neither buys much now. ${numbers}`;
  if (newClipMs < (1 - WORTH) * sameClipMs) return `A new clip buys more. ${numbers}`;
  return sameClipMs < (1 - WORTH) * newClipMs
    ? `Readings of this clip buy more. ${numbers}`
    : `Both buy alike. ${numbers}`;
}
