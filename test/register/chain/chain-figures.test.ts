import { describe, expect, it } from 'vitest';
import { compileChain, describeLimits } from '../../../src/register/chain/chain-figures.ts';
import type { CompiledPair } from '../../../src/register/displays/compile-pairs.ts';
import { describeAnchors } from '../../../src/views/chain-words.ts';
import { briefRows, chainRows } from '../../../src/views/chain-rows.ts';
import { plainSentence } from '../../../src/register/sentence.ts';
import type { Display, Link } from '../../../src/model/bench.ts';
import { rate } from '../../../src/model/rate.ts';
import { display } from '../../support/displays.ts';
import { compilationOf, figureOf, given, givenPair, type GivenTotal } from '../../support/joint-bench.ts';

const file = (path: string) => ({ path, sha256: '0'.repeat(64), bytes: 1 });
const RADIO: Link = {
  id: 'radio',
  name: 'Radio',
  invented: true,
  description: '',
  prose: [],
  file: file('data/links/radio.md'),
};
const STATED = { valueMs: 14, standardUncertaintyMs: 0.5, source: 'A light sensor' };

const ALBA = 'body/alba-one/uhd-60-off';
const BRAE = 'body/brae/uhd-60-off';
const on = (
  id: string,
  body: string,
  screen: string,
  value: number,
  links: readonly string[] = [],
  u = 1,
): GivenTotal => given(id, '60', value, u, { body, display: screen, links });

/** Alba 100, Brae 60, hall 20, stage 45, radio 38. */
const NETWORK = [
  on('a-hall', 'alba-one', 'hall', 120),
  on('a-stage', 'alba-one', 'stage', 145),
  on('b-hall', 'brae', 'hall', 80),
  on('b-hall-radio', 'brae', 'hall', 118, ['radio']),
];
const chain = (totals: readonly GivenTotal[], hall?: Display['latency']) => {
  const compilation = compilationOf(totals, {
    displays: [display('hall', 'Hall'), display('stage', 'Stage')].map((one) =>
      one.id === 'hall' && hall ? { ...one, latency: hall } : one,
    ),
    links: [RADIO],
  });
  return { compilation, ...compileChain(compilation) };
};
const rules = (findings: readonly { readonly rule: string }[]): readonly string[] => findings.map(({ rule }) => rule);

describe('without an anchor', () => {
  const { figures, findings } = chain(NETWORK);

  it('a link that some sessions have and others lack is a figure, and so is the difference of two displays', () => {
    expect(figures.filter(({ kind }) => kind === 'element').map(({ id }) => id)).toEqual([
      'element/link/radio',
      'element/display/hall/than/stage',
    ]);
    expect(figureOf(figures, 'element/link/radio').value).toBeCloseTo(38, 9);
    expect(figureOf(figures, 'element/display/hall/than/stage')).toMatchObject({
      of: { display: 'hall', than: 'stage' },
      label: 'Latency of one part of the chain: Hall less Stage',
    });
    expect(figureOf(figures, 'element/display/hall/than/stage').value).toBeCloseTo(-25, 9);
  });

  it('names two displays by their ids, in whatever order their sessions come', () => {
    const ids = (network: typeof NETWORK) =>
      chain(network)
        .figures.map(({ id }) => id)
        .filter((id) => id.includes('/than/'));
    expect(ids(NETWORK.toReversed())).toEqual(ids(NETWORK));
  });

  it('lists the sessions that have a share in it, and no others', () => {
    expect(figureOf(figures, 'element/link/radio').sources.map((source) => source.file)).toEqual([
      'data/sessions/b-hall.csv',
      'data/sessions/b-hall-radio.csv',
    ]);
  });

  it('no body and no display has a latency of its own, and the finding says what would give it', () => {
    expect(rules(findings)).toEqual(['chain-not-anchored']);
    expect(findings[0]?.message).toContain(
      'Hall and Stage: no latency of their own can be given, nor of the bodies in front of them.',
    );
    expect(findings[0]?.hint).toContain('data/displays');
  });

  it('every part lies between limits: a display from 0 to the smallest total less what the body must take', () => {
    // 99.9 % of a total with u = 1 is ±3.2905 (normal quantile, R qnorm); half a frame at 60 frames/s is 8.333
    const { limits } = figureOf(figures, 'bracket/display/hall');
    expect(limits?.low).toBe(0);
    expect(limits?.high).toBeCloseTo(80 + 3.2905 - 1000 / 120, 3);
    const body = figureOf(figures, `bracket/${BRAE}`);
    expect(body.limits?.low).toBeCloseTo(1000 / 120, 6);
    expect(body.limits?.high).toBeCloseTo(83.2905, 3);
    expect(body.interval).toBeUndefined();
    expect(body.text).toBe('between 8 and 84 ms');
  });
});

