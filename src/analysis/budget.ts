/**
 * The uncertainty budget: named, independent components of one result (JCGM 100:2008, clauses 4 and 5).
 */
import { combineComponents } from './components.ts';

/**
 * What a component is the same for: every session on the rig, with the instrument, with the display (on any rig), with
 * the display on this rig; null for this session only.
 */
export type SharedKey = 'rig' | 'instrument' | 'display' | 'display-on-rig' | null;

export interface BudgetLine {
  readonly name: string;
  /** Evaluated by statistics of these readings (A) or by other means (B); JCGM 100, 4.2 and 4.3. */
  readonly type: 'A' | 'B';
  readonly distribution: string;
  /** In the unit of the result, sensitivity included. */
  readonly standardUncertainty: number;
  /** Infinity where the uncertainty is taken as known. */
  readonly degreesOfFreedom: number;
  readonly sharedKey: SharedKey;
}

export interface BudgetComponent extends BudgetLine {
  /** Share of the combined variance, 0 to 1. */
  readonly varianceShare: number;
}

export interface Budget {
  readonly components: readonly BudgetComponent[];
  readonly standardUncertainty: number;
  readonly degreesOfFreedom: number;
}

/**
 * Combines independent components: `u_c = √Σu_i²` (JCGM 100, Equation 10) with the effective degrees of
 * freedom of Welch and Satterthwaite, `ν_eff = u_c⁴ / Σ(u_i⁴/ν_i)` (Equation G.2b; not rounded down here).
 *
 * @example combineBudget(four lines of equal size with 10 degrees of freedom each).degreesOfFreedom // 40
 */
export function combineBudget(lines: readonly BudgetLine[]): Budget {
  const combined = combineComponents(lines);
  const variance = combined.standardUncertainty ** 2;
  return {
    ...combined,
    components: lines.map((line) => ({
      ...line,
      varianceShare: variance > 0 ? line.standardUncertainty ** 2 / variance : 0,
    })),
  };
}
