import { describe, expect, it } from 'vitest';
import { combineBudget, type BudgetLine } from '../../src/analysis/budget.ts';

function line(name: string, standardUncertainty: number, degreesOfFreedom: number): BudgetLine {
  return { name, type: 'B', distribution: 'normal', standardUncertainty, degreesOfFreedom, sharedKey: null };
}

describe('combineBudget', () => {
  /**
   * JCGM 100:2008, H.1 (end gauge), in nm: the inputs as transcribed in the documentation of the Measurement Standards
   * Laboratory of New Zealand's GTC library. Printed: u_c 32 nm, u_c² 1002 nm², ν_eff 16.7. The digits below are R's,
   * from the unrounded inputs.
   */
  it('gives the combined uncertainty and effective degrees of freedom of JCGM 100, H.1', () => {
    const thermal = 0.05 * 1e6; // length 50 mm in nm
    const budget = combineBudget([
      line('standard', 25, 18),
      line('repeated observations', 5.8, 24),
      line('comparator, random', 3.9, 5),
      line('comparator, systematic', 6.7, 8),
      line('difference of expansion', (thermal * 1000 * 0.1 * 1e-6) / Math.sqrt(3), 50),
      line('difference of temperature', (thermal * 1000 * 11.5e-6 * 0.05) / Math.sqrt(3), 2),
    ]);
    expect(budget.components[4]!.standardUncertainty).toBeCloseTo(2.886787315, 3);
    expect(budget.components[5]!.standardUncertainty).toBeCloseTo(16.599027061, 3);
    expect(Math.abs(budget.standardUncertainty - 31.663879111)).toBeLessThan(1e-3);
    expect(Math.abs(budget.degreesOfFreedom - 16.751855738)).toBeLessThan(1e-3);
    expect(Math.round(budget.standardUncertainty)).toBe(32);
    expect(budget.components.reduce((sum, { varianceShare }) => sum + varianceShare, 0)).toBeCloseTo(1, 12);
    expect(budget.components[0]!.varianceShare).toBeCloseTo(625 / 1002.60124, 4);
  });

  it('adds the degrees of freedom of equal contributions, and keeps them infinite where all are', () => {
    expect(combineBudget(['a', 'b', 'c', 'd'].map((name) => line(name, 1, 10))).degreesOfFreedom).toBeCloseTo(40, 10);
    expect(combineBudget([line('a', 1, Infinity)]).degreesOfFreedom).toBe(Infinity);
    expect(combineBudget([line('a', 0, 3)])).toMatchObject({
      standardUncertainty: 0,
      components: [{ varianceShare: 0 }],
    });
  });
});
