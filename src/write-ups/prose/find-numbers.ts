/** Numbers in prose that read like results: a value with a unit of latency, a share, a ratio. */

export interface NumberFound {
  readonly text: string;
  /** Where it begins. */
  readonly index: number;
  /** The number of a rate, `59.94`, where that is what it is. */
  readonly rate?: string;
}

/** No part of a word, a date, a fraction, a version or another number; a range's second end counts as a number of its own. */
const NUMBER = '(?<![\\w.,:/])[±+−-]?\\s?\\d+(?:[.,]\\d+)*';

/** What has to stand after it. Seconds with decimals are results; whole ones say how long something was done. */
const UNITS = [
  '[\\s-]?(?:ms|[µμ]s|milliseconds?|microseconds?)\\b',
  '[\\s-]?(?:%|per ?cent\\b)',
  '\\s?×(?!\\s*\\d)',
  '\\stimes(?=\\s(?:as|the|slower|faster|longer|shorter|lower|higher|later|more|less)\\b)',
  '[\\s-]frames?\\b(?!\\s?(?:/\\s?s|(?:a|per)\\ssecond)\\b)',
] as const;
const RATE = '\\s?(?:fps|Hz)\\b|\\sframes?\\s?(?:/\\s?s|(?:a|per)\\ssecond)\\b';
const DECIMAL_SECONDS = '(?<![\\w.,:/])\\d+\\.\\d+\\s?(?:s|seconds?)\\b';
const FACTOR = '\\b(?:factor|ratio) of\\s\\d+(?:\\.\\d+)?';

const PATTERN = new RegExp(
  `(?<result>(?:${NUMBER})(?:${UNITS.join('|')})|${DECIMAL_SECONDS}|${FACTOR})|(?<rate>${NUMBER})(?:${RATE})`,
  'gu',
);

/** In the order of the text. */
export function findNumbers(text: string): readonly NumberFound[] {
  return [...text.matchAll(PATTERN)].map(({ 0: found, index, groups }) => ({
    text: found.replace(/\s+/g, ' ').trim(),
    index: index + (found.length - found.trimStart().length),
    ...(groups?.['rate'] === undefined ? {} : { rate: groups['rate'].trim() }),
  }));
}
