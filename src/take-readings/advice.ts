/** What the next reading buys, in words: a further one of this clip against a new clip. */
import { estimateSession } from '../analysis/estimate.ts';
import { continueSession, furtherReadings, NEXT_READING_TRIALS, type NextReading } from '../analysis/next-reading.ts';
import type { Setup } from '../analysis/precision.ts';
import { parseSessions, readSessions } from '../ingest/read-session.ts';
import { setupOfRig } from '../planning/setup-of-rig.ts';
import { lookup } from '../register/lookup.ts';
import { plural } from '../register/provenance.ts';
import { countedRuns } from '../register/session-input.ts';
import { describeSignificant } from '../register/text.ts';

/** A way is better where it leaves the interval narrower by this share at least. */
const WORTH = 0.03;

/** Raised by whatever is more urgent: advice under way is then given up. */
let urgent = 0;

export function giveUpAdvice(): void {
  urgent += 1;
}

/** Undefined while nothing counts yet, and where it was given up. Gives way to other requests between trials. */
export async function adviceOn(root: string, id: string): Promise<string | undefined> {
  giveUpAdvice();
  const asked = urgent;
  const read = await readSessions(root, [id]);
  const bench = read && parseSessions(read).bench;
  const session = bench?.sessions.find((one) => one.id === id);
  const counts = session === undefined ? [] : countedRuns(session).map((run) => run.length);
  if (bench === undefined || session === undefined || counts.length === 0) return undefined;
  const find = lookup(bench);
  const setup = setupOfRig(find.rig(session.rig), session.rate, session.method, bench, find);
  const key = JSON.stringify([setup, counts]);
  const known = remembered.get(key) ?? (await simulate(setup, counts, () => asked !== urgent));
  if (known === undefined) return undefined;
  remembered.set(key, known);
  return describeNext(known, counts.at(-1) ?? 1);
}

/** By setup and counts; a session passes through some thirty of them. */
const remembered = new Map<string, NextReading>();

async function simulate(
  setup: Setup,
  counts: readonly number[],
  isGivenUp: () => boolean,
): Promise<NextReading | undefined> {
  const sums = { nowMs: 0, sameClipMs: 0, newClipMs: 0 };
  for (let trial = 0; trial < NEXT_READING_TRIALS; trial += 1)
    for (const [way, session] of Object.entries(continueSession(setup, counts, trial))) {
      await new Promise((resolve) => setTimeout(resolve, 5));
      if (isGivenUp()) return undefined;
      sums[way as keyof NextReading] += estimateSession(session).expandedUncertainty / NEXT_READING_TRIALS;
    }
  return sums;
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
