/**
 * That an entry can be followed with a calculator: each formula once more, from the published tables and the register
 * alone. Nothing of `src` is imported; what is computed here is written out here.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import chiSquareQuantile from '@stdlib/stats-base-dists-chisquare-quantile';
import gammaInc from '@stdlib/math-base-special-gammainc';
import { parse } from 'csv-parse/sync';
import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import { describe, expect, inject, it } from 'vitest';
import { openCopy } from '../support/project-copy.ts';
import { readPublishedRegister } from '../support/published-register.ts';

interface Line {
  readonly name: string;
  readonly standardUncertainty: number;
  readonly shared: string | null;
}
interface Entry {
  readonly id: string;
  readonly kind: string;
  readonly of: Readonly<Record<string, string>>;
  readonly value: number;
  readonly speaksOf?: string;
  readonly standardUncertainty?: number;
  readonly interval?: { readonly low: number; readonly high: number; readonly level: number };
  readonly limits?: { readonly low: number; readonly high: number };
  readonly components?: readonly Line[];
  readonly uncorrected?: number;
  readonly corrections?: readonly { readonly value: number }[];
  readonly p?: number;
  readonly weights?: readonly { readonly figure: string; readonly weight: number }[];
  readonly sources: readonly { readonly file: string }[];
  readonly verdict?: {
    readonly word: string;
    readonly family: string;
    readonly familySize: number;
    readonly claimed?: number;
    readonly pAdjusted?: number;
    readonly pSameAdjusted?: number;
  };
}
type Row = Readonly<Record<string, string>>;

const { dist } = openCopy(inject('builtProject'));
const read = (file: string): string => readFileSync(join(dist, file), 'utf8');
const { figures } = readPublishedRegister<Entry>(read('figures.json'));
const [readings, sessions] = ['readings.csv', 'sessions.csv'].map(
  (file) => parse(read(file), { columns: true }) as readonly Row[],
) as [readonly Row[], readonly Row[]];

const byId = new Map(figures.map((figure) => [figure.id, figure]));
const amountOf = (id: string): number => byId.get(id)?.value ?? NaN;
const totalOf = (session: string): Entry => byId.get(`total/${session}`)!;
const countedOf = (session: string): readonly number[] =>
  readings
    .filter((row) => row['session'] === session && row['counts'] === 'true')
    .map((row) => Number(row['latency_ms']));
const rateOf = (session: string): number => {
  const [frames = NaN, seconds = NaN] = (sessions.find((row) => row['session'] === session)?.['rate'] ?? '')
    .split('/')
    .map(Number);
  return frames / seconds;
};
const sum = (list: readonly number[]): number => list.reduce((all, one) => all + one, 0);
const mean = (list: readonly number[]): number => sum(list) / list.length;
const deviation = (list: readonly number[]): number =>
  Math.sqrt(sum(list.map((x) => (x - mean(list)) ** 2)) / (list.length - 1));
const rootOfSquares = (list: readonly number[]): number => Math.sqrt(sum(list.map((x) => x * x)));
const sorted = (list: readonly number[]): readonly number[] => [...list].sort((a, b) => a - b);
const ownPartOf = ({ components = [] }: Entry): number =>
  rootOfSquares(components.filter(({ shared }) => shared === null).map((line) => line.standardUncertainty));
const ownOf = (session: string): number => ownPartOf(totalOf(session));
/** Of the delay of its day: all but the line from day to day. */
const dayPartOf = (session: string): number => {
  const { components = [], speaksOf } = totalOf(session);
  expect(speaksOf).toBe('condition');
  return ownPartOf({ ...totalOf(session), components: components.filter(({ name }) => name !== 'from day to day') });
};
/** Sessions whose readings a figure rests on. */
const sessionsOf = ({ sources }: Entry): readonly string[] =>
  sources.flatMap(({ file }) => /^data\/sessions\/(.*)\.csv$/.exec(file)?.[1] ?? []);

const middle = (list: readonly number[]): number => {
  const order = sorted(list);
  const half = Math.floor(order.length / 2);
  return order.length % 2 === 1 ? order[half]! : (order[half - 1]! + order[half]!) / 2;
};

