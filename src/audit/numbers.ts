import { bare } from '../verify/html.ts';
import { findQuantities } from '../write-ups/prose/find-quantities.ts';
import { DIGITS, valueOfNumber } from '../write-ups/prose/number-words.ts';

/** A number with a unit on a page. */
export interface PrintedNumber {
  /** With the value before a half-width, and the first end of a range: `163.4 ± 4.6 ms`, `159 to 168 ms`. */
  readonly text: string;
  readonly index: number;
  /** Of a quantity as write-ups know them; `other`: of another unit, or of that in the head of its column. */
  readonly unit: string;
  readonly value: number;
  readonly rate?: string;
}

/** Units of which no latency is told, so that a write-up may type them, and pages still say where they are from. */
const OTHER = new RegExp(`${DIGITS}\\s?(?:min|minutes?|h|hours?|°C|ppm|bytes|[KM]iB)\\b`, 'gu');
const PLUS_MINUS = /±\s?\d[\d.,]*/gu;
const BARE = new RegExp(DIGITS, 'gu');
const BEFORE = /(?:[−+-]?\d[\d.,]*(?:\s(?:to|and)\s|\s?[–±]\s?))+$/u;
const HALF_WIDTH = /[−+-]?\d[\d.,]*\s?$/u;
/** The level of coverage and that of a test are conventions, which pages state in these words. */
const CONVENTION = /^(?:95|5)\s%$/u;

/** Pages repeat most of what they say: so many texts are known at a time, none of them long. */
const KNOWN = { texts: 100_000, characters: 300 };
const known = new Map<string, readonly PrintedNumber[]>();

/** In the order of the text. In a column with a unit in its head, every number has that unit. */
export function printedNumbers(text: string, unit = ''): readonly PrintedNumber[] {
  if (text.length > KNOWN.characters) return readNumbers(text, unit);
  const key = `${unit}\n${text}`;
  const found = known.get(key) ?? readNumbers(text, unit);
  if (known.size >= KNOWN.texts) known.clear();
  known.set(key, found);
  return found;
}

function readNumbers(text: string, unit: string): readonly PrintedNumber[] {
  const quantities = findQuantities(text);
  const isFree = ({ index }: { readonly index: number }): boolean =>
    !quantities.some((each) => index >= each.index && index < each.index + each.length);
  const more = [OTHER, PLUS_MINUS, ...(unit === '' ? [] : [BARE])].flatMap((pattern) =>
    [...text.matchAll(pattern)].filter(isFree).map(({ 0: found, index }) => ({
      text: found,
      index,
      length: found.length,
      unit: 'other',
      value: valueOfNumber(/^[±+−-]?\s?\d[\d.,]*/u.exec(found)?.[0] ?? '') ?? Number.NaN,
    })),
  );
  return [...quantities.filter((each) => !CONVENTION.test(each.text)), ...more]
    .sort((a, b) => a.index - b.index)
    .map(({ index, length, ...number }) => {
      const before = text.slice(0, index);
      const value = text[index] === '±' ? (HALF_WIDTH.exec(before)?.[0].length ?? 0) : 0;
      const start = index - value - (BEFORE.exec(before.slice(0, before.length - value))?.[0].length ?? 0);
      return { ...number, index: start, text: bare(text.slice(start, index + length)) };
    });
}
