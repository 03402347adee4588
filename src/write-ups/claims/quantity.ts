import { parseDurationMs } from '../../ingest/quantities.ts';
import { findQuantities } from '../prose/find-quantities.ts';
import { valueOfShare } from '../prose/number-words.ts';

/** A number that a claim sets against a figure, as its author wrote it. */
export interface Quantity {
  /** `ratio`: a share or a multiple of the other; `1`: a plain number. */
  readonly unit: 'ms' | 'frames' | 'ratio' | '1';
  readonly value: number;
  readonly text: string;
}

const NUMBER = /^\d{1,9}(?:\.\d{1,9})?/;
/**
 * `100 ms`, `-4 ms`, `0.5 frames`, `half a frame`, `30 %`, `half`, `a third`, `twice`, `1.5 times`, `3`; undefined when
 * it is none of these.
 */
export function parseQuantity(written: string): Quantity | undefined {
  const text = written.trim().replace(/\s+/g, ' ');
  const sign = /^[-−]/.test(text) ? -1 : 1;
  const bare = text.replace(/^[-−]\s?/, '');
  const durationMs = parseDurationMs(bare);
  if (durationMs !== undefined) return { unit: 'ms', value: sign * durationMs, text };
  const [number] = NUMBER.exec(bare) ?? [];
  if (number === undefined) return inWords(text);
  switch (bare.slice(number.length).trim()) {
    case '':
      return { unit: '1', value: sign * Number(number), text };
    case 'frame':
    case 'frames':
      return { unit: 'frames', value: sign * Number(number), text };
    case '%':
      return { unit: 'ratio', value: (sign * Number(number)) / 100, text };
    case 'times':
    case '×':
      return { unit: 'ratio', value: sign * Number(number), text };
    default:
      return undefined;
  }
}

function inWords(text: string): Quantity | undefined {
  if (/^an?\sframe$/i.test(text)) return { unit: 'frames', value: 1, text };
  const share = valueOfShare(text);
  if (share !== undefined) return { unit: 'ratio', value: share, text };
  const [found] = findQuantities(text);
  if (found?.text !== text || found.unit === 'rate') return undefined;
  return { unit: found.unit, value: found.value, text };
}
