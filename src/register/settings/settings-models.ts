/** For each body on each rig: its sessions' totals as a weighted linear model of what was set. */
import type { Factor, Term } from '../../analysis/design-matrix.ts';
import {
  fitSettings,
  type NoSettingsFit,
  type SettingsFit,
  type SettingsObservation,
} from '../../analysis/settings-model.ts';
import { proposeTerms } from '../../analysis/settings-terms.ts';
import type { Setting } from '../../model/bench.ts';
import { intervalMs, parseRate } from '../../model/rate.ts';
import type { Weighed } from '../../analysis/linear-contrast.ts';
import type { Compilation } from '../compilation.ts';
import type { SessionFigures } from '../session-figures.ts';
import { weighed } from '../split-budget.ts';

export interface SettingsModel {
  readonly body: string;
  readonly rig: string;
  /** The sessions that entered. */
  readonly sessions: readonly SessionFigures[];
  /** Those that could not: all their readings are equal, so they have no weight. */
  readonly without: readonly SessionFigures[];
  readonly fit: SettingsFit | NoSettingsFit;
}

/** Factors that are no settings of the bench, and so start with a sign that no setting's name can have. */
export const OTHER_FACTORS: Readonly<Record<string, string>> = {
  '+firmware': 'firmware',
  '+links': 'links',
  '+display': 'display',
  '+method': 'way of reading',
};

/** The frame interval as a number: it enters interactions only, the levels of the rate being terms of their own. */
export const INTERVAL_FACTOR = '+interval';

/**
 * One model per body and rig with two sessions or more. Firmware, links, display and way of reading enter as factors of
 * their own where they vary, so that what they do is not laid to a setting. What all sessions of a rig share is left
 * out of the weights, because it cancels in every effect.
 */
export function settingsModels({ bench, sessions, budgetOf }: Compilation): readonly SettingsModel[] {
  const groups = Map.groupBy(sessions, ({ session: { body, rig } }) => JSON.stringify([body, rig]));
  return [...groups.values()].flatMap((all): readonly SettingsModel[] => {
    const [first] = all;
    if (first === undefined || all.length < 2) return [];
    const { body, rig } = first.session;
    const each = all.map((compiled) => ({
      compiled,
      observation: observe(compiled, weighed(budgetOf(compiled.session.id))),
    }));
    const used = each.filter(({ observation }) => observation.standardUncertainty > 0);
    const without = each.filter(({ observation }) => observation.standardUncertainty === 0);
    const observations = used.map(({ observation }) => observation);
    const factors = factorsOf(bench.settings, observations);
    const interactions = withInterval(factors, observations);
    // Where nothing but the rate varies, the frame interval has nothing to interact with.
    const usable = interactions.length > 0 ? factors : factors.filter(({ id }) => id !== INTERVAL_FACTOR);
    const terms = proposeTerms(
      observations.map(({ condition }) => condition),
      usable,
      1,
      interactions,
    );
    return [
      {
        body,
        rig,
        sessions: used.map(({ compiled }) => compiled),
        without: without.map(({ compiled }) => compiled),
        fit: fitSettings(observations, usable, terms, { scale: 'stated' }),
      },
    ];
  });
}

function observe({ session, estimate }: SessionFigures, weight: Weighed): SettingsObservation {
  return {
    condition: {
      ...session.settings,
      [INTERVAL_FACTOR]: session.settings['rate'] ?? '',
      '+firmware': session.firmware ?? 'not stated',
      '+links': session.links.join(' ') || 'none',
      '+display': session.display,
      '+method': session.method,
    },
    value: estimate.value,
    ...weight,
  };
}

/** Settings that every session states, as declared; a rate is ordered, since latency need not be linear in it. */
function factorsOf(settings: readonly Setting[], observations: readonly SettingsObservation[]): readonly Factor[] {
  const stated = settings.filter(({ id }) => observations.every(({ condition }) => condition[id] !== undefined));
  return [
    ...stated.map(
      ({ id, kind, levels }): Factor => ({
        id,
        kind: kind === 'rate' ? 'ordered' : kind,
        levels: levels.map((level) => level.id),
        ...(kind === 'numeric' ? { numbers: levels.map((level) => Number(level.id)) } : {}),
      }),
    ),
    ...settings
      .filter(({ kind }) => kind === 'rate')
      .map(
        ({ levels }): Factor => ({
          id: INTERVAL_FACTOR,
          kind: 'numeric',
          levels: levels.map((level) => level.id),
          numbers: levels.map((level) => rateIntervalMs(level.id)),
        }),
      ),
    ...Object.keys(OTHER_FACTORS).map(
      (id): Factor => ({
        id,
        kind: 'unordered',
        levels: [...new Set(observations.map(({ condition }) => condition[id] ?? ''))].sort(),
      }),
    ),
  ];
}

/**
 * Sound that waits for whole frames costs more the longer a frame is: each setting that varies, times the frame
 * interval.
 */
function withInterval(factors: readonly Factor[], observations: readonly SettingsObservation[]): readonly Term[] {
  const varies = (id: string): boolean => new Set(observations.map(({ condition }) => condition[id])).size > 1;
  return factors
    .filter(({ id }) => id !== 'rate' && id !== INTERVAL_FACTOR && varies(id) && varies('rate'))
    .map(({ id }): Term => [id, INTERVAL_FACTOR]);
}

/** Of a rate as authors write it. */
export function rateIntervalMs(level: string): number {
  const rate = parseRate(level);
  if (rate === undefined) throw new RangeError(`'${level}' is no rate`);
  return intervalMs(rate);
}
