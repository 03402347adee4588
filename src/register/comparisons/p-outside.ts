import { probabilityOfErrorAbove, probabilityOfErrorBelow, type UncertainValue } from '../../analysis/error-tail.ts';
import { normalLowerTail, normalQuantile } from '../../analysis/distributions.ts';
import { errorOf } from '../../analysis/linear-error.ts';
import { propagate, propagateSum } from '../../analysis/propagate.ts';
import { budgetOfFigure } from '../budget-of-figure.ts';
import type { Figure } from '../register.ts';
import type { Published } from '../published.ts';

/** Where a true value has to lie. */
export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/**
 * Two-sided p of a true value outside the bounds: twice the greater of the probabilities that it lies below and above,
 * by the distribution of the figure's error; undefined for a figure without one, which is exact. Of a ratio it is that
 * of y₁ − ρ·y₂ on the wrong side of 0. A figure that keeps no distribution has the normal one of its interval.
 */
export function pOutside(figure: Figure, { low, high }: Bounds, site: Pick<Published, 'figure'>): number | undefined {
  const { interval } = figure;
  if (interval === undefined) return undefined;
  const below = low === -Infinity ? 0 : pAt(figure, low, site, probabilityOfErrorAbove);
  const above = high === Infinity ? 0 : pAt(figure, high, site, probabilityOfErrorBelow);
  return Math.min(1, 2 * Math.max(below, above));
}

type Side = typeof probabilityOfErrorAbove;

function pAt(figure: Figure, bound: number, site: Pick<Published, 'figure'>, side: Side): number {
  const ofRatio = figure.kind === 'ratio' ? lessShare(figure, bound, site) : undefined;
  if (ofRatio) return side(ofRatio, ofRatio.value);
  return side(uncertain(figure), figure.value - bound);
}

function lessShare({ of }: Figure, share: number, site: Pick<Published, 'figure'>): UncertainValue | undefined {
  const [a, b] = ['session', 'than'].map((side) => site.figure(`total/${of[side] ?? ''}`));
  if (a === undefined || b === undefined) return undefined;
  return propagateSum([
    [1, budgetOfFigure(a)],
    [-share, budgetOfFigure(b)],
  ]);
}

function uncertain(figure: Figure): UncertainValue {
  const {
    value,
    standardUncertainty = 0,
    errorTail,
    own,
    interval = { low: value, high: value, level: 0.95 },
  } = figure;
  if (own) return propagate(value, errorOf(budgetOfFigure(figure)));
  if (errorTail) return { value, standardUncertainty, errorTail };
  const u = (interval.high - interval.low) / 2 / normalQuantile((1 + interval.level) / 2);
  return { value, standardUncertainty: u, errorTail: (x) => normalLowerTail(-x / u), normal: true };
}
