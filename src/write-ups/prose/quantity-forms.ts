/** The forms in which people write quantities, each a pattern and what it says. */
import { parseRate, rateHz } from '../../model/rate.ts';
import { DIGITS, FRACTION, NUMBER, ofRoman, ONE, SHARE, valueOfNumber, valueOfShare, WORDS } from './number-words.ts';

/** `ratio`: a share or a multiple of something else; a `rate` is in Hz, its number as written. */
export interface QuantityRead {
  readonly unit: 'ms' | 'frames' | 'ratio' | 'rate';
  readonly value: number;
  readonly rate?: string;
}

interface Form {
  readonly pattern: RegExp;
  /** Undefined where it is no quantity after all. */
  readonly read: (groups: Readonly<Record<string, string | undefined>>, found: string) => QuantityRead | undefined;
}

/** Milliseconds per unit, by how the unit begins. */
const TIMES: readonly (readonly [RegExp, number])[] = [
  [/^(?:ms|milli)/i, 1],
  [/^(?:[μu]s|micro|usec)/i, 1e-3],
  [/^(?:ns|nano)/i, 1e-6],
  [/^s/i, 1000],
];
const SECOND_IS_A_UNIT = 'milli-?seconds?|micro-?seconds?|nano-?seconds?|seconds|secs?';
const SHORT_TIMES = 'ms|msecs?|millis|millisecs?|μs|us|usecs?|ns|s';
/** As other languages call them; in digits only, since their number words are not known. */
const OTHER_WORDS = 'millise[ckg]\\w*|millisek\\w*|milisegundos?|milisekund\\w*|milli[eè]mes?|mc|mиллиceкунд\\p{L}*';
const OTHER_SECONDS = 'sekunde?r?n?|secondes?|segundos?|secondi|sekunder';
/** What may stand between a number and what it counts. */
const ADJECTIVES =
  '(?:(?:whole|full|entire|video|camera|observer|body|display|more|extra|additional|further|other|own|late|of (?:its|the|their)(?: own)?)\\s){0,3}';
const PER_SECOND = '(?:\\s?\\/\\s?s\\b|\\s(?:a|per|each|every)\\s(?:single\\s)?second\\b)';
const FRAMES = `frames?\\b(?!\\s?${PER_SECOND}|\\s(?:per|intervals?)\\b)`;
/** Compared latencies. */
const SLOWER =
  '(?:slower|faster|longer|shorter|lower|higher|later|sooner|earlier|quicker|laggier|less|more|smaller|larger|bigger|greater)';
const AS_SLOW =
  'as\\s(?:slow|fast|long|late|much|high|low|great|big|large|laggy|quick|short|early|small|good|bad|soon)(?:ly)?\\b';
const LATENCY = '(?:lag|lags|latency|latencies|delays?|total|totals|wait)\\b';
const LATE = '(?:late|later|behind|slower|faster|sooner|earlier|early|ahead|of\\s(?:lag|delay|latency))\\b';
const MULTIPLE = `${SHARE}(?:\\sof)?`;
const BESIDE = "(?:(?!hours?\\b|minutes?\\b)[\\w'-]+\\s){0,3}?";

const ms = (value: number | undefined, unit: string): QuantityRead | undefined => {
  const factor = TIMES.find(([begins]) => begins.test(unit))?.[1];
  return value === undefined || factor === undefined ? undefined : { unit: 'ms', value: Math.abs(value) * factor };
};
const of = (unit: 'frames' | 'ratio', value: number | undefined): QuantityRead | undefined =>
  value === undefined ? undefined : { unit, value: Math.abs(value) };
const ofUnit = (value: number | undefined, unit: string): QuantityRead | undefined =>
  /^frame/i.test(unit) ? of('frames', value) : ms(value, unit);
const multiple = (text: string): number | undefined => valueOfShare(text.replace(/\sof$/i, ''));
const VERBS: Readonly<Record<string, number>> = { halv: 0.5, doubl: 2, tripl: 3 };
const form = (pattern: string, read: Form['read']): Form => ({ pattern: new RegExp(pattern, 'giu'), read });

