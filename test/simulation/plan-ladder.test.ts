import { describe, expect, it } from 'vitest';
import { CLIPS_ENOUGH, planLadder, planSession } from '../../src/analysis/plan.ts';
import { DEFAULT_VARIATION } from '../../src/analysis/variation.ts';
import { rate } from '../../src/model/rate.ts';
import { setupOf } from '../support/rig-setup.ts';

describe('planLadder', () => {
  const phone = setupOf(rate(50), { observer: { rate: rate(240) } });
  const onPhone = planLadder(phone);

  it('recommends an evening’s work at the most, on the way up as long as steps pay', () => {
    const { rungs, recommended } = onPhone;
    const readings = rungs.map((rung) => rung.runs * rung.readings);
    expect(readings).toEqual(readings.toSorted((a, b) => a - b));
    expect(recommended.runs * recommended.readings).toBeLessThanOrEqual(40);
    const below = rungs[rungs.indexOf(recommended) - 1];
    expect(recommended.halfWidthMs).toBeLessThanOrEqual(0.9 * (below?.halfWidthMs ?? Infinity));
    expect(recommended.reached).toBe(true);
  });

  it('stops where the rig itself leaves more open than readings do, and says that it is enough', () => {
    // nobody measured where the digits stand on a display that takes 60 ms to draw: no reading takes that away
    const open = planLadder({
      ...phone,
      chain: { ...phone.chain, display: { refresh: rate(15), sync: 'input', scanOutMs: 60 } },
    });
    expect(open.isEnough).toBe(true);
    expect(open.recommended.floorMs).toBeGreaterThan(onPhone.recommended.floorMs);
  });

  it('counts a day in where the publication has learnt how days differ, and what a second one gives', () => {
    const only = (size: number) => [{ size, weight: 1 }];
    const still = { change: only(0), step: only(0) };
    const day = { change: only(0.25), step: only(0) };
    const variation = { ...DEFAULT_VARIATION, knows: 'condition', clip: still, day } as const;
    const { recommended } = planLadder({ ...setupOf(rate(25)), variation });
    expect(recommended.speaksOf).toBe('condition');
    // by hand: a quarter of 40 ms, and what the clips leave open, which the ladder without days says
    const clipsMs =
      planLadder(setupOf(rate(25))).rungs.find(
        ({ runs, readings }) => runs === recommended.runs && readings === recommended.readings,
      )?.halfWidthMs ?? Number.NaN;
    const ofDay = Math.hypot(1.96 * 10, clipsMs);
    expect(Math.abs(recommended.halfWidthMs / ofDay - 1)).toBeLessThan(0.1);
    expect(Math.abs((recommended.twoDaysMs ?? Number.NaN) / (ofDay / Math.SQRT2) - 1)).toBeLessThan(0.1);
  });

  it.each([24, 50, 60])('plans as many clips as a build will ask for: %d frames/s', (frames) => {
    const setup = setupOf(rate(frames));
    expect(planLadder(setup).recommended.runs).toBeGreaterThanOrEqual(CLIPS_ENOUGH);
    expect(planSession(setup, { kind: 'half-width', halfWidthMs: 30 }).runs).toBeGreaterThanOrEqual(CLIPS_ENOUGH);
  });
});
