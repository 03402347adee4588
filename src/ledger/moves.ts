/** Whether a statement moved from one state to another, and what is said of it. */
import type { Move, Published } from '../model/ledger.ts';

const BETWEEN = '; ';

/** Where what a figure states besides was not recorded yet, it is not held to it. */
export function isSame(before: Published, now: Published): boolean {
  return (
    before.text === now.text &&
    before.value === now.value &&
    before.low === now.low &&
    before.high === now.high &&
    (before.also === undefined || before.also === now.also)
  );
}

/** Whether not one cell of the row is another. */
export function isSameRow(before: Published, now: Published): boolean {
  return isSame(before, now) && before.id === now.id && before.also === now.also && before.files === now.files;
}

/** In the published words; where these are the same, with what stands behind them. */
export function describeMove(before: Published, now: Published): Pick<Move, 'from' | 'to' | 'quiet'> {
  if (before.text !== now.text) return { from: before.text, to: now.text };
  return { from: describeBehind(before, now), to: describeBehind(now, before), quiet: 'behind' };
}

/** The digits that its text does not show, and of what it states besides what the other does not. */
function describeBehind(shown: Published, other: Published): string {
  const { text, value, low, high } = shown;
  const digits =
    value === other.value && low === other.low && high === other.high
      ? []
      : [`${value}${low === undefined && high === undefined ? '' : `, interval ${low} to ${high}`}`];
  const [own, others] = [partsOf(shown), new Set(partsOf(other))];
  const behind = [...digits, ...own.filter((part) => !others.has(part))];
  return behind.length === 0 ? text : `${text} (${behind.join(BETWEEN)})`;
}

/** What a figure states besides, joined to one text. */
export function joinParts(parts: readonly string[]): string {
  return parts.join(BETWEEN);
}

function partsOf({ also = '' }: Published): readonly string[] {
  return also === '' ? [] : also.split(BETWEEN);
}
