import { describe, expect, it } from 'vitest';
import { fitLeastSquares } from '../../src/analysis/least-squares.ts';
import { estimateContrast, isEstimable } from '../../src/analysis/linear-contrast.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { NO_INT_1, NORRIS } from '../support/nist-strd.ts';
import { CARS } from '../support/r-datasets.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('linear-models');

describe('NIST StRD, linear regression (certified values)', () => {
  it('Norris: y on x', () => {
    const fit = fitLeastSquares(
      [NORRIS.map(() => 1), NORRIS.map(([x]) => x)],
      NORRIS.map(([, y]) => y),
    );
    const meanSquare = fit.residualSumOfSquares / fit.residualDegreesOfFreedom;
    expect(fit.residualDegreesOfFreedom).toBe(34);
    expectDigits(fit.coefficients[0], -0.262323073774029, 12, 'B0');
    expectDigits(fit.coefficients[1], 1.00211681802045, 12, 'B1');
    expectDigits(Math.sqrt(meanSquare * (fit.unscaledCovariance[0]?.[0] ?? 0)), 0.232818234301152, 12, 's.e. of B0');
    expectDigits(Math.sqrt(meanSquare * (fit.unscaledCovariance[1]?.[1] ?? 0)), 0.000429796848199937, 12, 's.e. of B1');
    expectDigits(Math.sqrt(meanSquare), 0.884796396144373, 12, 'residual SD');
    expectDigits(fit.residualSumOfSquares, 26.6173985294224, 12, 'residual SS');
    expectDigits(fit.sequentialSquares[1], 4255954.13232369, 12, 'regression SS');
    expectDigits((fit.sequentialSquares[1] ?? 0) / meanSquare, 5436385.54079785, 12, 'F');
  });

  it('NoInt1: through the origin', () => {
    const fit = fitLeastSquares(
      [NO_INT_1.map(([x]) => x)],
      NO_INT_1.map(([, y]) => y),
    );
    const meanSquare = fit.residualSumOfSquares / fit.residualDegreesOfFreedom;
    expectDigits(fit.coefficients[0], 2.07438016528926, 13, 'B1');
    expectDigits(Math.sqrt(meanSquare * (fit.unscaledCovariance[0]?.[0] ?? 0)), 0.0165289256198347, 12, 's.e.');
    expectDigits(Math.sqrt(meanSquare), 3.56753034006338, 12, 'residual SD');
    expectDigits(fit.sequentialSquares[0], 200457.727272727, 12, 'regression SS, about zero');
    expectDigits((fit.sequentialSquares[0] ?? 0) / meanSquare, 15750.25, 12, 'F');
  });
});

describe('R, lm on cars', () => {
  const columns = [CARS.speed.map(() => 1), CARS.speed];
  it.each([
    ['cars', CARS.dist.map(() => 1)],
    ['cars.weighted', CARS.dist.map((_, i) => 1 / (i + 1))],
  ])('%s', (name, weights) => {
    const fit = fitLeastSquares(columns, CARS.dist, weights);
    const variance = fit.residualSumOfSquares / fit.residualDegreesOfFreedom;
    expectDigits(Math.sqrt(variance), r(`${name}.sigma`)[0] ?? 0, 13, 'sigma');
    [
      [1, 0],
      [0, 1],
    ].forEach((contrast, k) => {
      const got = estimateContrast(fit, contrast, [], { kind: 'residual', variance, residualDegreesOfFreedom: 48 });
      expectDigits(got?.value, r(`${name}.estimate`)[k] ?? 0, 12, `coefficient ${k}`);
      expectDigits(got?.standardUncertainty, r(`${name}.se`)[k] ?? 0, 12, `s.e. ${k}`);
    });
  });

  it.each([10, 21])('fit and its standard error at speed %d', (speed) => {
    const fit = fitLeastSquares(columns, CARS.dist);
    const got = estimateContrast(fit, [1, speed], [], {
      kind: 'residual',
      variance: fit.residualSumOfSquares / 48,
      residualDegreesOfFreedom: 48,
    });
    const [value = 0, low = 0] = r(`cars.confidence.${speed}`);
    expectDigits(got?.value, value, 12);
    expectDigits(got?.standardUncertainty, (value - low) / 2.01063475762423, 11); // qt(0.975, 48) in R
  });
});

