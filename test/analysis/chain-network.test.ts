import { describe, expect, it } from 'vitest';
import { bracketChain } from '../../src/analysis/chain-brackets.ts';
import {
  estimateChainDifference,
  estimateChainElement,
  fitChain,
  type ChainFit,
  type ChainObservation,
} from '../../src/analysis/chain-network.ts';
import { combineErrors, errorOf } from '../../src/analysis/linear-error.ts';
import { seededRandom } from '../../src/analysis/random.ts';
import { normalError } from '../support/budgeted.ts';
import { expectDigits } from '../support/log-relative-error.ts';
import { normalNoise } from '../support/normal-noise.ts';
import { readReference } from '../support/r-reference.ts';

const r = readReference('known-variance');

/** The chain of test/reference/known-variance.R: three bodies, two displays, a link in the last two sessions. */
const PATHS = ['a hall', 'b hall', 'c hall', 'a stage', 'b stage', 'c stage link', 'a stage link'];
const SESSIONS: readonly ChainObservation[] = PATHS.map((path, i) => {
  const [body, display, link] = path.split(' ');
  return {
    id: path,
    elements: [`body:${body}`, `display:${display}`, ...(link === undefined ? [] : ['link:wireless'])],
    value: r('chain.total')[i] ?? 0,
    standardUncertainty: r('chain.u')[i] ?? 0,
    error: normalError(r('chain.u')[i] ?? 0),
  };
});

function chain(...args: Parameters<typeof fitChain>): ChainFit {
  const got = fitChain(...args);
  if (got.kind !== 'chain') throw new Error(got.reason);
  return got;
}

describe('without an anchor (R, lm with weights 1/u²)', () => {
  const free = chain(SESSIONS);
  it.each([
    ['chain.stage-hall', estimateChainDifference(free, 'display:stage', 'display:hall')],
    ['chain.b-a', estimateChainDifference(free, 'body:b', 'body:a')],
    ['chain.link', estimateChainElement(free, 'link:wireless')],
  ])('%s is estimable', (name, got) => {
    if (got.kind !== 'estimate') throw new Error(got.reason);
    expectDigits(got.value, r(name)[0] ?? 0, 12);
    expectDigits(got.standardUncertainty, r(name)[1] ?? 0, 12);
  });

  it('the sessions agree as they do in R', () =>
    expectDigits(free.consistency?.chiSquare, r('chain.chisq')[0] ?? 0, 11));

  it('no body and no display has a latency of its own, and the reason names the others', () => {
    expect(estimateChainElement(free, 'display:hall')).toEqual({
      kind: 'not-estimable',
      reason: 'not-separable',
      with: ['body:a', 'body:b', 'body:c', 'display:stage'],
    });
    expect(estimateChainElement(free, 'body:c').kind).toBe('not-estimable');
    expect(estimateChainDifference(free, 'body:a', 'display:hall').kind).toBe('not-estimable');
  });

  it('an element no session went through is unknown', () => {
    expect(estimateChainElement(free, 'display:foyer')).toEqual({
      kind: 'not-estimable',
      reason: 'unknown-element',
      with: ['display:foyer'],
    });
  });
});

it('with the hall display anchored at 12.5 ± 2 every element has its latency (R)', () => {
  const got = chain(SESSIONS, [
    { element: 'display:hall', value: 12.5, standardUncertainty: 2, error: normalError(2) },
  ]);
  const names = ['body:a', 'body:b', 'body:c', 'display:hall', 'display:stage', 'link:wireless'];
  names.forEach((name, i) => {
    const element = estimateChainElement(got, name);
    if (element.kind !== 'estimate') throw new Error(element.reason);
    expectDigits(element.value, r('chain.anchored')[i] ?? 0, 12, name);
    expectDigits(element.standardUncertainty, r('chain.anchored.u')[i] ?? 0, 12, `u of ${name}`);
  });
});

it('parts of the network that no session joins cannot be compared', () => {
  const islands = chain([
    { ...(SESSIONS[0] as ChainObservation), elements: ['body:a', 'display:hall'] },
    { ...(SESSIONS[1] as ChainObservation), elements: ['body:b', 'display:stage'] },
  ]);
  const got = estimateChainDifference(islands, 'body:a', 'body:b');
  expect(got).toMatchObject({
    kind: 'not-estimable',
    reason: 'not-separable',
    with: ['display:hall', 'display:stage'],
  });
});

