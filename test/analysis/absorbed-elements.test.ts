import { describe, expect, it } from 'vitest';
import { absorbElements } from '../../src/analysis/absorbed-elements.ts';
import {
  estimateChainDifference,
  estimateChainElement,
  fitChain,
  type ChainFit,
  type ChainObservation,
} from '../../src/analysis/chain-network.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { normalNoise } from '../support/normal-noise.ts';

const isBody = (element: string): boolean => element.startsWith('body:');

function chain(...args: Parameters<typeof fitChain>): ChainFit {
  const got = fitChain(...args);
  if (got.kind !== 'chain') throw new Error(got.reason);
  return got;
}

/** Eleven bodies over three displays and a link, with a rig error that the sessions on x share. */
function network(): ChainObservation[] {
  const noise = normalNoise(seededRandom(11));
  return Array.from({ length: 40 }, (_, i): ChainObservation => {
    const display = ['x', 'y', 'z'][i % 3] ?? 'x';
    const u = 1 + (i % 4);
    const elements = [
      `body:${i % 11}`,
      ...(i % 5 === 0 ? ['link:w'] : []),
      `display:${display}`,
      ...(display === 'x' ? ['error:x'] : []),
    ];
    return {
      id: `s${i}`,
      elements,
      value: 100 + 7 * (i % 11) + (i % 5 === 0 ? 38 : 0) + 10 * (i % 3) + u * noise(),
      standardUncertainty: u,
      error: normalError(u),
    };
  });
}

const ERROR = { element: 'error:x', value: 0, standardUncertainty: 2, error: normalError(2) };
const ANCHOR = { element: 'display:y', value: 14, standardUncertainty: 0.6, error: normalError(0.6) };

describe('absorbing the bodies changes nothing but the size of the fit', () => {
  const [plain, absorbed] = [() => false, isBody].map((rule) => chain(network(), [ERROR, ANCHOR], 0.95, rule)) as [
    ChainFit,
    ChainFit,
  ];

  it('has a column per link, display and error alone', () => {
    expect(absorbed.elements).toEqual(['link:w', 'display:x', 'error:x', 'display:y', 'display:z']);
    expect(absorbed.absorbed.size).toBe(11);
    expect(plain.elements).toHaveLength(16);
  });

  it.each(['body:0', 'body:7', 'link:w', 'display:x', 'display:y'])('%s', (element) => {
    const [a, b] = [estimateChainElement(plain, element), estimateChainElement(absorbed, element)];
    if (a.kind !== 'estimate' || b.kind !== 'estimate') throw new Error('estimable in both');
    expectDigits(b.value, a.value, 11);
    expectDigits(b.standardUncertainty, a.standardUncertainty, 11);
    expectDigits(b.interval.low, a.interval.low, 9);
    expect(b.from).toEqual(a.from);
  });

  it('the scatter, and a difference', () => {
    expectDigits(absorbed.consistency?.chiSquare, plain.consistency?.chiSquare ?? 0, 11);
    expect(absorbed.consistency?.degreesOfFreedom).toBe(plain.consistency?.degreesOfFreedom);
    const [a, b] = [plain, absorbed].map((one) => estimateChainDifference(one, 'body:3', 'body:4'));
    if (a?.kind !== 'estimate' || b?.kind !== 'estimate') throw new Error('estimable in both');
    expectDigits(b.value, a.value, 10);
    expectDigits(b.standardUncertainty, a.standardUncertainty, 11);
  });
});

it('says what cannot be separated as it does without absorbing', () => {
  const [plain, absorbed] = [() => false, isBody].map((rule) => chain(network(), [ERROR], 0.95, rule)) as [
    ChainFit,
    ChainFit,
  ];
  for (const element of ['display:z', 'body:5']) {
    const [a, b] = [estimateChainElement(plain, element), estimateChainElement(absorbed, element)];
    if (a.kind === 'estimate' || b.kind === 'estimate') throw new Error('nothing anchors it');
    expect(new Set(b.with)).toEqual(new Set(a.with));
  }
  expect(estimateChainElement(absorbed, 'link:w').kind).toBe('estimate');
});

it('one display and no anchor: nothing is determined, and nothing fails', () => {
  const one = network().filter(({ elements }) => elements.includes('display:z') && !elements.includes('link:w'));
  const got = chain(one, [], 0.95, isBody);
  expect(estimateChainElement(got, 'display:z').kind).toBe('not-estimable');
  expect(estimateChainDifference(got, 'body:2', 'body:6').kind).toBe('estimate');
});

it('refuses a row with two absorbed elements', () => {
  expect(() => absorbElements([{ elements: ['body:a', 'body:b'], value: 1, weight: 1 }], [], isBody)).toThrow(
    'one absorbed element at most, not body:a, body:b',
  );
});
