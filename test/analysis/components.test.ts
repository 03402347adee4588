import { describe, expect, it } from 'vitest';
import { combineComponents, pairComponents, type NamedComponent } from '../../src/analysis/components.ts';
import { expectDigits } from '../support/log-relative-error.ts';

const part = (
  standardUncertainty: number,
  degreesOfFreedom = Infinity,
): { standardUncertainty: number; degreesOfFreedom: number } => ({
  standardUncertainty,
  degreesOfFreedom,
});

describe('combineComponents', () => {
  it('four equal components of 10 degrees of freedom have 40 (JCGM 100:2008, G.4.1, by arithmetic)', () => {
    const got = combineComponents([part(1, 10), part(1, 10), part(1, 10), part(1, 10)]);
    expect(got.standardUncertainty).toBe(2);
    expectDigits(got.degreesOfFreedom, 40, 14);
  });

  it('JCGM 100:2008, H.1: an end gauge has u 31.66 nm on 16.75 degrees of freedom', () => {
    // contributions from unrounded inputs and the result, R 4.2.2; the standard prints 32 nm and 16.7 from rounded ones
    const d = combineComponents([part(13 / Math.sqrt(5), 24), part(3.9, 5), part(6.7, 8)]);
    const got = combineComponents([
      part(25, 18),
      part(9.681941954, 25.447250777),
      part(2.886787315, 50),
      part(16.599027061, 2),
    ]);
    expectDigits(got.standardUncertainty, 31.663879111, 9);
    expectDigits(got.degreesOfFreedom, 16.751855738, 8);
    // d from the printed 3.9 and 6.7: the standard prints 9.7 and 25.6
    expect(d.standardUncertainty.toFixed(1)).toBe('9.7');
    expect(Math.abs(d.degreesOfFreedom - 25.6)).toBeLessThan(0.3);
  });

  it('nothing, and zeros, combine to 0 on infinite degrees of freedom', () => {
    expect(combineComponents([])).toEqual(part(0));
    expect(combineComponents([part(0, 3)])).toEqual(part(0));
  });

  it.each([part(-1, 3), part(Number.NaN, 3), part(1, 0)])('refuses %j', (bad) => {
    expect(() => combineComponents([bad])).toThrow('a component has an uncertainty of at least 0');
  });
});

it('components pair by name and key together', () => {
  const c = (name: string, sharedKey: string | null): NamedComponent => ({ name, sharedKey, ...part(1) });
  const a = { value: 1, components: [c('skew', 'rig:x'), c('clock', 'rig:x'), c('own', null)] };
  const b = { value: 1, components: [c('skew', 'rig:x'), c('clock', 'rig:y'), c('own', null)] };
  const got = pairComponents(a, b);
  expect(got.shared.map((pair) => pair.a.name)).toEqual(['skew']);
  expect(got.ownA.map((x) => x.name)).toEqual(['clock', 'own']);
  expect(got.ownB.map((x) => x.name)).toEqual(['clock', 'own']);
});

it('one budget that names a shared component twice is refused', () => {
  const twice = { name: 'skew', sharedKey: 'rig:x', ...part(1) };
  const value = { value: 1, components: [twice, twice] };
  expect(() => pairComponents(value, value)).toThrow("component 'skew' shared by 'rig:x' is named twice");
});
