import { normalError } from '../support/budgeted.ts';
import { expect, it } from 'vitest';
import { commonLevels } from '../../src/analysis/common-levels.ts';
import { fitSettings } from '../../src/analysis/settings-model.ts';
import type { Factor, Term } from '../../src/analysis/design-matrix.ts';

const RATE: Factor = { id: 'rate', kind: 'ordered', levels: ['25', '30', '50'] };
const SYNC: Factor = { id: 'sync', kind: 'unordered', levels: ['free', 'genlock'] };
const FRAME: Factor = { id: 'frame', kind: 'numeric', levels: ['25', '30', '50'], numbers: [40, 100 / 3, 20] };
const TERMS: readonly Term[] = [['rate'], ['sync'], ['sync', 'frame']];
const at = (rate: string, sync: string) => ({ rate, sync, frame: rate });
const MEASURED = [at('25', 'free'), at('30', 'free'), at('50', 'free'), at('25', 'genlock'), at('50', 'genlock')];
const STEP = { setting: 'sync', from: 'free', to: 'genlock' };

it('names the levels at which both ends of a step were measured, of what shares a term with it', () =>
  expect(commonLevels(MEASURED, [RATE, SYNC, FRAME], TERMS, STEP)).toEqual({ frame: ['25', '50'] }));

it('names all where both ends meet nowhere, and none where nothing depends on another', () => {
  const apart = [at('25', 'free'), at('50', 'genlock')];
  expect(commonLevels(apart, [RATE, SYNC, FRAME], TERMS, STEP)).toEqual({ frame: ['25', '30', '50'] });
  expect(commonLevels(MEASURED, [RATE, SYNC, FRAME], [['rate'], ['sync']], STEP)).toEqual({});
});

it('of a numeric setting, those at which it has two of its numbers', () => {
  const conditions = [at('25', 'free'), at('50', 'free'), at('25', 'genlock')];
  const step = { setting: 'frame', from: '25', to: '50' };
  expect(commonLevels(conditions, [RATE, SYNC, FRAME], TERMS, step)).toEqual({ sync: ['free'] });
});

it('an effect is the average of what was measured: 44 and 22 at 40 and 20 ms are 33, whatever was measured at 30 too', () => {
  const value = ({ rate, sync }: { rate: string; sync: string }): number =>
    200 + (sync === 'genlock' ? 1.1 * (1000 / Number(rate)) : 0) - Number(rate);
  const observations = [...MEASURED, at('25', 'free')].map((condition) => ({
    condition,
    value: value(condition),
    standardUncertainty: 1,
    error: normalError(1),
  }));
  const fit = fitSettings(observations, [RATE, SYNC, FRAME], TERMS, { scale: 'stated' });
  if (fit.kind !== 'fit') throw new Error(fit.reason);
  const effect = fit.effects.find(({ setting }) => setting === 'sync');
  expect(effect?.over).toEqual({ frame: ['25', '50'] });
  expect(effect?.kind === 'effect' ? effect.value : undefined).toBeCloseTo((44 + 22) / 2, 9);
});