interface Point {
  readonly t: number;
  readonly y: number;
  readonly w: number;
}
const pointsOf = (law: Entry): readonly Point[] =>
  sessionsOf(law).map((id) => ({ t: 1000 / rateOf(id), y: amountOf(`total/${id}`), w: ownOf(id) ** -2 }));
const weighted = (points: readonly Point[], of: (point: Point) => number): number =>
  sum(points.map((point) => point.w * of(point))) / sum(points.map(({ w }) => w));

/** Least squares by hand: a line of total against frame interval, each session with its weight. */
function lineThrough(points: readonly Point[]) {
  const [t0, y0] = [weighted(points, ({ t }) => t), weighted(points, ({ y }) => y)];
  const slope =
    sum(points.map(({ t, y, w }) => w * (t - t0) * (y - y0))) / sum(points.map(({ t, w }) => w * (t - t0) ** 2));
  return { slope, fixed: y0 - slope * t0 };
}
const ofLaw = (kind: string, { of }: Entry): Entry | undefined =>
  figures.find((other) => other.kind === kind && other.of['law'] === of['law']);
/** Where there is a floor, the sessions at it, and the slower ones; the law is of the slower ones. */
function partsOf(law: Entry) {
  const points = pointsOf(law);
  const floorFrom = ofLaw('rate-law-break', law)?.value ?? -Infinity;
  return { fast: points.filter(({ t }) => t < floorFrom), slow: points.filter(({ t }) => t >= floorFrom), points };
}
const lineOf = (law: Entry) => lineThrough(partsOf(law).slow);

/** χ² of the weighted mean at each rate about one line through all. */
function lackOfFit(law: Entry): number {
  const { points } = partsOf(law);
  const { slope, fixed } = lineThrough(points);
  const rates = [...Map.groupBy(points, ({ t }) => t.toFixed(9)).values()];
  const chiSquare = sum(
    rates.map(
      (own) =>
        sum(own.map(({ w }) => w)) * (weighted(own, ({ y }) => y) - fixed - slope * weighted(own, ({ t }) => t)) ** 2,
    ),
  );
  return gammaInc(chiSquare / 2, (rates.length - 2) / 2, true, true);
}

/** Where Q(τ) falls to the quantile, by halving. */
function betweenAtMost(ids: readonly string[]): number {
  const q = (variance: number): number => {
    const points = ids.map((id) => ({ t: 0, y: amountOf(`total/${id}`), w: 1 / (dayPartOf(id) ** 2 + variance) }));
    const centre = weighted(points, ({ y }) => y);
    return sum(points.map(({ y, w }) => w * (y - centre) ** 2));
  };
  const least = chiSquareQuantile(0.05, ids.length - 1);
  if (q(0) <= least) return 0;
  let [low, high] = [0, 1e8];
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (q(middle) > least) low = middle;
    else high = middle;
  }
  return Math.sqrt(low);
}

/** In m, after a time in s. */
const MOVES: Readonly<Record<string, (seconds: number) => number>> = {
  walking: (seconds) => 3.5 * 0.3048 * seconds,
  sprinting: (seconds) => (100 / 9.58) * seconds,
  falling: (seconds) => (9.80665 * seconds ** 2) / 2,
  sound: (seconds) => 343.2 * seconds,
  // data/speeds.yaml of the demonstration
  truck: (seconds) => 0.8 * seconds,
};

interface ChainRow {
  readonly parts: readonly string[];
  /** Those taken off: of two displays, the other. */
  readonly minus?: readonly string[];
  readonly value: number;
  readonly u: number;
}
const sharedOf = ({ components = [] }: Entry): readonly Line[] =>
  components.filter((line) => line.shared !== null && line.standardUncertainty > 0);
const nameOf = ({ name, shared }: Line): string => `${name} ${shared}`;

