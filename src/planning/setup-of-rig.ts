import type { Setup } from '../analysis/precision.ts';
import type { Bench, MethodId, Rig } from '../model/bench.ts';
import type { Rate } from '../model/rate.ts';
import type { Lookup } from '../register/lookup.ts';
import { chainOf } from '../register/session-input.ts';

/** A rig at one body rate, as the simulation needs it, with clips that have one delay. */
export function setupOfRig(rig: Rig, rate: Rate, method: MethodId, bench: Bench, find: Lookup): Setup {
  const { sourceTimer, instrument, display, id } = rig;
  return {
    chain: chainOf({ rig: id, display, rate }, find),
    method,
    ...(method === 'two-timers' ? { resolutionMs: sourceTimer?.resolutionMs ?? writtenResolutionMs(bench, id) } : {}),
    ...(method === 'instrument' && instrument !== undefined
      ? { instrumentUncertaintyMs: instrument.expandedUncertaintyMs / 2 }
      : {}),
  };
}

/** How a rig's readings are taken: two timers where it has a source timer, else counted frames, else the instrument. */
export function methodOfRig({ sourceTimer, observer }: Rig): MethodId {
  if (sourceTimer !== undefined) return 'two-timers';
  return observer !== undefined ? 'frame-count' : 'instrument';
}

const USUAL_RESOLUTION_MS = 1;

/** The step in which this rig's readings have been written so far; a millisecond before the first. */
function writtenResolutionMs({ sessions }: Bench, rig: string): number {
  return (
    sessions.find((session) => session.rig === rig && session.resolutionMs !== undefined)?.resolutionMs ??
    USUAL_RESOLUTION_MS
  );
}
