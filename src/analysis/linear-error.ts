/**
 * Errors of sums and differences as distributions: JCGM 101:2008, 5.2 and 6.5, and JCGM 102:2011, 6.2.
 *
 * An error is a sum Σ cᵢ·Xᵢ of independent parts with names. Parts of one key are one and the same error, so adding
 * two figures first adds their coefficients: what both share cancels exactly where these are equal, whatever its
 * shape. Only then are the parts convolved.
 */
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import tCdf from '@stdlib/stats-base-dists-t-cdf';
import type { BudgetedValue, NamedComponent } from './components.ts';
import { addIndependent, fromCdf, meanOf, scaled, varianceOf, type Distribution } from './distribution.ts';
import { once } from '../model/once.ts';
import { regrid } from './regrid.ts';

interface ErrorPart {
  readonly name: string;
  /** Distribution about 0 where the coefficient is 1. */
  readonly shape: Distribution;
  readonly coefficient: number;
}

/** Independent parts by what they are the error of. */
export type LinearError = ReadonlyMap<unknown, ErrorPart>;

type Terms = readonly (readonly [coefficient: number, error: LinearError])[];

/** Below this share of the largest size that a part had, what is left of it is rounding. */
const ROUNDING = 1e-12;

/** The error of Σ coefficient·figure. */
export function combineErrors(terms: Terms): LinearError {
  const parts = new Map<unknown, ErrorPart & { largest: number }>();
  for (const [factor, error] of terms) {
    if (!Number.isFinite(factor)) throw new RangeError(`a figure enters with a finite coefficient, not ${factor}`);
    for (const [key, part] of error) {
      const before = parts.get(key);
      const added = factor * part.coefficient;
      const largest = Math.max(before?.largest ?? 0, Math.abs(added));
      const coefficient = (before?.coefficient ?? 0) + added;
      parts.set(key, { ...part, largest, coefficient: Math.abs(coefficient) > ROUNDING * largest ? coefficient : 0 });
    }
  }
  return parts;
}

/** Cells to a standard uncertainty. */
const FINENESS = 24;
/**
 * Small parts are added as one normal part while their cumulants together give the sum no more skewness and no more
 * excess than these: by Cornish and Fisher's expansion a 95 % point moves by 0.2 % of u at most.
 */
const LITTLE_SKEWNESS = 0.002;
const LITTLE_EXCESS = 0.01;
/** Mass beyond an end that is cut. */
const CUT = 1e-13;
const NOTHING: Distribution = { low: 0, step: 1, masses: [1] };

/**
 * The distribution of an error about 0, by convolution; one cell of width 1 about 0 where there is none.
 *
 * Accuracy: standard uncertainty within 0.1 % per part (cells of 1/24 of it); checked in JCGM 101, 9.2.
 */
export function distributionOf(error: LinearError): Distribution {
  const parts = [...error.values()]
    .map(({ shape, coefficient }) => ({ shape, coefficient, variance: coefficient ** 2 * momentsOf(shape).variance }))
    .filter(({ variance }) => variance > 0)
    .sort((a, b) => a.variance - b.variance);
  const total = parts.reduce((sum, { variance }) => sum + variance, 0);
  if (total === 0) return NOTHING;
  const [first] = parts;
  if (parts.length === 1 && first) return scaled(first.shape, first.coefficient);
  const step = Math.sqrt(total) / FINENESS;
  let [small, skewness, excess] = [0, 0, 0];
  const large = parts.filter(({ shape, variance }) => {
    const moments = momentsOf(shape);
    skewness += Math.abs(moments.skewness) * (variance / total) ** 1.5;
    excess += Math.abs(moments.excess) * (variance / total) ** 2;
    if (skewness > LITTLE_SKEWNESS || excess > LITTLE_EXCESS) return true;
    small += variance;
    return false;
  });
  const grids = large.map(({ shape, coefficient }) => trimmed(regrid(scaled(shape, coefficient), step)));
  if (small > 0) grids.unshift(regrid(scaled(STANDARD_NORMAL, Math.sqrt(small)), step));
  return grids.reduce((sum, grid) => trimmed(addIndependent(sum, grid)));
}

