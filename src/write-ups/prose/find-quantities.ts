/**
 * Quantities as a reader takes them: a time from nanoseconds to seconds, frames, a rate, a share, a multiple, in digits
 * or in words. Minutes and hours, lengths and temperatures are none: no latency is told in them.
 */
import { plainText } from './plain-text.ts';
import { FORMS, type QuantityRead } from './quantity-forms.ts';

/** Its value is without its sign. */
export interface QuantityFound extends QuantityRead {
  /** As written, on one line. */
  readonly text: string;
  /** Where it begins, and how far it reaches. */
  readonly index: number;
  readonly length: number;
}

/**
 * What `matchAll` gives, without a copy of the pattern for every text: that costs more than most texts take to read.
 */
function matchesOf(pattern: RegExp, text: string): readonly RegExpExecArray[] {
  const found: RegExpExecArray[] = [];
  pattern.lastIndex = 0;
  for (let match = pattern.exec(text); match !== null; match = pattern.exec(text)) {
    found.push(match);
    if (match[0] === '') pattern.lastIndex += 1;
  }
  return found;
}

/** In the order of the text; of those that overlap, the one that begins first. */
export function findQuantities(written: string): readonly QuantityFound[] {
  const { text, from } = plainText(written);
  const found = FORMS.flatMap(({ pattern, read }) =>
    matchesOf(pattern, text).flatMap((match) => {
      const quantity = read(match.groups ?? {}, match[0]);
      return quantity === undefined ? [] : [{ ...quantity, start: match.index, end: match.index + match[0].length }];
    }),
  ).sort((a, b) => a.start - b.start || b.end - a.end);
  let reached = 0;
  return found.flatMap(({ start, end, ...quantity }) => {
    if (start < reached) return [];
    reached = end;
    const [index = 0, last = 0] = [from[start], from[end]];
    const raw = written.slice(index, last);
    const lead = raw.length - raw.trimStart().length;
    return [{ ...quantity, text: raw.trim().replace(/\s+/g, ' '), index: index + lead, length: raw.trim().length }];
  });
}