function rowsOfSessions(): readonly ChainRow[] {
  return sessions.map((row) => {
    const id = row['session'] ?? '';
    const set = Object.keys(row).filter((column) => column.startsWith('setting_'));
    const links = (row['links'] ?? '').split(' ').filter(Boolean);
    return {
      parts: [
        `body/${[row['body'], row['firmware'], set.map((column) => row[column]).join('-')].join('/')}`,
        ...links.map((link) => `link/${link}`),
        `display/${row['display']}`,
        ...sharedOf(totalOf(id)).map(nameOf),
      ],
      value: amountOf(`total/${id}`),
      u: ownOf(id),
    };
  });
}

const pairs = figures.filter(({ kind }) => kind === 'display-difference');

/** 1 under the display and the errors it shares, −1 under the other and its own. The pairs here go through no link. */
function rowsOfPairs(): readonly ChainRow[] {
  return pairs.map((pair) => {
    const { display, than } = pair.of;
    expect(read(`data/display-pairs/${pair.of['display-pair']}.md`)).not.toMatch(/^(against-)?links:/m);
    const isOther = ({ shared }: Line): boolean => shared?.replace(/@.*$/, '') === `display:${than}`;
    const shared = sharedOf(pair);
    return {
      parts: [`display/${display}`, ...shared.filter((line) => !isOther(line)).map(nameOf)],
      minus: [`display/${than}`, ...shared.filter(isOther).map(nameOf)],
      value: pair.value,
      u: ownPartOf(pair),
    };
  });
}

/**
 * The chain, taken apart: a row for each session, pair of displays, stated latency and shared error, by least squares.
 */
function takeApart(): ReadonlyMap<string, number> {
  const rows = [...rowsOfSessions(), ...rowsOfPairs()];
  const errors = new Map<string, number>();
  for (const line of [...sessions.map((row) => totalOf(row['session'] ?? '')), ...pairs].flatMap(sharedOf))
    errors.set(nameOf(line), Math.max(errors.get(nameOf(line)) ?? 0, line.standardUncertainty));
  const parts = [...new Set(rows.flatMap(({ parts: plus, minus = [] }) => [...plus, ...minus]))];
  const stated = parts.flatMap((part) => {
    const [, folder, id] = /^(display|link)\/(.*)$/.exec(part) ?? [];
    const text = folder === undefined ? '' : read(`data/${folder}s/${id}.md`);
    const [, value, u] = /^latency:\n +value: ([\d.]+) ms\n +uncertainty: ([\d.]+) ms$/m.exec(text) ?? [];
    return value === undefined ? [] : [{ parts: [part], value: Number(value), u: Number(u) }];
  });
  const held = [...errors].map(([error, u]) => ({ parts: [error], value: 0, u }));
  const all: readonly ChainRow[] = [...rows, ...stated, ...held];
  const x = new Matrix(
    all.map(({ parts: plus, minus = [], u }) =>
      parts.map((part) => (Number(plus.includes(part)) - Number(minus.includes(part))) / u),
    ),
  );
  const y = Matrix.columnVector(all.map((row) => row.value / row.u));
  const solved = new SingularValueDecomposition(x, { autoTranspose: true }).solve(y).to1DArray();
  return new Map(parts.map((part, at) => [part, solved[at] ?? NaN]));
}
const apart = takeApart();

/** What one body itself takes less what another does. */
function carriedOf(of: Entry['of']): number {
  return (apart.get(`body/${of['condition']}`) ?? NaN) - (apart.get(`body/${of['than']}`) ?? NaN);
}

function weightedSum({ weights = [] }: Entry): number {
  return sum(weights.map(({ figure, weight }) => weight * amountOf(figure)));
}

