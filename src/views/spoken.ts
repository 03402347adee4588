/**
 * A figure as it is read aloud: “about three hundred milliseconds, give or take seven”.
 *
 * Rounding is honest: the value goes to the roundest number (a multiple of 100, 50, 10, 5, 1 …) that lies within a fifth of
 * its half-width, and what is given or taken is rounded up until it covers the whole published interval, so that what is
 * said is never narrower than what is published. Without an interval, the published text itself is read out.
 */
import type { Figure } from '../register/register.ts';
import { MINUS } from '../register/text.ts';
import { numberInWords } from './number-in-words.ts';

type Spoken = Pick<Figure, 'value' | 'unit' | 'interval' | 'limits' | 'text' | 'verdict'>;

const UNITS: Readonly<Record<string, readonly [one: string, many: string]>> = {
  ms: ['millisecond', 'milliseconds'],
  frames: ['frame', 'frames'],
};
/** Of the half-width: so far may a value be rounded. */
const SHIFT = 1 / 5;
const ROUND = [5, 1];
const NUMBER = new RegExp(`(${MINUS}|-)?\\d+(?:\\.\\d+)?`, 'gu');

export function spokenFigure(figure: Spoken): string {
  const { value, unit, interval, limits, verdict } = figure;
  if (limits !== undefined) return spokenRange(limits, unit);
  if (interval === undefined) return readOut(figure.text);
  const { spoken, give, decimals } = roundedFor(value, interval);
  const isWorded = verdict !== undefined && /^(?:slower|faster) by /.test(figure.text);
  if (verdict !== undefined && !isWorded) return readOut(figure.text);
  const amount = isWorded ? Math.abs(spoken) : spoken;
  const lead = isWorded ? `${figure.text.split(' by ')[0]} by about` : 'about';
  const said = numberInWords(amount, decimals);
  const given = `give or take ${numberInWords(give, decimals)}`;
  return unit === '1' ? `${lead} ${said}, ${given}` : `${lead} ${said} ${unitFor(amount, unit)}, ${given}`;
}

/** What is said for a value and its interval: of the roundest numbers near enough, with a half-width that covers it all. */
export function roundedFor(
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
): { readonly spoken: number; readonly give: number; readonly decimals: number } {
  const half = Math.max(high - value, value - low);
  // Of the last digit that is said: one that the half-width has a digit left for.
  const place = half > 0 ? Math.floor(Math.log10(half) + 1e-9) : 0;
  const decimals = Math.max(0, -place);
  const last = 10 ** -decimals;
  const spoken = roundest(value, half * SHIFT, last);
  const give = Math.ceil(round(Math.max(high - spoken, spoken - low) / last)) * last;
  return { spoken, give, decimals };
}

/** The multiple of the largest 5 or 1 times a power of ten that lies within `shift` of the value; else of the last digit. */
function roundest(value: number, shift: number, last: number): number {
  const largest = Math.max(0, Math.ceil(Math.log10(Math.max(Math.abs(value), last))));
  for (let power = largest; 10 ** power >= last * (1 - 1e-9); power -= 1)
    for (const digit of ROUND) {
      const step = digit * 10 ** power;
      const candidate = Math.round(value / step) * step;
      if (candidate !== 0 && step >= last && Math.abs(candidate - value) <= shift) return candidate;
    }
  return Math.round(value / last) * last;
}

/** Without the dust of binary fractions, which a rounding up would take for more. */
function round(value: number): number {
  return Number(value.toPrecision(12));
}

function spokenRange({ low, high }: NonNullable<Figure['limits']>, unit: string): string {
  return `between ${numberInWords(Math.floor(low))} and ${numberInWords(Math.ceil(high))}${unit === '1' ? '' : ` ${unitFor(high, unit)}`}`;
}

/** The published text with its numbers in words. */
function readOut(text: string): string {
  return text
    .replace(NUMBER, (number) => {
      const value = Number(number.replace(MINUS, '-'));
      return numberInWords(value, number.split('.')[1]?.length ?? 0);
    })
    .replace(/ within ± /g, ' within ')
    .replace(/ ± /g, ', give or take ')
    .replace(/\bms\b/g, 'milliseconds')
    .replace(/ %/g, ' per cent');
}

function unitFor(value: number, unit: string): string {
  const [one, many] = UNITS[unit] ?? [unit, unit];
  return value === 1 ? one : many;
}
