/**
 * The speed of a device against the source's clock, as a few values with weights.
 *
 * Three quarters of the prior lie close to the stated rate, however narrow the tolerance (most clocks keep well within it,
 * and rates meant to be locked are), a quarter evenly over the tolerance. A rate written down as 30 that is 30000/1001, or
 * the other way round, is a common slip: a little of the prior lies a thousandth away.
 */
export interface Speed {
  /** By how much the device runs fast, as a fraction. */
  readonly fast: number;
  readonly weight: number;
}

/** The slip between a whole rate and the one of colour television, as a fraction (SMPTE ST 170: factor 1000/1001). */
const THOUSANDTH = 1 / 1001;
const SLIPS = { share: 0.02, within: 2e-5 };
/** How much of the prior is peaked; of that part (1/100)^(1/7), about a half, lies within a hundredth of the tolerance. */
const PEAK = { share: 0.75, power: 1 / 7 };

/**
 * Values so close that over `spanMs` two neighbours move a tick by at most `moveMs`. `tolerance` is the half-width of the
 * speed against the source's; `slips` adds the thousandth on either side.
 */
export function speeds(tolerance: number, spanMs: number, moveMs: number, slips: boolean): Speed[] {
  const shares = slips ? 1 - SLIPS.share : 1;
  const main = cells(tolerance, spanMs, moveMs).map(([from, to]): Speed => {
    const weight = tolerance === 0 ? 1 : cumulative(to / tolerance) - cumulative(from / tolerance);
    return { fast: (from + to) / 2, weight: shares * weight };
  });
  if (!slips) return main;
  const around = cells(tolerance / 2 + SLIPS.within, spanMs, moveMs);
  const beside = [THOUSANDTH, -THOUSANDTH].flatMap((centre) =>
    around.map(
      ([from, to]): Speed => ({
        fast: centre + (from + to) / 2,
        weight: SLIPS.share / 2 / around.length,
      }),
    ),
  );
  return [...main, ...beside];
}

/** Evenly weighted over ±tolerance. */
export function evenSpeeds(tolerance: number, spanMs: number, moveMs: number): Speed[] {
  const all = cells(tolerance, spanMs, moveMs);
  return all.map(([from, to]) => ({ fast: (from + to) / 2, weight: 1 / all.length }));
}

/** An odd number of equal cells over ±tolerance, so that one is about 0. */
function cells(tolerance: number, spanMs: number, moveMs: number): [from: number, to: number][] {
  if (tolerance === 0) return [[0, 0]];
  const half = Math.ceil((tolerance * spanMs) / moveMs - 0.5);
  const count = 2 * Math.max(0, half) + 1;
  return Array.from({ length: count }, (_, i) => [
    tolerance * ((2 * i) / count - 1),
    tolerance * ((2 * (i + 1)) / count - 1),
  ]);
}

/** Cumulative prior at x, −1 to 1 for the tolerance. */
function cumulative(x: number): number {
  const peaked = 0.5 + 0.5 * Math.sign(x) * Math.abs(x) ** PEAK.power;
  return PEAK.share * peaked + (1 - PEAK.share) * (0.5 + 0.5 * x);
}