it('a display on its own clock takes half its refresh at the least, and leaves the body that much less', () => {
  const displays = [
    { ...display('hall', 'Hall'), refresh: rate(50), sync: 'free' as const },
    display('stage', 'Stage'),
  ];
  const { figures } = compileChain(compilationOf(NETWORK, { displays, links: [RADIO] }));
  const hall = figureOf(figures, 'bracket/display/hall');
  // mean wait for a refresh of 20 ms that comes at any moment: 10 ms, of a uniform distribution
  expect(hall.limits?.low).toBeCloseTo(10, 9);
  expect(figureOf(figures, `bracket/${BRAE}`).limits?.high).toBeCloseTo(80 + 3.2905 - 10, 3);
  expect(figureOf(figures, `bracket/${BRAE}`).sources.map((source) => source.file)).toContain('data/displays/hall.md');
});

describe('with a display whose latency is stated', () => {
  const { figures, findings, compilation } = chain(NETWORK, STATED);

  it('every part has a latency, and nothing is left open', () => {
    expect(figureOf(figures, 'element/display/hall').value).toBeCloseTo(14, 9);
    expect(figureOf(figures, 'element/display/stage').value).toBeCloseTo(39, 9);
    expect(figureOf(figures, `element/${ALBA}`).value).toBeCloseTo(106, 9);
    expect(figureOf(figures, `element/${BRAE}`).value).toBeCloseTo(66, 9);
    expect(findings).toEqual([]);
  });

  it('names the file that states it among the sources', () => {
    expect(figureOf(figures, `element/${ALBA}`).sources.map((source) => source.file)).toContain(
      'data/displays/hall.md',
    );
    expect(figureOf(figures, 'element/link/radio').sources.map((source) => source.file)).not.toContain(
      'data/displays/hall.md',
    );
  });

  it('leaves the limits as they are: they trust no statement', () => {
    expect(figureOf(figures, 'bracket/display/stage').limits).toEqual(
      figureOf(chain(NETWORK).figures, 'bracket/display/stage').limits,
    );
  });

  it('pages list displays, links and bodies, and in brief each body at its fastest', () => {
    const rows = chainRows(compilation.bench, compilation.find, figures);
    expect(rows.map(({ name }) => name)).toEqual(['Hall', 'Stage', 'Radio', 'Alba One', 'Brae']);
    expect(briefRows(rows, compilation.find).map(({ name }) => name)).toEqual([
      'Hall',
      'Stage',
      'Radio',
      'Alba One, at its fastest',
      'Brae, at its fastest',
    ]);
    expect(plainSentence(describeAnchors(compilation.bench, rows))).toMatch(
      /^Hall: stated, A light sensor\. The other latencies follow/,
    );
  });
});

it('an error that the sessions of a rig share cancels between two of them, and counts through an anchor', () => {
  const shared = NETWORK.map((one) => ({ ...one, shared: 5 }));
  const u = (totals: readonly GivenTotal[], id: string): number =>
    figureOf(chain(totals, STATED).figures, id).standardUncertainty ?? Number.NaN;
  expect(u(shared, 'element/link/radio')).toBeCloseTo(u(NETWORK, 'element/link/radio'), 9);
  expect(u(shared, `element/${ALBA}`)).toBeCloseTo(Math.hypot(u(NETWORK, `element/${ALBA}`), 5), 9);
});

