import type { FactorLevels } from './design-matrix.ts';
import { compareText } from '../model/compare-text.ts';

export interface PairCandidate {
  readonly id: string;
  /** Everything but settings that must be the same: body, firmware, rig, links, display, method. */
  readonly context: string;
  readonly settings: FactorLevels;
}

export interface MatchedPair {
  readonly setting: string;
  readonly from: string;
  readonly to: string;
  readonly fromId: string;
  readonly toId: string;
}

/** Ids of the settings in which two conditions differ, sorted; one that only one of them states differs. */
export function differingSettings(a: FactorLevels, b: FactorLevels): string[] {
  const ids = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...ids].filter((id) => a[id] !== b[id]).sort();
}

/**
 * Pairs of sessions that differ in exactly one setting and in nothing else: the first, simplest answer to "which
 * setting matters". `from` is the level declared first. A setting that one of the two does not state makes no pair.
 *
 * Sorted by setting, then levels as declared, then ids. `levelOrder` holds the declared levels by setting.
 */
export function findMatchedPairs(
  sessions: readonly PairCandidate[],
  levelOrder: Readonly<Record<string, readonly string[]>>,
): MatchedPair[] {
  const orderOf = (setting: string, level: string): number => {
    const index = levelOrder[setting]?.indexOf(level) ?? -1;
    if (index < 0) throw new RangeError(`'${level}' is no declared level of '${setting}'`);
    return index;
  };
  const pairs: MatchedPair[] = [];
  sessions.forEach((a, i) => {
    for (const b of sessions.slice(i + 1)) {
      if (a.context !== b.context) continue;
      const [setting, ...more] = differingSettings(a.settings, b.settings);
      if (setting === undefined || more.length > 0) continue;
      const [levelA, levelB] = [a.settings[setting], b.settings[setting]];
      if (levelA === undefined || levelB === undefined) continue;
      const aFirst = orderOf(setting, levelA) < orderOf(setting, levelB);
      pairs.push(
        aFirst
          ? { setting, from: levelA, to: levelB, fromId: a.id, toId: b.id }
          : { setting, from: levelB, to: levelA, fromId: b.id, toId: a.id },
      );
    }
  });
  return pairs.sort(
    (x, y) =>
      compareText(x.setting, y.setting) ||
      orderOf(x.setting, x.from) - orderOf(x.setting, y.from) ||
      orderOf(x.setting, x.to) - orderOf(x.setting, y.to) ||
      compareText(x.fromId, y.fromId) ||
      compareText(x.toId, y.toId),
  );
}
