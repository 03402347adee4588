import type { Lookup } from './lookup.ts';
import { lowerFirst } from './traits.ts';

/** `59.94 frames/s`, `stabiliser on`, `UHD 3840 × 2160`: a level that says by itself what it is of stands alone. */
export function describeLevel(find: Lookup, setting: string, level: string): string {
  const label = find.level(setting, level);
  if (setting === 'rate') return `${label} frames/s`;
  const { label: name } = find.setting(setting);
  if (label.toLowerCase() === name.toLowerCase()) return lowerFirst(name);
  return /^(?:[A-Za-z]+|\d+)$/.test(label) ? `${lowerFirst(name)} ${lowerFirst(label)}` : label;
}

/** `Off → On`, `25 → 50 frames/s`. */
export function describeLevels(find: Lookup, setting: string, from: string, to: string): string {
  return `${find.level(setting, from)} → ${find.level(setting, to)}${setting === 'rate' ? ' frames/s' : ''}`;
}