const momentsOf = once((shape: Distribution): { variance: number; skewness: number; excess: number } => {
  if (shape.masses.length < 2) return { variance: 0, skewness: 0, excess: 0 };
  const [mean, variance] = [meanOf(shape), varianceOf(shape)];
  const central = (power: number): number =>
    shape.masses.reduce((sum, mass, i) => sum + mass * (shape.low + i * shape.step - mean) ** power, 0);
  return { variance, skewness: central(3) / variance ** 1.5, excess: central(4) / variance ** 2 - 3 };
});

function trimmed({ low, step, masses }: Distribution): Distribution {
  let [from, to] = [0, masses.length];
  for (let cut = masses[from] ?? 0; cut < CUT && from < to - 1; cut += masses[from] ?? 0) from += 1;
  for (let cut = masses[to - 1] ?? 0; cut < CUT && to > from + 1; cut += masses[to - 1] ?? 0) to -= 1;
  return { low: low + from * step, step, masses: masses.slice(from, to) };
}

const STANDARD_NORMAL = fromCdf((x) => normalCdf(x, 0, 1), 8, 1 / 64);
const STANDARD_RECTANGULAR: Distribution = {
  low: -Math.sqrt(3) * (1 - 1 / 200),
  step: Math.sqrt(3) / 100,
  masses: new Array<number>(200).fill(1 / 200),
};
/** Reach of a Student part, in standard uncertainties: what lies beyond is laid evenly on what lies within. */
const MOST_REACH = 60;
const students = new Map<number, Distribution>();

/** A normal error with standard uncertainty u; Student's t scaled by u where it rests on few readings (JCGM 101, 6.4.9). */
function standardPart(name: string, u: number, degreesOfFreedom = Infinity, shape = 'normal'): ErrorPart {
  if (!(u >= 0 && Number.isFinite(u)) || !(degreesOfFreedom > 0))
    throw new RangeError(
      `a component has an uncertainty of at least 0 and degrees of freedom above 0, not ${u} and ${degreesOfFreedom}`,
    );
  return { name, coefficient: u, shape: standardShape(shape, degreesOfFreedom) };
}

function standardShape(shape: string, degreesOfFreedom: number): Distribution {
  if (shape === 'rectangular') return STANDARD_RECTANGULAR;
  if (degreesOfFreedom > 1e6) return STANDARD_NORMAL;
  const known = students.get(degreesOfFreedom);
  if (known) return known;
  let reach = 8;
  while (reach < MOST_REACH && tCdf(-reach, degreesOfFreedom) > CUT) reach += 4;
  const student = fromCdf((x) => tCdf(x, degreesOfFreedom), reach, 1 / FINENESS);
  students.set(degreesOfFreedom, student);
  return student;
}

/**
 * The error of a value with a budget. Its own part is the session's error where it is known as a distribution, and
 * otherwise each component that it shares with nothing; a shared component has its name and key for a key.
 */
export function errorOf({ own, components }: BudgetedValue): LinearError {
  const parts = new Map<unknown, ErrorPart>();
  if (own) parts.set(`own ${own.key}`, { name: own.key, shape: own.error, coefficient: own.scale ?? 1 });
  for (const component of components) {
    const { name, standardUncertainty, degreesOfFreedom, sharedKey, distribution } = component;
    if (sharedKey === null && own) continue;
    const key = sharedKey === null ? Symbol(name) : keyOfShared(component);
    if (parts.has(key))
      throw new RangeError(`component '${name}' shared by '${sharedKey ?? ''}' is named twice in one budget`);
    parts.set(key, standardPart(name, standardUncertainty, degreesOfFreedom, distribution));
  }
  return parts;
}

function keyOfShared({ name, sharedKey }: NamedComponent): string {
  return JSON.stringify([name, sharedKey]);
}

/** Standard deviation of an error. */
export function standardUncertaintyOf(error: LinearError): number {
  return Math.sqrt(
    [...error.values()].reduce(
      (sum, { shape, coefficient }) =>
        sum + coefficient ** 2 * (shape === STANDARD_NORMAL ? 1 : momentsOf(shape).variance),
      0,
    ),
  );
}

/** Where every part is normal, so that the sum is. */
export function isNormal(error: LinearError): boolean {
  return [...error.values()].every(({ shape, coefficient }) => coefficient === 0 || shape === STANDARD_NORMAL);
}