/** The first of two that begin at one place is taken where both are as long. */
export const FORMS: readonly Form[] = [
  // 59.94 Hz, 25 frames a second, 60 times a second
  form(
    `(?<n>${NUMBER})(?:\\s?(?<k>k)?(?:fps|hz|hertz)\\b|[\\s-]?(?:frames?|times|pictures)${PER_SECOND})`,
    ({ n = '', k }) => {
      const rate = parseRate(n);
      const value = rate === undefined ? valueOfNumber(n) : rateHz(rate);
      return value === undefined
        ? undefined
        : { unit: 'rate', value: value * (k ? 1000 : 1), rate: k || !rate ? String(value * (k ? 1000 : 1)) : n };
    },
  ),
  // 300 ms, 1/3 s, 0.3 seconds, 5-ms; the sixties are no seconds
  form(
    `(?<!\\bthe\\s)(?<n>${DIGITS})(?:[\\s-]|[.,](?=m))?[([]?(?<u>${SHORT_TIMES}|${SECOND_IS_A_UNIT}|second)\\b`,
    ({ n = '', u = '' }, found) =>
      (u === 'US' && /^U/.test(u)) || /^\d{4}s$/.test(found) ? undefined : ms(valueOfNumber(n), u),
  ),
  form(`\\bthe\\s(?<n>${DIGITS})[\\s-]?(?<u>${SECOND_IS_A_UNIT}|msecs?|ms|μs|(?<=\\s)s)\\b`, ({ n = '', u = '' }) =>
    ms(valueOfNumber(n), u),
  ),
  // 300 Millisekunden, 300 м.с., 300 m.s.; ms 300; 0.3 of a second
  form(`(?<n>${DIGITS})\\s?(?:${OTHER_WORDS}|m[.\\s]\\s?s\\b)`, ({ n = '' }) => ms(valueOfNumber(n), 'ms')),
  form(`(?<n>${DIGITS})\\s?(?:${OTHER_SECONDS})\\b`, ({ n = '' }) => ms(valueOfNumber(n), 's')),
  form(`(?<![\\d]\\s?)\\bms\\s(?<n>${DIGITS})(?!\\s?\\p{L}+s\\b)`, ({ n = '' }) => ms(valueOfNumber(n), 'ms')),
  form(`(?<n>${DIGITS})\\sof\\s(?:an?|one)\\s(?<u>second|frame|millisecond)\\b`, ({ n = '', u = '' }) =>
    ofUnit(valueOfNumber(n), u),
  ),
  // 3e2 ms, 3OO ms with the letter, CCC ms
  form(
    `(?<![\\w.,:/])(?<n>\\d+(?:\\.\\d+)?e[+−-]?\\d+)\\s?(?<u>${SHORT_TIMES}|${SECOND_IS_A_UNIT}|frames?)\\b`,
    ({ n = '', u = '' }) => ofUnit(Number(n.replace('−', '-')), u),
  ),
  form(`(?<![\\w.,:/])(?=[ol]*\\d)(?<n>\\d*[ol][\\dol]*)\\s?(?<u>ms|milliseconds|frames)\\b`, ({ n = '', u = '' }) =>
    ofUnit(Number(n.replace(/o/gi, '0').replace(/l/gi, '1')), u),
  ),
  form(`(?<![\\w-])(?<n>[ivxlcdm]{2,})\\s?(?<u>ms|milliseconds|frames)\\b`, ({ n = '', u = '' }) =>
    ofUnit(ofRoman(n), u),
  ),
  // 300 thousandths of a second
  form(
    `(?<n>${DIGITS})\\s(?<p>ten|hundred|thousand)ths?\\sof\\sa\\s(?<u>second|frame)\\b`,
    ({ n = '', p = '', u = '' }) => ofUnit((valueOfNumber(n) ?? Number.NaN) / (valueOfNumber(p) ?? 1), u),
  ),
  // three hundred milliseconds, two seconds, one second, a couple of seconds
  form(`(?<n>${WORDS})[\\s-](?<u>${SECOND_IS_A_UNIT}|ms|(?<=\\bone[\\s-])second)\\b`, ({ n = '', u = '' }) =>
    ms(valueOfNumber(n), u),
  ),
  // a two-second delay; the twenty-second is an ordinal
  form(`(?<n>${WORDS})-(?<u>second)\\b`, ({ n = '' }) => (/ty$/i.test(n) ? undefined : ms(valueOfNumber(n), 's'))),
  // seven frames, 7.4 of its own frames, an 8-frame delay
  form(`(?<n>${NUMBER})[\\s-]?${ADJECTIVES}${FRAMES}`, ({ n = '' }) => of('frames', valueOfNumber(n))),
  // half a frame, a third of a second, two tenths of a second
  form(
    `(?<n>\\b(?:half|quarter|${FRACTION}))(?:[\\s-](?:an?|one)|\\sof\\s(?:an?|one|each|the)|[\\s-](?=frame|milli|second\\b))\\s?(?:single\\s|video\\s)?(?<u>frame|second|millisecond|ms)s?\\b(?!\\s?${PER_SECOND}|\\sinterval)`,
    ({ n = '', u = '' }) => ofUnit(valueOfNumber(/^quarter$/i.test(n) ? 'a quarter' : n), u),
  ),
  // a frame and a half
  form(`\\b(?:an?|one)\\s(?<u>frame|second|millisecond)\\sand\\s(?<n>${FRACTION})`, ({ n = '', u = '' }) =>
    ofUnit(1 + (valueOfNumber(n) ?? 0), u),
  ),
  // a whole frame, within a frame, a frame later, a millisecond
  form(
    `\\b(?:an?|one)\\s(?:whole|full|entire|single)\\s(?<u>frame|second|millisecond)\\b(?!\\s(?:rate|interval|clip|run))`,
    ({ u = '' }) => ofUnit(1, u),
  ),
  form(`\\b(?:an?)\\s(?<u>frame|second|millisecond)\\s(?:too\\s)?${LATE}`, ({ u = '' }) => ofUnit(1, u)),
  form(
    `(?<=\\b(?:within|by|about|nearly|almost|over|under|than|least|most|to)\\s)an?\\s(?<u>frame|second|millisecond)\\b(?=\\s*(?:[.,;:)]|$|at\\b|or\\b|and\\b|in\\b|on\\b))`,
    ({ u = '' }) => ofUnit(1, u),
  ),
  form(`\\ba\\smillisecond\\b`, () => ms(1, 'ms')),
  // 48 %, thirty per cent
  form(`(?<n>${NUMBER})[\\s-]?(?:%|per\\s?cent\\b|percentage\\spoints?\\b|pct\\b)`, ({ n = '' }) => {
    const value = valueOfNumber(n);
    return of('ratio', value === undefined ? undefined : value / 100);
  }),
  // in ms: 300
  form(
    `(?:\\b(?:in|\\/)\\s?|[([]\\s?)(?<u>ms|milliseconds|seconds|frames)\\s?[)\\]]?\\s?[:=]?\\s(?<n>${DIGITS})(?=\\s*(?:[.,;)]|$))`,
    ({ n = '', u = '' }) => ofUnit(valueOfNumber(n), u),
  ),
  // 1.4×, 2x, 1.4 times slower, three times the lag, twofold, a factor of two
  form(`(?<n>${DIGITS})(?:\\s?×(?!\\s*\\d)|x\\b)`, ({ n = '' }) => of('ratio', valueOfNumber(n))),
  form(
    `(?<n>${NUMBER})\\stimes(?=\\s(?:as|${SLOWER}|over)\\b|\\sthe\\s(?:\\w+\\s){0,2}${LATENCY}|\\sthe\\s[\\w-]+'s|\\s(?:its|that|what|their)\\b)`,
    ({ n = '' }) => of('ratio', valueOfNumber(n)),
  ),
  form(`(?<n>${DIGITS})\\stimes(?=\\sthe\\b)`, ({ n = '' }) => of('ratio', valueOfNumber(n))),
  form(`(?<n>${DIGITS}[\\s-]?|\\b${ONE}(?:[\\s-](?:${ONE}))?-?)fold\\b`, ({ n = '' }) =>
    of('ratio', valueOfNumber(n.replace(/-$/, ''))),
  ),
  form(`\\b(?:factor|ratio)\\sof\\s(?:about\\s|roughly\\s|nearly\\s)?(?<n>${NUMBER})`, ({ n = '' }) =>
    of('ratio', valueOfNumber(n)),
  ),
  // a third as many frames, an order of magnitude slower
  form(`(?<n>${MULTIPLE})\\sas\\smany\\s${ADJECTIVES}(?:frames|milliseconds|seconds)\\b`, ({ n = '' }) =>
    of('ratio', multiple(n)),
  ),
  form(`\\b(?:(?:an?|one)\\sorder|(?<n>${WORDS}|${DIGITS})\\sorders)\\sof\\smagnitude\\b`, ({ n }) =>
    of('ratio', 10 ** (n === undefined ? 1 : (valueOfNumber(n) ?? Number.NaN))),
  ),
  // twice as slow, half as long, a third slower, half again
  form(`(?<n>${MULTIPLE})\\s${AS_SLOW}`, ({ n = '' }) => of('ratio', multiple(n))),
  form(`(?<n>${FRACTION})\\s(?:again\\b|${SLOWER}\\b)`, ({ n = '' }) => of('ratio', valueOfNumber(n))),
  // by half, in half, by two thirds
  form(`\\bby\\s(?<n>${FRACTION})(?!\\s(?:an?|past|of\\s(?:an?|each|the))\\b)`, ({ n = '' }) =>
    of('ratio', valueOfNumber(n)),
  ),
  form(`\\b(?:cut|cuts|cutting)\\s(?:\\w+\\s){1,4}in\\shalf\\b`, () => of('ratio', 0.5)),
  // twice the lag, half of what it was, double that of, twice the Vennick's
  form(
    `(?<n>${MULTIPLE})\\s(?:${BESIDE}${LATENCY}|that(?=\\s*(?:[.,;:)]|$|of\\b))|what\\s(?:it|they|the|its|their)\\b|the\\s[\\w-]+'s\\b)`,
    ({ n = '' }) => of('ratio', multiple(n)),
  ),
  form(`\\b(?<n>halv|doubl|tripl)(?:e|es|ed|ing)\\s${BESIDE}${LATENCY}`, ({ n = '' }) =>
    of('ratio', VERBS[n.toLowerCase()]),
  ),
  form(`\\b${LATENCY.replace('\\b', '')}\\s(?:\\w+\\s){0,2}?(?<n>halv|doubl|tripl)(?:es|ed)\\b`, ({ n = '' }) =>
    of('ratio', VERBS[n.toLowerCase()]),
  ),
];
