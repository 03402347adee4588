/**
 * What tells a size without a number of its own: an amount that is left vague (`a few frames`), and what changes the
 * figure that stands beside it (`half of` a figure, a digit or a sign before it, a unit or a power behind it).
 */
import { NO_PROSE } from '../../ingest/prose.ts';
import { FRACTION, NUMBER, SHARE } from './number-words.ts';
import { plainText } from './plain-text.ts';

export interface LooseQuantity {
  /** As written, with `…` for a figure. */
  readonly text: string;
  /** Where it begins. */
  readonly index: number;
}

const UNIT = '(?:ms|milliseconds?|microseconds?|seconds?|frames?|fps|hz|hertz|per\\s?cent)\\b|%';
const AMOUNT =
  '(?:an?\\s)?(?:good\\s|mere\\s)?(?:few|several|handful\\sof|dozens?\\sof|scores?\\sof|tens\\sof|hundreds\\sof|thousands\\sof)';
const ADJECTIVES = '(?:(?:whole|full|more|extra|further|other|video|camera)\\s){0,2}';
/** Between what multiplies a figure and the figure. */
const OF = '(?:\\sof)?(?:\\s(?:the|its|that|their))?';

const PATTERNS: readonly RegExp[] = [
  // a few frames, several milliseconds; not seconds, in which clips and waits are told
  `\\b${AMOUNT}\\s${ADJECTIVES}(?:frames|ms|milliseconds)\\b`,
  // 1…, 0.…, −…: not the dash of a range
  `\\d[.,]?${NO_PROSE}`,
  `(?<=^|[\\s([])[−–-]${NO_PROSE}`,
  // twice …, a third of the …, 3 times …, 2/…
  `${SHARE}${OF}\\s${NO_PROSE}`,
  `${NUMBER}\\s?(?:times|[×·*/÷])${OF}\\s?${NO_PROSE}`,
  // …00, …e3, …/2, … × 2, …², … divided by two, … and a half
  `${NO_PROSE}\\d`,
  `${NO_PROSE}e[+−-]?\\d`,
  `${NO_PROSE}\\s?(?:[×·*/÷^x]|\\*\\*)\\s?\\d`,
  `${NO_PROSE}\\s(?:(?:times|over|divided\\sby|multiplied\\sby)\\s${NUMBER}|halved|doubled|tripled)`,
  `${NO_PROSE}\\sand\\s${FRACTION}`,
  // a unit of its own: what is asked for brings its unit
  `${NO_PROSE}\\s?(?:${UNIT})`,
].map((pattern) => new RegExp(pattern, 'giu'));

/** In the order of the text. */
export function findLooseQuantities(written: string): readonly LooseQuantity[] {
  const { text, from } = plainText(written);
  return PATTERNS.flatMap((pattern) => [...text.matchAll(pattern)])
    .map((match) => ({
      text: written
        .slice(from[match.index], from[match.index + match[0].length])
        .replaceAll(NO_PROSE, '…')
        .replace(/\s+/g, ' ')
        .trim(),
      index: from[match.index] ?? 0,
    }))
    .sort((a, b) => a.index - b.index);
}
