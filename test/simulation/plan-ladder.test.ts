import { describe, expect, it } from 'vitest';
import { CLIPS_ENOUGH, planLadder, planSession } from '../../src/analysis/plan.ts';
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

  it.each([24, 50, 60])('plans as many clips as a build will ask for: %d frames/s', (frames) => {
    const setup = setupOf(rate(frames));
    expect(planLadder(setup).recommended.runs).toBeGreaterThanOrEqual(CLIPS_ENOUGH);
    expect(planSession(setup, { kind: 'half-width', halfWidthMs: 30 }).runs).toBeGreaterThanOrEqual(CLIPS_ENOUGH);
  });
});
