import type { SettingEffect } from '../../analysis/setting-effects.ts';
import { listWords } from '../comparisons/pair-words.ts';
import type { Lookup } from '../lookup.ts';
import { lowerFirst } from '../traits.ts';
import { INTERVAL_FACTOR, OTHER_FACTORS } from './settings-models.ts';

/** `on average over 25 and 59.94 frames/s`; empty where the effect depends on no other setting. */
export function describeOver(find: Lookup, over: SettingEffect['over']): string {
  const words = Object.entries(over).flatMap(([factor, levels]) => {
    if (factor in OTHER_FACTORS) return [];
    const setting = factor === INTERVAL_FACTOR ? 'rate' : factor;
    if (setting === 'rate') return [`${listWords(levels.map((level) => find.level('rate', level)))} frames/s`];
    const labels = listWords(levels.map((level) => lowerFirst(find.level(factor, level))));
    return [`${lowerFirst(find.setting(factor).label)} ${labels}`];
  });
  return words.length === 0 ? '' : `on average over ${words.join('; ')}`;
}
