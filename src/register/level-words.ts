import type { Lookup } from './lookup.ts';
import { lowerFirst } from './traits.ts';

/** `59.94 frames/s`, `stabiliser on`, `UHD 3840 × 2160`: a level that says by itself what it is of stands alone. */
export function describeLevel(find: Lookup, setting: string, level: string): string {
  const label = find.level(setting, level);
  if (setting === 'rate') return `${label} frames/s`;
  const { label: name } = find.setting(setting);
  if (label.toLowerCase() === name.toLowerCase()) return lowerFirst(name);
  return /^(?:[A-Za-z]+(?:-[a-z]+)*|\d+)$/.test(label) ? `${lowerFirst(name)} ${lowerFirst(label)}` : label;
}

/**
 * `with noise reduction 3 rather than noise reduction 0`: at which level of another setting a step is set against
 * which.
 */
export function describeAt(find: Lookup, setting: string, to: string, from: string): string {
  return `with ${describeLevel(find, setting, to)} rather than ${describeLevel(find, setting, from)}`;
}

/** `Off → On`, `25 → 50 frames/s`. */
export function describeLevels(find: Lookup, setting: string, from: string, to: string): string {
  return `${find.level(setting, from)} → ${find.level(setting, to)}${setting === 'rate' ? ' frames/s' : ''}`;
}
