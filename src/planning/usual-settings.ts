/** Settings that nobody said for a session that is planned: as they usually are. */
import type { Bench } from '../model/bench.ts';
import { usualLevel, type ConditionToMeasure } from './planned-session.ts';

export interface CompletedCondition {
  readonly condition: ConditionToMeasure;
  /** Ids of the settings that were not said and are as in most measured sessions. */
  readonly asUsual: readonly string[];
  /** Ids of those that no measured session states either. */
  readonly unstated: readonly string[];
}

/**
 * With the levels that most measured sessions of this body on this rig have; of any body there, where it has none yet.
 */
export function completeSettings(
  { settings, sessions }: Bench,
  rig: string,
  body: string,
  condition: ConditionToMeasure,
): CompletedCondition {
  const onRig = sessions.filter((session) => session.rig === rig);
  const own = onRig.filter((session) => session.body === body);
  const measured = own.length > 0 ? own : onRig;
  const unsaid = settings.filter(({ id }) => condition.settings[id] === undefined);
  const asUsual = unsaid.filter(({ id }) => usualLevel(measured, id) !== undefined).map(({ id }) => id);
  const levels = settings.flatMap(({ id }) => {
    const level = condition.settings[id] ?? usualLevel(measured, id);
    return level === undefined ? [] : [[id, level] as const];
  });
  return {
    condition: { ...condition, settings: Object.fromEntries(levels) },
    asUsual,
    unstated: unsaid.map(({ id }) => id).filter((id) => !asUsual.includes(id)),
  };
}
