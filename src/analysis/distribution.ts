/**
 * A distribution of one quantity as masses on an even grid, and sums of independent quantities.
 *
 * Sums are propagated numerically (JCGM 101:2008, clause 5.2 "propagation of distributions") by convolving the
 * masses rather than by drawing numbers: same result everywhere, and no sampling error. The grid's own error
 * in a standard deviation is below step²/(24·sd).
 */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';

export interface Distribution {
  /** Centre of the first cell. */
  readonly low: number;
  /** Width of a cell. */
  readonly step: number;
  /** Probability in each cell; they sum to 1. */
  readonly masses: readonly number[];
}

/** Rectangular about 0 with standard uncertainty `u`: half-width u·√3 (JCGM 100, 4.3.7). */
export function rectangular(u: number, step: number): Distribution {
  const half = u * Math.sqrt(3);
  return cells(half, step, (from, to) => Math.max(0, Math.min(to, half) - Math.max(from, -half)) / (2 * half));
}

/** Any symmetric law about 0 from its distribution function, cut where `reach` standard uncertainties are left out. */
export function fromCdf(cdf: (x: number) => number, reach: number, step: number): Distribution {
  return cells(reach, step, (from, to) => cdf(to) - cdf(from));
}

export function meanOf({ low, step, masses }: Distribution): number {
  return masses.reduce((sum, mass, i) => sum + mass * (low + i * step), 0);
}

export function varianceOf(distribution: Distribution): number {
  const { low, step, masses } = distribution;
  const mean = meanOf(distribution);
  return masses.reduce((sum, mass, i) => sum + mass * (low + i * step - mean) ** 2, 0);
}

/**
 * The same on cells of another width: every mass is shared between the two cells whose centres it lies between, so that
 * the mean stays; a variance grows by less than step²/4.
 */
export function onStep(distribution: Distribution, step: number): Distribution {
  const { low, masses } = distribution;
  const count = Math.ceil(((masses.length - 1) * distribution.step) / step) + 2;
  const shared = new Array<number>(count).fill(0);
  masses.forEach((mass, i) => {
    const place = (i * distribution.step) / step;
    const cell = Math.floor(place);
    shared[cell]! += mass * (cell + 1 - place);
    shared[cell + 1]! += mass * (place - cell);
  });
  return { low, step, masses: shared };
}

/** The distribution of X + by. */
export function shifted(distribution: Distribution, by: number): Distribution {
  return { ...distribution, low: distribution.low + by };
}

/** The distribution of X − E X. */
export function centred(distribution: Distribution): Distribution {
  return shifted(distribution, -meanOf(distribution));
}

/** The distribution of c·X; one cell about 0 where c is 0. */
export function scaled({ low, step, masses }: Distribution, c: number): Distribution {
  if (c === 0) return { low: 0, step: 1, masses: [1] };
  if (c > 0) return { low: low * c, step: step * c, masses };
  return { low: (low + (masses.length - 1) * step) * c, step: -step * c, masses: masses.toReversed() };
}

/** The same plus an independent error about 0: normal where it is called so, else rectangular; a narrow one is left out. */
export function withStandardPart(
  sum: Distribution,
  { distribution, standardUncertainty: u }: { readonly distribution: string; readonly standardUncertainty: number },
): Distribution {
  if (u < sum.step / 4) return sum;
  return addIndependent(
    sum,
    distribution === 'normal' ? fromCdf((x) => normalCdf(x, 0, u), 5 * u, sum.step) : rectangular(u, sum.step),
  );
}

/** The distribution of a + b, a and b independent and on grids of one step. */
export function addIndependent(a: Distribution, b: Distribution): Distribution {
  if (Math.abs(a.step - b.step) > 1e-9 * a.step)
    throw new RangeError(`distributions add on one step, not on ${a.step} and ${b.step}`);
  return { low: a.low + b.low, step: a.step, masses: convolved(a.masses, b.masses) };
}

/**
 * Σ a[i]·b[k − i] for every k, by rising i. Every difference and every total is convolved here: four of a are taken at
 * a time, which passes over the sums a quarter as often and adds in the same order.
 */
function convolved(a: readonly number[], b: readonly number[]): readonly number[] {
  const sums = new Float64Array(a.length + b.length - 1);
  let i = 0;
  for (; i + 3 < a.length; i += 4) {
    const [p0, p1, p2, p3] = [a[i]!, a[i + 1]!, a[i + 2]!, a[i + 3]!];
    // the last three of b
    let [b1, b2, b3] = [0, 0, 0];
    for (let j = 0; j < b.length; j += 1) {
      const b0 = b[j]!;
      sums[i + j] = sums[i + j]! + p0 * b0 + p1 * b1 + p2 * b2 + p3 * b3;
      b3 = b2;
      b2 = b1;
      b1 = b0;
    }
    const end = i + b.length;
    sums[end] = sums[end]! + p1 * b1 + p2 * b2 + p3 * b3;
    sums[end + 1] = sums[end + 1]! + p2 * b1 + p3 * b2;
    sums[end + 2] = sums[end + 2]! + p3 * b1;
  }
  for (; i < a.length; i += 1) for (let j = 0; j < b.length; j += 1) sums[i + j]! += a[i]! * b[j]!;
  return Array.from(sums);
}

/**
 * Half-width U of the interval mean ± U that holds the share `level` (0 to 1): the expanded uncertainty of
 * JCGM 101, 7.7 for an interval that is symmetric about the estimate, so that it can be written as y ± U.
 */
export function halfWidthAbout({ low, step, masses }: Distribution, centre: number, level: number): number {
  const edges = masses.flatMap((_, i) => [
    Math.abs(low + (i - 0.5) * step - centre),
    Math.abs(low + (i + 0.5) * step - centre),
  ]);
  let [inside, outside] = [0, Math.max(...edges)];
  while (outside - inside > 1e-4 * step) {
    const half = (inside + outside) / 2;
    if (shareWithin({ low, step, masses }, centre - half, centre + half) < level) inside = half;
    else outside = half;
  }
  return outside;
}

function shareWithin({ low, step, masses }: Distribution, from: number, to: number): number {
  let share = 0;
  for (let i = 0; i < masses.length; i += 1) {
    const overlap = Math.min(to, low + (i + 0.5) * step) - Math.max(from, low + (i - 0.5) * step);
    if (overlap > 0) share += (masses[i]! * overlap) / step;
  }
  return share;
}

function cells(half: number, step: number, share: (from: number, to: number) => number): Distribution {
  const reach = Math.ceil(half / step);
  const masses = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    share((i - reach - 0.5) * step, (i - reach + 0.5) * step),
  );
  const all = masses.reduce((sum, mass) => sum + mass, 0);
  return { low: -reach * step, step, masses: masses.map((mass) => mass / all) };
}
