import type { Device } from '../../analysis/diagnostics.ts';
import { CLIPS_ENOUGH } from '../../analysis/plan.ts';
import type { Session } from '../../model/bench.ts';
import { rateLabel, type Rate } from '../../model/rate.ts';
import { plural } from '../provenance.ts';
import type { SessionFigures } from '../session-figures.ts';
import { roundTo } from '../text.ts';
import type { Rule } from './rule.ts';

/** Rates in a higher ratio than this step through so many phases of each other that little is shared. */
const HIGHEST_RATIO = 2;
/** A clip this long, in beats, has seen most of the phases. */
const BEATS_ENOUGH = 0.8;

/**
 * Two rates that stay in step for longer than a clip lasts: its readings share a phase error, and more of them
 * in the same clip do not help. Reported while fewer than `CLIPS_ENOUGH` clips make up for it.
 */
export const beatingRates: Rule = (compiled) => {
  const { runs, longestRunMs, beats } = compiled.estimate.diagnostics;
  const beat = beats.find(({ p, q }) => Math.max(p, q) <= HIGHEST_RATIO);
  if (
    beat === undefined ||
    longestRunMs === undefined ||
    longestRunMs >= BEATS_ENOUGH * beat.periodMs ||
    runs >= CLIPS_ENOUGH
  )
    return undefined;
  const rates = `The ${nameOf(beat.first, compiled)} and the ${nameOf(beat.second, compiled)}`;
  const span = `${runs > 1 ? 'no clip here spans more than' : `${plural(compiled.estimate.diagnostics.readings, 'reading')} here span`} ${seconds(longestRunMs)}`;
  return Number.isFinite(beat.periodMs)
    ? {
        severity: 'caution',
        message: `${rates} beat every ${seconds(beat.periodMs)}, and ${span}: readings within one clip share their phase error.`,
        hint: `Spread the readings of a clip over at least ${Math.ceil(beat.periodMs / 1000)} s, or restart the clip at least ${CLIPS_ENOUGH} times.`,
      }
    : {
        severity: 'caution',
        message: `${rates} stay locked: all readings of a clip share their phase error, however long it is.`,
        hint: `Restart the clip at least ${CLIPS_ENOUGH} times; more readings in one clip do not help.`,
      };
};

function nameOf(device: Device, { session, find }: Pick<SessionFigures, 'session' | 'find'>): string {
  const rate = rateOf(device, session, find);
  const unit = device === 'source' || device === 'display' ? 'Hz' : 'frames/s';
  return `${device === 'source' ? 'source timer' : device}’s ${rate === undefined ? '' : `${rateLabel(rate)} ${unit}`}`.trim();
}

function rateOf(device: Device, session: Session, find: SessionFigures['find']): Rate | undefined {
  const rig = find.rig(session.rig);
  const rates: Readonly<Record<Device, Rate | undefined>> = {
    source: rig.sourceTimer?.refresh,
    body: session.rate,
    display: find.display(session.display).refresh,
    observer: rig.observer?.rate,
  };
  return rates[device];
}

function seconds(ms: number): string {
  return `${roundTo(ms / 1000, ms < 100_000 ? 1 : 0)} s`;
}