/** What the formula of a kind gives; undefined where this one figure is not followed here. */
const BY_HAND: Readonly<Record<string, (figure: Entry) => number | undefined>> = {
  total: ({ uncorrected = NaN, corrections = [] }) => uncorrected + sum(corrections.map(({ value }) => value)),
  frames: ({ of }) => (amountOf(`total/${of['session']}`) * rateOf(of['session'] ?? '')) / 1000,
  mean: ({ of }) => mean(countedOf(of['session'] ?? '')),
  median: ({ of }) => middle(countedOf(of['session'] ?? '')),
  'standard-deviation': ({ of }) => deviation(countedOf(of['session'] ?? '')),
  'standard-error': ({ of }) => {
    const list = countedOf(of['session'] ?? '');
    return deviation(list) / Math.sqrt(list.length);
  },
  minimum: ({ of }) => Math.min(...countedOf(of['session'] ?? '')),
  maximum: ({ of }) => Math.max(...countedOf(of['session'] ?? '')),
  range: ({ of }) => Math.max(...countedOf(of['session'] ?? '')) - Math.min(...countedOf(of['session'] ?? '')),
  readings: ({ of }) => countedOf(of['session'] ?? '').length,
  runs: ({ of }) =>
    new Set(
      readings.filter((row) => row['session'] === of['session'] && row['counts'] === 'true').map((row) => row['run']),
    ).size,
  excluded: ({ of }) => readings.filter((row) => row['session'] === of['session'] && row['counts'] === 'false').length,
  difference: ({ of }) => amountOf(`total/${of['session']}`) - amountOf(`total/${of['than']}`),
  ratio: ({ of }) => amountOf(`total/${of['session']}`) / amountOf(`total/${of['than']}`),
  verdict: ({ of }) => amountOf(`total/${of['session']}`) - amountOf(`total/${of['than']}`),
  cost: ({ of }) => amountOf(`total/${of['session']}`) - amountOf(`total/${of['than']}`),
  later: ({ of }) => amountOf(`total/${of['session']}`) - amountOf(`total/${of['than']}`),
  family: ({ id }) => figures.filter(({ verdict }) => `family/${verdict?.family}` === id).length,
  count: ({ of }) => {
    const { count, body } = of;
    if (count === 'bodies') return undefined;
    const own = sessions.filter((row) => body === undefined || row['body'] === body).map((row) => row['session']);
    if (count === 'sessions') return own.length;
    const rows = readings.filter((row) => own.includes(row['session'] ?? ''));
    return count === 'readings' ? rows.length : rows.filter((row) => row['counts'] === 'false').length;
  },
  bracket: ({ limits }) => limits && (limits.low + limits.high) / 2,
  'rate-law-fixed': (law) => lineOf(law).fixed,
  'rate-law-frames': (law) => lineOf(law).slope,
  'rate-law-lack-of-fit': lackOfFit,
  'rate-law-floor': (law) => weighted(partsOf(law).fast, ({ y }) => y),
  'rate-law-break': (law) => {
    const [floor, fixed, slope] = ['floor', 'fixed', 'frames'].map(
      (part) => ofLaw(`rate-law-${part}`, law)?.value ?? NaN,
    );
    return (floor! - fixed!) / slope!;
  },
  'firmware-change': (figure) => {
    const { from, to } = figure.of;
    const [earlier, later] = [from, to].map((firmware) =>
      sessionsOf(figure).filter((id) => sessions.find((row) => row['session'] === id)?.['firmware'] === firmware),
    );
    return mean(later!.map((id) => amountOf(`total/${id}`))) - mean(earlier!.map((id) => amountOf(`total/${id}`)));
  },
  element: ({ id, of }) => {
    const than = of['than'];
    const part = id.replace(/^element\//, '').replace(/\/than\/.*$/, '');
    const value = apart.get(part) ?? NaN;
    return than === undefined ? value : value - (apart.get(part.replace(/\/.*/, `/${than}`)) ?? NaN);
  },
  effect: weightedSum,
  interaction: weightedSum,
  carried: ({ of }) => {
    const display =
      of['display'] === undefined ? Number.parseFloat(of['delay'] ?? '') : apart.get(`display/${of['display']}`);
    return (apart.get(`body/${of['condition']}`) ?? NaN) + (display ?? NaN);
  },
  'carried-difference': ({ of }) => carriedOf(of),
  'carried-verdict': ({ of }) => carriedOf(of),
  'effect-verdict': ({ id }) => amountOf(id.replace('-verdict', '')),
  'interaction-verdict': ({ id }) => amountOf(id.replace('-verdict', '')),
  moved: (figure) => {
    const [session = ''] = sessionsOf(figure);
    return MOVES[figure.of['movement'] ?? '']?.(amountOf(`total/${session}`) / 1000);
  },
  'repeat-mean': (figure) => mean(sessionsOf(figure).map((id) => amountOf(`total/${id}`))),
  'repeat-next': (figure) => mean(sessionsOf(figure).map((id) => amountOf(`total/${id}`))),
};

/** Followed by `npm run figures` and not by hand, and why. */
const NOT_BY_HAND: Readonly<Record<string, string>> = {
  'rate-law-floor-test': 'the smallest of several p',
  'display-difference':
    'an integral over all that the pairs of values leave possible, as the uncorrected value of a total is',
  'rate-law-fixed-within': 'a point of a distribution that is convolved; held between two ends below',
  'rate-law-frames-within': 'the same',
  'repeat-between': 'held to what is computed by hand below',
  'repeat-between-at-most': 'held to what is computed by hand below',
};

const kinds = [...new Set(figures.map(({ kind }) => kind))];

it('every kind is followed here, or named as one that takes more than a calculator', () => {
  expect(kinds.filter((kind) => !(kind in BY_HAND) && !(kind in NOT_BY_HAND))).toEqual([]);
});

describe('the formula gives the published value', () => {
  it.each(kinds.filter((kind) => kind in BY_HAND).map((kind) => [kind]))('of %s', (kind) => {
    const own = figures.filter((figure) => figure.kind === kind);
    const followed = own.flatMap((figure) => {
      const value = BY_HAND[kind]?.(figure);
      return value === undefined ? [] : [{ id: figure.id, value, published: figure.value }];
    });
    expect(followed.length).toBeGreaterThan(0);
    // Sums in another order: a few rounding errors of numbers up to a thousand (2⁻⁵² each), squared and rooted once.
    const off = followed.filter(
      ({ value, published }) => !(Math.abs(value - published) <= 1e-9 * Math.max(1, Math.abs(published)) + 1e-9),
    );
    expect(off).toEqual([]);
  });
});

it('the budget of a total or of a difference of displays sums to its standard uncertainty', () => {
  const budgeted = [...figures.filter(({ kind }) => kind === 'total'), ...pairs].filter(
    ({ components = [] }) => components.length > 0,
  );
  expect(budgeted.length).toBeGreaterThan(10);
  for (const { id, standardUncertainty = NaN, components = [] } of budgeted)
    expect(rootOfSquares(components.map((line) => line.standardUncertainty)) / standardUncertainty, id).toBeCloseTo(
      1,
      9,
    );
});

const ofSettings = figures.filter(({ kind }) => kind === 'effect' || kind === 'interaction');

it('the uncertainty of an effect is that of its sum of totals, what they share taken once', () => {
  expect(ofSettings.length).toBeGreaterThan(10);
  for (const { id, weights = [], standardUncertainty = NaN } of ofSettings) {
    const parts = weights.flatMap(({ figure, weight }) => [
      { name: figure, u: weight * ownPartOf(byId.get(figure)!) },
      ...sharedOf(byId.get(figure)!).map((line) => ({ name: nameOf(line), u: weight * line.standardUncertainty })),
    ]);
    const summed = [...Map.groupBy(parts, ({ name }) => name).values()].map((own) => sum(own.map(({ u }) => u)));
    expect(rootOfSquares(summed) / standardUncertainty, id).toBeCloseTo(1, 9);
  }
});

// What makes a sum of totals the effect of one step and of nothing else, whatever the delays are (Gauss and Markov: an
// unbiased linear estimate): the levels of every other setting, and the frame rate, have weights that sum to nothing.
it('an effect sets one level against the other, and nothing else', () => {
  const settings = Object.keys(sessions[0] ?? {}).filter((column) => column.startsWith('setting_'));
  for (const { id, kind, of, weights = [] } of ofSettings) {
    const at = (column: string) => (weight: { readonly figure: string }) =>
      sessions.find((row) => `total/${row['session']}` === weight.figure)?.[column] ?? '';
    const own = kind === 'effect' ? `setting_${of['setting']?.replaceAll('-', '_')}` : '';
    for (const column of settings)
      for (const [level, those] of Map.groupBy(weights, at(column))) {
        const side = column !== own ? 0 : Number(level === of['to']) - Number(level === of['from']);
        expect(sum(those.map(({ weight }) => weight)), `${id}, ${column} ${level}`).toBeCloseTo(side, 9);
      }
  }
});

it('verdicts are what Holm’s adjustment of the published p makes of them', () => {
  const families = Map.groupBy(
    figures.filter(({ verdict }) => verdict !== undefined && verdict.pAdjusted !== undefined),
    ({ verdict }) => verdict?.family ?? '',
  );
  const judged = [...families].filter(([, own]) => own.every(({ kind }) => kind === 'verdict'));
  expect(judged.length).toBeGreaterThan(3);
  for (const [family, own] of judged) {
    const asked = own
      .map((verdict) => ({
        verdict,
        p: byId.get(`difference/${verdict.of['session']}/${verdict.of['than']}`)?.p ?? NaN,
      }))
      .sort((a, b) => a.p - b.p);
    let reached = 0;
    asked.forEach(({ verdict, p }, place) => {
      const { claimed = 0 } = verdict.verdict ?? {};
      reached = Math.max(reached, Math.min(1, (asked.length + claimed - place) * p));
      expect(verdict.verdict?.pAdjusted, `${family} ${verdict.id}`).toBeCloseTo(reached, 12);
      const { word = '', pSameAdjusted = 1 } = verdict.verdict ?? {};
      const expected =
        reached <= 0.05 ? (verdict.value > 0 ? 'slower' : 'faster') : pSameAdjusted <= 0.05 ? 'same' : 'not-settled';
      expect(word, verdict.id).toBe(expected);
    });
  }
});

it('what no rate changes, and frames beyond the half, lie within the one-sided 95 % point of their error', () => {
  const within = figures.filter(({ kind }) => kind.endsWith('-within'));
  expect(within.length).toBeGreaterThan(0);
  for (const law of within) {
    const term = ofLaw(law.kind.replace('-within', ''), law)!;
    const { low, high } = term.interval!;
    const [least, most] = law.kind.startsWith('rate-law-frames')
      ? [term.value - 0.5, high - 0.5]
      : [Math.abs(term.value), Math.max(-low, high)];
    expect(law.value, law.id).toBeGreaterThan(least);
    expect(law.value, law.id).toBeLessThan(most);
  }
});

const repeats = figures.filter(({ kind }) => kind === 'repeat-next').map(({ of }) => of['repeats'] ?? '');

it.each(repeats)('the scatter between sessions is that beyond what they say of their days: %s', (name) => {
  const [between, atMost] = ['repeat-between', 'repeat-between-at-most'].map((kind) => byId.get(`${kind}/${name}`)!);
  const ids = sessionsOf(between!);
  const beyond = deviation(ids.map((id) => amountOf(`total/${id}`))) ** 2 - mean(ids.map((id) => dayPartOf(id) ** 2));
  expect(between!.value).toBeCloseTo(Math.sqrt(Math.max(0, beyond)), 6);
  expect(atMost!.value).toBeCloseTo(betweenAtMost(ids), 6);
});

it.each(repeats)('the next session is no more certain than errors of these and of one more: %s', (name) => {
  const next = byId.get(`repeat-next/${name}`)!;
  const own = sessionsOf(next).map(dayPartOf);
  const least = Math.hypot(rootOfSquares(own) / own.length, Math.max(...own));
  expect(next.standardUncertainty).toBeGreaterThanOrEqual(least - 1e-9);
  expect(next.interval?.low).toBeLessThan(next.value);
  expect(next.interval?.high).toBeGreaterThan(next.value);
});

it('every entry on a page of its own says how to redo it, and what that gives', () => {
  const pages = [
    ...new Set(
      figures
        .filter((figure) => 'entry' in figure)
        .map((figure) => (figure as Entry & { entry: string }).entry.replace(/#.*/, '')),
    ),
  ].filter((path) => path.startsWith('/figures/'));
  expect(pages.length).toBeGreaterThan(5);
  for (const path of pages) {
    const html = read(join(path, 'index.html'));
    const entries = [...html.matchAll(/<section class="entry"/g)].length;
    expect([...html.matchAll(/<details class="redo"/g)].length, path).toBe(entries);
  }
});
