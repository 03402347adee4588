/**
 * Numbers as people write them: `1.5`, `1,500`, `1/3`, `7 1/2`, `three hundred`, `two and a half`, `seven point four`.
 */

const UP_TO_NINETEEN =
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen'.split(
    ' ',
  );
const TENS = 'twenty thirty forty fifty sixty seventy eighty ninety'.split(' ');
const VALUES: Readonly<Record<string, number>> = Object.fromEntries([
  ...UP_TO_NINETEEN.map((word, value) => [word, value] as const),
  ...TENS.map((word, index) => [word, 20 + 10 * index] as const),
]);
const SCALES: Readonly<Record<string, number>> = { dozen: 12, score: 20, hundred: 100, thousand: 1000, million: 1e6 };
const PARTS: Readonly<Record<string, number>> = {
  half: 2,
  halve: 2,
  quarter: 4,
  third: 3,
  fourth: 4,
  fifth: 5,
  sixth: 6,
  seventh: 7,
  eighth: 8,
  ninth: 9,
  tenth: 10,
  twelfth: 12,
  twentieth: 20,
  hundredth: 100,
  thousandth: 1000,
};

/** A number below twenty, or a ten, in one word. */
export const ONE = `(?:${[...UP_TO_NINETEEN, ...TENS].join('|')})`;
/** A score by itself is a result of a game. */
const SCALE = `(?:dozen|(?<=(?:${ONE}|\\ban?)[\\s-])score|hundred|thousand|million)`;
const COUNTED = `(?:${ONE}|${SCALE})(?:(?:[\\s-]|(?<=hundred|thousand|score)\\sand\\s)(?:${ONE}|${SCALE}))*`;

/** `half`, `a third`, `two thirds`, `three-quarters`. */
export const FRACTION = `(?:\\bhalf|\\b(?:(?:an?|${ONE})[\\s-])(?:${Object.keys(PARTS).slice(2).join('|')})s?|\\b(?:an?|one)\\shalf)\\b`;
const MULTIPLES: Readonly<Record<string, number>> = { twice: 2, double: 2, thrice: 3, triple: 3 };
/** `twice`, `a third`. */
export const SHARE = `(?:\\b(?:${Object.keys(MULTIPLES).join('|')})\\b|${FRACTION})`;
/** In digits: no part of a word, a date, a clock time, a version or another number. */
export const DIGITS = "(?<![\\w.,:/])(?:[±+−-]\\s?)?\\d+(?:[.,']\\d+)*(?:\\s\\d{1,3}\\/\\d{1,3}|\\s?\\/\\s?\\d+)?";
/** In words. */
export const WORDS = `\\b(?:(?:an?\\s)?couple(?:\\sof)?|(?:an?\\s(?=${SCALE}))?(?:half\\sa\\s(?=dozen))?${COUNTED}(?:\\spoint(?:[\\s-]${ONE})+)?)\\b(?:\\sand\\s(?:${FRACTION}))?`;
export const NUMBER = `(?:${DIGITS}|${WORDS})`;

/** The value of what one of these patterns found; undefined for anything else. */
export function valueOfNumber(written: string): number | undefined {
  const text = written
    .toLowerCase()
    .trim()
    .replace(/-/g, /\d/.test(written) ? '-' : ' ');
  return /\d/.test(text) ? ofDigits(text) : ofWords(text);
}

const ROMAN: Readonly<Record<string, number>> = { I: 1, V: 5, X: 10, L: 50, C: 100, D: 500, M: 1000 };

/** The value of a Roman numeral in capitals; undefined for any other word of its letters. */
export function ofRoman(written: string): number | undefined {
  if (!/^M{0,3}(?:CM|CD|D?C{0,3})(?:XC|XL|L?X{0,3})(?:IX|IV|V?I{0,3})$/.test(written)) return undefined;
  const values = [...written].map((letter) => ROMAN[letter] ?? 0);
  return values.reduce((sum, value, at) => sum + (value < (values[at + 1] ?? 0) ? -value : value), 0);
}

/** The value of what `SHARE` found. */
export function valueOfShare(written: string): number | undefined {
  return MULTIPLES[written.toLowerCase()] ?? ofFraction(written.toLowerCase().replace('-', ' '));
}

function ofDigits(text: string): number | undefined {
  const [, sign = '', whole = '', mixed, divisor] =
    /^([±+−-])?\s?(\d+(?:[.,']\d+)*)(?:\s(\d+\/\d+)|\s?\/\s?(\d+))?$/.exec(text) ?? [];
  if (whole === '') return undefined;
  const plain = /^\d{1,3}(?:[,']\d{3})+(?:\.\d+)?$/.test(whole) ? whole.replace(/[,']/g, '') : whole.replace(',', '.');
  const [above = 0, below = 1] = (mixed ?? '').split('/').filter(Boolean).map(Number);
  const value = (Number(plain) + above / below) / Number(divisor ?? 1);
  return Number.isFinite(value) ? (sign === '-' || sign === '−' ? -value : value) : undefined;
}

function ofWords(text: string): number | undefined {
  const [counted = '', rest] = text.split(
    / and (?=(?:half|(?:an?|one|two|three) (?:half|third|quarter|fourth|fifth))\b)/,
  );
  const fraction = ofFraction(counted);
  if (fraction !== undefined) return fraction;
  const [whole = '', decimals] = counted.split(' point ');
  const value = ofCounted(whole);
  if (value === undefined) return undefined;
  const behind = (decimals ?? '')
    .split(' ')
    .filter(Boolean)
    .map((word) => VALUES[word] ?? 0);
  const exact = behind.length === 0 ? value : Number(`${value}.${behind.join('')}`);
  return exact + (rest === undefined ? 0 : (ofFraction(rest) ?? 0));
}

function ofCounted(text: string): number | undefined {
  if (/couple/.test(text)) return 2;
  const half = text.startsWith('half a ') ? 0.5 : 1;
  const words = text
    .replace(/^half /, '')
    .split(' ')
    .filter((word) => word !== 'and' && word !== 'a' && word !== 'an');
  let [total, group] = [0, 0];
  for (const word of words) {
    const [value, scale] = [VALUES[word], SCALES[word]];
    if (scale !== undefined) {
      group = Math.max(1, group) * scale;
      if (scale >= 1000) [total, group] = [total + group, 0];
    } else if (value !== undefined) group += value;
    else return undefined;
  }
  return words.length === 0 ? undefined : half * (total + group);
}

function ofFraction(text: string): number | undefined {
  const [, count = '', part = ''] = /^(?:(\w+) )?(\w+?)s?$/.exec(text) ?? [];
  const parts = PARTS[part];
  // a third by itself is an ordinal
  const value = /^an?$/.test(count) || (count === '' && parts === 2) ? 1 : VALUES[count];
  return parts === undefined || value === undefined ? undefined : value / parts;
}
