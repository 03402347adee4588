import { describe, expect, it } from 'vitest';
import type { Chain } from '../../src/analysis/chain.ts';
import { correctionsFor } from '../../src/analysis/corrections.ts';
import { rate } from '../../src/model/rate.ts';

const DISPLAY = { refresh: rate(60), sync: 'input', scanOutMs: 16, digitsRow: 0.5 } as const;
const chain = (
  observer: Partial<NonNullable<Chain['observer']>> | undefined,
  display: Partial<Chain['display']> = {},
): Chain => ({
  body: { rate: rate(25) },
  display: { ...DISPLAY, ...display },
  ...(observer && { observer: { rate: rate(50), ...observer } }),
});

describe('correctionsFor', () => {
  it('adds what a row-by-row observer takes away when the shown digits stand lower', () => {
    const [skew] = correctionsFor(chain({ readoutMs: 8, sourceRow: 0.25, displayRow: 0.75 }), 'two-timers');
    expect(skew).toEqual({ name: 'observer row skew', valueMs: 4, standardUncertaintyMs: 0, sharedKey: 'rig' });
  });

  it('brings the row of the digits to mid-screen', () => {
    const [scanOut] = correctionsFor(chain(undefined, { digitsRow: 0.25 }), 'two-timers');
    expect(scanOut).toEqual({ name: 'display scan-out', valueMs: 4, standardUncertaintyMs: 0, sharedKey: 'display' });
  });

  it('takes an unknown row as rectangular from top to bottom (JCGM 100, 4.3.7: width/√12)', () => {
    const [skew] = correctionsFor(chain({ readoutMs: 8, sourceRow: 0.5 }), 'two-timers');
    expect(skew!.valueMs).toBe(0);
    expect(skew!.standardUncertaintyMs).toBeCloseTo(8 / Math.sqrt(12), 12);
  });

  it('takes an unknown scan-out as rectangular up to one refresh', () => {
    const { scanOutMs: _, ...unknown } = DISPLAY;
    const [scanOut] = correctionsFor({ body: { rate: rate(25) }, display: { ...unknown, digitsRow: 1 } }, 'two-timers');
    expect(scanOut!.valueMs).toBeCloseTo(-1000 / 60 / 4, 12);
    expect(scanOut!.standardUncertaintyMs).toBeCloseTo(1000 / 60 / Math.sqrt(12) / 2, 12);
  });

  it('multiplies the doubts where readout and rows are both unknown', () => {
    // Var(xy) with x on [0, 20] and y the difference of two rows: (400/12)(1/6) + 10²·(1/6)
    const [skew] = correctionsFor(chain({}), 'two-timers');
    expect(skew!.standardUncertaintyMs).toBeCloseTo(Math.sqrt(400 / 72 + 100 / 6), 12);
  });

  it('brings a light sensor to mid-screen too, and takes no observer into account', () => {
    expect(correctionsFor(chain({ readoutMs: 8 }, { digitsRow: 0.75 }), 'instrument')).toEqual([
      // 16 ms · (0.5 − 0.75)
      { name: 'display scan-out', valueMs: -4, standardUncertaintyMs: 0, sharedKey: 'display' },
    ]);
  });
});