describe('what cannot be told is named, with the session that would tell it', () => {
  it.each([
    [
      'two displays that no body joins',
      [on('1', 'alba-one', 'hall', 120), on('2', 'brae', 'stage', 90)],
      ['chain-not-anchored', 'chain-not-anchored', 'chain-not-joined', 'chain-next-session'],
      'Stage cannot be compared with Hall',
    ],
    [
      'a link that is always there',
      [on('1', 'alba-one', 'hall', 150, ['radio']), on('2', 'brae', 'hall', 120, ['radio'])],
      ['chain-not-anchored', 'chain-link-not-separable'],
      'Radio: what it adds cannot be told',
    ],
    [
      'a display behind a link of its own',
      [on('1', 'alba-one', 'hall', 120), on('2', 'alba-one', 'stage', 160, ['radio'])],
      ['chain-not-anchored', 'chain-link-not-separable', 'chain-display-not-separable', 'chain-next-session'],
      'Stage: it cannot be compared',
    ],
    [
      'sessions that disagree',
      [...NETWORK, on('again', 'alba-one', 'hall', 126)],
      ['chain-not-anchored', 'chain-inconsistent'],
      'Birge ratio',
    ],
    [
      'a total that its parts cannot make',
      [on('1', 'alba-one', 'hall', 5)],
      ['chain-not-anchored', 'chain-contradiction'],
      'no limits are given',
    ],
    [
      'a session without any scatter',
      [...NETWORK, on('flat', 'brae', 'stage', 105, [], 0)],
      ['chain-not-anchored', 'chain-no-uncertainty'],
      'no part in taking the chain apart',
    ],
  ])('%s', (_what, totals, expected, words) => {
    const { findings } = chain(totals);
    expect(rules(findings)).toEqual(expected);
    expect(findings.map(({ message }) => message).join(' ')).toContain(words);
    for (const { hint } of findings) expect(hint.length).toBeGreaterThan(20);
  });

  it('a contradiction leaves no limits standing', () =>
    expect(chain([on('1', 'alba-one', 'hall', 5)]).figures.filter(({ kind }) => kind === 'bracket')).toEqual([]));
});

it('a bench without sessions has no chain to take apart', () =>
  expect(compileChain(compilationOf([]))).toEqual({ figures: [], findings: [] }));

it.each([
  [8.33, 83.29, 'between 8 and 84 ms'],
  [0, 12.31, 'between 0.0 and 12.4 ms'],
])('limits are rounded outwards: %d to %d', (low, high, text) => expect(describeLimits(low, high)).toBe(text));

it('says which two displays to put side by side, and how many readings that takes', () => {
  const { findings } = chain([on('1', 'alba-one', 'hall', 120), on('2', 'brae', 'stage', 90)], STATED);
  const next = findings.find(({ rule }) => rule === 'chain-next-session');
  expect(next?.message).toBe(
    'One session would settle most: put Stage and Hall side by side, 16 readings in four clips. It gives Stage a latency of its own, to about ± 3.7 ms.',
  );
});

it('names the rate of the picture: of a comparison that there is, else of the display that follows its input', () => {
  const displays = [
    { ...display('hall', 'Hall', STATED), refresh: rate(75), sync: 'free' as const },
    { ...display('stage', 'Stage'), refresh: rate(50) },
  ];
  const hintOf = (pairs: readonly CompiledPair[]) => {
    const totals = [on('1', 'alba-one', 'hall', 120), on('2', 'brae', 'stage', 90)];
    const { findings } = compileChain(compilationOf(totals, { displays, displayPairs: pairs.map(({ pair }) => pair) }));
    return findings.find(({ rule }) => rule === 'chain-next-session')?.hint;
  };
  expect(hintOf([])).toContain('--display stage --against hall --picture 50 says more');
  // invented: its picture came at 60
  expect(hintOf([givenPair('stage-beside-lobby', 'stage', 'lobby', 3)])).toContain('--picture 60 says more');
});

describe('displays read against each other that contradict the totals', () => {
  const found = (totals: readonly GivenTotal[], difference: number): string | undefined =>
    compileChain(
      compilationOf(totals, { displays: [display('hall', 'Hall'), display('stage', 'Stage')], links: [RADIO] }, [
        givenPair('stage-beside-hall', 'stage', 'hall', difference),
      ]),
    ).findings.find(({ rule }) => rule === 'chain-inconsistent')?.message;

  it('are named, where two bodies agree against them: 25 twice, and 60', () =>
    expect(found([...NETWORK, on('b-stage', 'brae', 'stage', 105)], 60)).toMatch(
      /They agree once the comparison of displays stage-beside-hall is left out\.$/,
    ));

  it('are named with the sessions on the other path, where either may be wrong', () => {
    const names = /They agree once one of these is left out: (.*)\.$/.exec(found(NETWORK, 60) ?? '')?.[1];
    expect(names?.split(', ').sort()).toEqual(['a-hall', 'a-stage', 'the comparison of displays stage-beside-hall']);
  });

  it('are not, where they say what totals say: 25 and 26, each ± 1', () => expect(found(NETWORK, 26)).toBeUndefined());
});

it('names the session without which the others agree', () => {
  const { findings } = chain([
    ...NETWORK,
    on('again', 'alba-one', 'hall', 120.5),
    on('wrong', 'alba-one', 'stage', 190),
  ]);
  expect(findings.find(({ rule }) => rule === 'chain-inconsistent')?.message).toMatch(
    /They agree once one of these is left out: (?:a-stage, wrong|wrong, a-stage)\.$/,
  );
});