it.each([
  ['no-sessions', []],
  ['no-uncertainty', SESSIONS.map((session) => ({ ...session, standardUncertainty: 0 }))],
])('says why there is no fit: %s', (reason, sessions) => {
  expect(fitChain(sessions)).toEqual({ kind: 'not-estimable', reason });
});

describe('brackets', () => {
  const exact = (id: string, elements: string[], value: number): ChainObservation => ({
    id,
    elements,
    value,
    standardUncertainty: 0,
    error: new Map(),
  });
  const of = (sessions: ChainObservation[], options = {}): Record<string, [number, number | undefined]> => {
    const got = bracketChain(sessions, options);
    if (got.kind !== 'brackets') throw new Error(got.session);
    return Object.fromEntries(got.brackets.map(({ element, low, high }) => [element, [low, high]]));
  };

  it('a display is at least 0 and at most the smallest total less the least of the body', () => {
    const sessions = [exact('1', ['body:a', 'display:x'], 60), exact('2', ['body:b', 'display:x'], 80)];
    const atLeast = { 'body:a': 20, 'body:b': 20 };
    expect(of(sessions, { atLeast })).toEqual({ 'body:a': [20, 60], 'body:b': [40, 80], 'display:x': [0, 40] });
  });

  it('names the elements whose least latency a limit rests on', () => {
    const got = bracketChain([exact('1', ['body:a', 'display:x'], 60)], { atLeast: { 'body:a': 20 } });
    expect(got.kind === 'brackets' && got.brackets.map(({ from }) => from)).toEqual([
      ['body:a', '1'],
      ['1', 'body:a'],
    ]);
  });

  it('a slower display is bounded by what it adds to a faster one', () => {
    const sessions = [exact('1', ['body:a', 'display:x'], 60), exact('2', ['body:a', 'display:y'], 85)];
    expect(of(sessions)).toEqual({ 'body:a': [0, 60], 'display:x': [0, 60], 'display:y': [25, 85] });
  });

  it('an anchor closes them', () => {
    const anchors = [{ element: 'display:x', value: 10, standardUncertainty: 0, error: new Map() }];
    expect(of([exact('1', ['body:a', 'display:x'], 60)], { anchors })).toEqual({
      'body:a': [50, 50],
      'display:x': [10, 10],
    });
  });

  it('a total below the least its elements can have is a contradiction, named', () => {
    expect(bracketChain([exact('too fast', ['body:a', 'display:x'], 15)], { atLeast: { 'body:a': 20 } })).toEqual({
      kind: 'contradiction',
      session: 'too fast',
    });
  });

  it('one element twice in a session is refused', () => {
    expect(() => bracketChain([exact('1', ['link:w', 'link:w'], 5)])).toThrow('a session names one element twice');
  });

  it('hold the truth in every one of 500 simulated networks', () => {
    const random = seededRandom(42);
    const noise = normalNoise(random);
    let checked = 0;
    for (let run = 0; run < 500; run += 1) {
      const truth = new Map<string, number>();
      const least: Record<string, number> = {};
      for (const id of ['a', 'b', 'c', 'd']) {
        least[`body:${id}`] = random.between(8, 25);
        truth.set(`body:${id}`, (least[`body:${id}`] ?? 0) + random.between(0, 200));
      }
      for (const id of ['x', 'y', 'z']) truth.set(`display:${id}`, random.between(0, 80));
      truth.set('link:w', random.between(0, 60));
      const sessions = ['a', 'b', 'c', 'd'].flatMap((body) =>
        ['x', 'y', 'z']
          .filter(() => random.uniform() < 0.6)
          .map((display): ChainObservation => {
            const elements = [`body:${body}`, `display:${display}`, ...(random.uniform() < 0.3 ? ['link:w'] : [])];
            const total = elements.reduce((sum, element) => sum + (truth.get(element) ?? 0), 0);
            return {
              id: elements.join(' '),
              elements,
              value: total + 2 * noise(),
              standardUncertainty: 2,
              error: normalError(2),
            };
          }),
      );
      const got = bracketChain(sessions, { atLeast: least, level: 0.99999 });
      if (got.kind !== 'brackets') throw new Error(`contradiction in ${got.session}, network ${run}`);
      for (const { element, low, high } of got.brackets) {
        checked += 1;
        const value = truth.get(element) ?? Number.NaN;
        expect(
          value >= low && value <= (high ?? Infinity),
          `${element} ${value} in ${low} to ${high}, network ${run}`,
        ).toBe(true);
      }
    }
    expect(checked).toBeGreaterThan(2500);
  });
});