describe('rank deficiency', () => {
  const one = [1, 1, 1, 1];
  const x = [0, 0, 1, 1];
  const rest = x.map((value) => 1 - value);
  const fit = fitLeastSquares([one, x, rest, [0, 1, 0, 1]], [1, 2, 5, 6]);

  it('leaves out the column that others determine, and says how they do', () => {
    expect(fit.kept).toEqual([0, 1, 3]);
    expect(fit.aliased).toHaveLength(1);
    expect(fit.aliased[0]?.column).toBe(2);
    const parts = new Map(fit.aliased[0]?.combination.map((part) => [part.column, part.coefficient]));
    expect([...parts.keys()]).toEqual([0, 1]);
    expectDigits(parts.get(0), 1, 13);
    expectDigits(parts.get(1), -1, 13);
  });

  it('estimates what does not depend on it, and nothing else', () => {
    expect(isEstimable(fit, [0, 0, 0, 1])).toBe(true);
    expect(isEstimable(fit, [0, 1, -1, 0])).toBe(true); // the difference of the two dummies
    expect(isEstimable(fit, [0, 1, 0, 0])).toBe(false);
    const scale = { kind: 'residual', variance: 1, residualDegreesOfFreedom: 1 } as const;
    expectDigits(estimateContrast(fit, [0, 1, -1, 0], [], scale)?.value, 4, 13);
    expect(estimateContrast(fit, [0, 1, 0, 0], [], scale)).toBeUndefined();
  });

  it('reports a column of zeros as determined by nothing', () => {
    expect(fitLeastSquares([one, [0, 0, 0, 0]], [1, 2, 3, 4]).aliased).toEqual([{ column: 1, combination: [] }]);
  });

  it('keeps as many columns as there are rows', () => {
    const got = fitLeastSquares(
      [
        [1, 1],
        [0, 1],
        [3, 5],
      ],
      [4, 9],
    );
    expect(got.kept).toEqual([0, 1]);
    expect(got.residualDegreesOfFreedom).toBe(0);
  });
});

it('the squares that the columns explain and those left over add up to Σ w·y², the constant included', () => {
  const weights = CARS.dist.map((_, i) => 1 + (i % 3));
  const fit = fitLeastSquares([CARS.speed.map(() => 1), CARS.speed], CARS.dist, weights);
  const total = CARS.dist.reduce((sum, y, i) => sum + (weights[i] ?? 0) * y * y, 0);
  expectDigits(fit.sequentialSquares.reduce((a, b) => a + b, 0) + fit.residualSumOfSquares, total, 13);
});

it('influence rebuilds every coefficient from the observations, weighted or not', () => {
  const weights = CARS.dist.map((_, i) => 1 + (i % 7));
  const fit = fitLeastSquares([CARS.speed.map(() => 1), CARS.speed], CARS.dist, weights);
  fit.influence.forEach((row, k) => {
    const rebuilt = row.reduce((sum, share, i) => sum + share * (CARS.dist[i] ?? 0), 0);
    expectDigits(rebuilt, fit.coefficients[k] ?? 0, 12);
  });
});

it.each([
  ['as many weights (1)', () => fitLeastSquares([[1, 1]], [1, 2], [1])],
  ['at least one observation', () => fitLeastSquares([], [])],
  ['finite and above 0', () => fitLeastSquares([[1, 1]], [1, 2], [1, 0])],
  ['finite numbers', () => fitLeastSquares([[1, Number.NaN]], [1, 2])],
  ['finite numbers', () => fitLeastSquares([[1, 1]], [1, Infinity])],
  ['not all zero', () => fitLeastSquares([[0, 0]], [1, 2])],
])('refuses input that lacks %s', (message, run) => expect(run).toThrow(message));
