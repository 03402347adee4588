/** A bench whose sessions have the totals and uncertainties that a test gives them, for figures of several sessions. */
import { runLikelihoods } from '../../src/analysis/estimate.ts';
import normalCdf from '@stdlib/stats-base-dists-normal-cdf';
import { fromCdf } from '../../src/analysis/distribution.ts';
import type { CompiledPair } from '../../src/register/displays/compile-pairs.ts';
import type { Compilation } from '../../src/register/compilation.ts';
import { lookup } from '../../src/register/lookup.ts';
import type { Figure } from '../../src/register/register.ts';
import type { SessionFigures } from '../../src/register/session-figures.ts';
import { estimateRatios } from '../../src/analysis/ratio.ts';
import type { Bench, Session } from '../../src/model/bench.ts';
import { rate } from '../../src/model/rate.ts';
import { bench, session } from './small-bench.ts';

const RATES = ['23.976', '24', '25', '29.97', '30', '50', '59.94', '60', '119.88', '120'];

export interface GivenTotal {
  readonly session: Session;
  readonly value: number;
  readonly standardUncertainty: number;
  /** What all sessions on its rig share. */
  readonly shared?: number;
}

/** The settings of a session, all but those given alike. */
export function settings(rate: string, more: Readonly<Record<string, string>> = {}): Readonly<Record<string, string>> {
  return { resolution: 'uhd', rate, 'audio-out': 'off', ...more };
}

export function given(
  id: string,
  rate: string,
  value: number,
  standardUncertainty = 1,
  more: Partial<Session> & { readonly shared?: number } = {},
): GivenTotal {
  const { shared, ...rest } = more;
  return {
    session: session(id, rest.settings ?? settings(rate), rest),
    value,
    standardUncertainty,
    ...(shared === undefined ? {} : { shared }),
  };
}

/** As if the sessions had been estimated to these totals, on infinite degrees of freedom. */
export function compilationOf(
  totals: readonly GivenTotal[],
  more: Partial<Bench> = {},
  pairs: readonly CompiledPair[] = [],
): Compilation {
  const base = bench(
    totals.map((one) => one.session),
    more,
  );
  const whole: Bench = {
    ...base,
    settings: base.settings.map((setting) =>
      setting.id === 'rate' ? { ...setting, levels: RATES.map((id) => ({ id, label: id })) } : setting,
    ),
  };
  const find = lookup(whole);
  const byId = new Map(totals.map((one) => [one.session.id, one]));
  const totalOf = (id: string): GivenTotal => {
    const one = byId.get(id);
    if (one === undefined) throw new Error(`no session ${id}`);
    return one;
  };
  const compiled = (id: string): SessionFigures => {
    const total: Figure = {
      id: `total/${id}`,
      kind: 'total',
      of: { session: id },
      unit: 'ms',
      value: totalOf(id).value,
      readings: 10,
      runs: 2,
      excluded: 0,
      sources: [{ file: `data/sessions/${id}.csv`, sha256: '0'.repeat(64) }],
      text: `${totalOf(id).value} ms`,
      label: 'Total latency',
      entry: `/sessions/${id}/#total`,
    };
    return { session: totalOf(id).session, total, find, figures: [total], estimate: {} as SessionFigures['estimate'] };
  };
  return {
    bench: whole,
    find,
    sessions: totals.map((one) => compiled(one.session.id)),
    ratios: estimateRatios,
    likelihoods: runLikelihoods,
    pairs,
    session: compiled,
    budgetOf: (id) => {
      const {
        value,
        standardUncertainty,
        shared = 0,
        session: { rig },
      } = totalOf(id);
      return {
        value,
        components: [
          { name: 'between runs', standardUncertainty, degreesOfFreedom: Infinity, sharedKey: null },
          ...(shared > 0
            ? [
                {
                  name: 'observer row skew',
                  standardUncertainty: shared,
                  degreesOfFreedom: Infinity,
                  sharedKey: `rig:${rig}`,
                },
              ]
            : []),
        ],
      };
    },
  };
}

/** As if `display` had been read against another, and come out so much later. */
export function givenPair(
  id: string,
  display: string,
  against: string,
  value: number,
  standardUncertainty = 1,
): CompiledPair {
  const own = { name: 'repeatability', type: 'A', distribution: 'normal', degreesOfFreedom: Infinity, shared: null };
  const error = fromCdf(
    (x) => normalCdf(x, 0, standardUncertainty),
    8 * standardUncertainty,
    standardUncertainty / 100,
  );
  return {
    pair: { id, display, against, links: [], againstLinks: [], sourceTimer: { name: 'Laptop', refresh: rate(60) } },
    estimate: { value, error, components: [{ ...own, standardUncertainty, varianceShare: 1 }] },
    figure: { id: `display-difference/${id}`, readings: 16, runs: 4, excluded: 0, sources: [] },
  } as unknown as CompiledPair;
}

/** The figure of a kind, where there is one of it. */
export function figureOf(figures: readonly Figure[], id: string): Figure {
  const found = figures.find((figure) => figure.id === id);
  if (found === undefined) throw new Error(`no ${id} among ${figures.map((figure) => figure.id).join(', ')}`);
  return found;
}