/**
 * Two bodies in front of two displays, two pairs of displays side by side, one stated latency; the first two totals
 * share an error of 3 ms, and one of 1.2 ms of the second display enters two rows as it is and one with its sign
 * changed. R 4.2.2:
 *
 *     X <- rbind(c(1,0,1,0,0), c(0,1,1,0,0), c(1,0,0,1,0), c(0,0,-1,1,0), c(0,0,0,-1,1), c(0,0,1,0,0))
 *     y <- c(132.1, 95.4, 148.9, 15.2, -9.7, 14.0); u <- c(1.5, 2.0, 1.8, 1.7, 2.4, 0.5)
 *     a <- c(1,1,0,0,0,0)*3; b <- c(0,0,1,1,-1,0)*1.2; S <- diag(u^2) + a %*% t(a) + b %*% t(b)
 *     W <- chol(solve(S)); f <- lm(I(W %*% y) ~ 0 + I(W %*% X))
 *     coef(f); sqrt(diag(solve(t(X) %*% solve(S) %*% X))); sum(resid(f)^2)
 */
describe('displays side by side in the network (R, generalised least squares with the same covariance)', () => {
  const row = (id: string, plus: readonly string[], minus: readonly string[], value: number, u: number) => ({
    id,
    elements: plus,
    minus,
    value,
    standardUncertainty: u,
    // its own, and what it shares: an element of that name stands for it in the weights
    error: combineErrors([
      [1, normalError(u)],
      ...SHARED.flatMap(([element, error]) => [
        ...(plus.includes(element) ? [[1, error] as const] : []),
        ...(minus.includes(element) ? [[-1, error] as const] : []),
      ]),
    ]),
  });
  const shared = (element: string, u: number) =>
    errorOf({
      value: 0,
      components: [{ name: element, standardUncertainty: u, degreesOfFreedom: Infinity, sharedKey: element }],
    });
  const SHARED = [
    ['e:rig', shared('e:rig', 3)],
    ['e:stage', shared('e:stage', 1.2)],
  ] as const;
  const anchor = (element: string, value: number, u: number) => ({
    element,
    value,
    standardUncertainty: u,
    error: element.startsWith('e:') ? new Map() : normalError(u),
  });
  const fit = chain(
    [
      row('1', ['body:a', 'hall', 'e:rig'], [], 132.1, 1.5),
      row('2', ['body:b', 'hall', 'e:rig'], [], 95.4, 2.0),
      row('3', ['body:a', 'stage', 'e:stage'], [], 148.9, 1.8),
      row('4', ['stage', 'e:stage'], ['hall'], 15.2, 1.7),
      row('5', ['foyer'], ['stage', 'e:stage'], -9.7, 2.4),
    ],
    [anchor('hall', 14, 0.5), anchor('e:rig', 0, 3), anchor('e:stage', 0, 1.2)],
    0.95,
    (element) => element.startsWith('body:'),
  );

  it.each([
    ['body:a', 119.135673187572, 2.0537582379348],
    ['body:b', 82.228538550058, 2.9307798716257],
    ['hall', 14.0, 0.5],
    ['stage', 29.466052934407, 2.0247078523152],
    ['foyer', 19.766052934407, 2.901627454934],
  ])('%s', (element, value, u) => {
    const got = estimateChainElement(fit, element);
    if (got.kind !== 'estimate') throw new Error(got.reason);
    expectDigits(got.value, value, 11);
    expectDigits(got.standardUncertainty, u, 11);
  });

  it('χ² over the one cycle', () => expectDigits(fit.consistency?.chiSquare, 0.14729574223246, 9));

  it('limits go along both signs of a difference', () => {
    // exact totals: stage = 120 − body, body at least 20; stage − hall = 90 ± 0, so that hall is at most 10 and stage
    // at least 90
    const exact = { standardUncertainty: 0, error: new Map() };
    const found = bracketChain(
      [
        { id: 't', elements: ['body', 'stage'], value: 120, ...exact },
        { id: 'p', elements: ['stage'], minus: ['hall'], value: 90, ...exact },
      ],
      { atLeast: { body: 20 } },
    );
    if (found.kind !== 'brackets') throw new Error('contradiction');
    const limits = Object.fromEntries(found.brackets.map(({ element, low, high }) => [element, [low, high]]));
    expect(limits).toEqual({ body: [20, 30], stage: [90, 100], hall: [0, 10] });
  });
});
