/** What the commands that plan sessions take, from text to values. */
import { planRig, type PlannedCondition, type Planning, type Wanted } from '../planning/plan-rig.ts';
import type { ConditionToMeasure } from '../planning/planned-session.ts';
import { findLevel } from '../ingest/settings.ts';
import { nearest } from '../ingest/nearest.ts';
import { parseDurationMs } from '../ingest/quantities.ts';
import type { Bench, Rig, Setting } from '../model/bench.ts';
import { parseRate } from '../model/rate.ts';
import { CallError, type CommandOptions } from './run.ts';

export const WANTED_OPTIONS = {
  'half-width': { type: 'string' },
  difference: { type: 'string' },
  power: { type: 'string' },
} as const;

export const WANTED_USAGE = `  --half-width MS      plan for an interval of ± this much; without either, what ever more
                       readings give is shown, and what to take
  --difference MS      plan to see a difference of this size between two such sessions
  --power SHARE        … in this share of cases (0.8)`;

const USUAL_POWER = 0.8;

/** Undefined where nothing particular is wanted. */
export function readWanted(options: CommandOptions<typeof WANTED_OPTIONS>): Wanted | undefined {
  const [halfWidth, difference, power] = [options['half-width'], options['difference'], options['power']];
  if (halfWidth !== undefined && difference !== undefined)
    throw new CallError('Give --half-width or --difference, not both: they plan for different things.');
  if (difference === undefined) {
    if (power !== undefined)
      throw new CallError('--power goes with --difference: it is the share of cases in which the difference is seen.');
    return halfWidth === undefined ? undefined : { kind: 'half-width', halfWidthMs: duration('half-width', halfWidth) };
  }
  const share = power === undefined ? USUAL_POWER : Number(power);
  if (!(share > 0 && share < 1))
    throw new CallError(`--power is a share between 0 and 1, such as 0.8, not '${power}'.`);
  return { kind: 'difference', differenceMs: duration('difference', difference), power: share };
}

export function rigOf(bench: Bench, id: string | undefined): Rig {
  return choose('rig', id, bench.rigs);
}

/** One of a list by id, or an error that names the nearest. */
export function choose<T extends { readonly id: string }>(
  option: string,
  id: string | undefined,
  list: readonly T[],
  noun = option,
): T {
  const ids = list.map((item) => item.id);
  if (id === undefined)
    throw new CallError(`Say which: --${option} ${ids.join(' | ') || `…; there is no ${noun} yet`}`);
  const found = list.find((item) => item.id === id);
  if (found === undefined)
    throw new CallError(
      `There is no ${noun} '${id}'; ${meant(id, ids) ?? (ids.length === 0 ? 'there is none yet.' : `there is ${ids.join(', ')}.`)}`,
    );
  return found;
}

/** Every combination of the levels given: rates first, then settings in the order of `data/settings.yaml`. */
export function conditionsOf(
  bench: Bench,
  rates: string | undefined,
  sets: readonly string[] = [],
): readonly ConditionToMeasure[] {
  if (rates === undefined) throw new CallError('Say at which frame rate: --rate 59.94');
  const given = new Map<string, readonly string[]>([['rate', rates.split(',')], ...sets.map(parseSet)]);
  for (const name of given.keys()) choose('set', name, bench.settings, 'setting');
  const chosen = bench.settings.flatMap((setting) => {
    const levels = given.get(setting.id);
    return levels === undefined
      ? []
      : [{ id: setting.id, levels: levels.map((level) => levelOf(setting, level.trim())) }];
  });
  const combinations = chosen.reduce<readonly Record<string, string>[]>(
    (all, { id, levels }) => all.flatMap((settings) => levels.map((level) => ({ ...settings, [id]: level }))),
    [{}],
  );
  return combinations.map((settings) => {
    const rate = parseRate(settings['rate'] ?? '');
    if (rate === undefined)
      throw new CallError(`'${settings['rate']}' is no frame rate; write 24, 23.976, 24000/1001 or 59.94p.`);
    return { settings, rate };
  });
}

export function planConditions(
  planning: Planning,
  conditions: readonly ConditionToMeasure[],
): readonly PlannedCondition[] {
  return conditions.map((condition) => ({ condition, ...planRig(planning, condition.rate) }));
}

function parseSet(text: string): readonly [string, readonly string[]] {
  const [name = '', levels = ''] = text.split('=');
  if (levels === '') throw new CallError(`--set takes a setting and its level: --set output=uhd, not '${text}'.`);
  return [name.trim(), levels.split(',')];
}

function levelOf(setting: Setting, text: string): string {
  const level = findLevel(setting, text);
  const ids = setting.levels.map(({ id }) => id);
  if (level === undefined)
    throw new CallError(
      `'${text}' is no level of ${setting.id} in data/settings.yaml; it has ${[ids.join(', '), meant(text, ids) ?? ''].filter(Boolean).join('; ')}`,
    );
  return level.id;
}

function duration(option: string, text: string): number {
  const ms = parseDurationMs(/^[\d.]+$/.test(text) ? `${text} ms` : text);
  if (ms === undefined || ms <= 0)
    throw new CallError(`--${option} is a duration above zero, such as "5 ms", not '${text}'.`);
  return ms;
}

function meant(found: string, choices: readonly string[]): string | undefined {
  const near = nearest(found, choices);
  return near.length > 0 ? `did you mean ${near.join(', ')}?` : undefined;
}
