/**
 * Times typed by their digits alone, in the form in which a timer writes them: `0012217` is `00:12.217` where an example is
 * `00:00.000`. Where the example has no colon its whole seconds may take more digits than it shows.
 */
import { parseTime, stepsToMs } from '../../ingest/time.ts';

export function digitsOf(text: string): string {
  return text.replace(/\D/g, '');
}

/** The digits with what stands between them, as far as they go. */
export function formatDigits(digits: string, example: string): string {
  const places = digitsOf(example).length;
  const decimals = example.split('.')[1]?.length ?? 0;
  if (!example.includes(':')) {
    if (digits.length < places || decimals === 0) return digits;
    return `${digits.slice(0, digits.length - decimals)}.${digits.slice(digits.length - decimals)}`;
  }
  let [text, used] = ['', 0];
  for (const char of example) {
    const isPlace = /\d/.test(char);
    if (isPlace && used === digits.length) break;
    text += isPlace ? digits[used] : char;
    if (isPlace) used += 1;
  }
  return text;
}

/** Digits that are typed beyond the last place have none. */
export function keptDigits(text: string, example: string): string {
  const digits = digitsOf(text);
  return example.includes(':') ? digits.slice(0, digitsOf(example).length) : digits.slice(0, 15);
}

export function isWhole(text: string, example: string): boolean {
  return digitsOf(text).length >= digitsOf(example).length && parseTime(text) !== undefined;
}

/** Undefined for anything but a whole time. */
export function msOf(text: string): number | undefined {
  const time = parseTime(text);
  return time && stepsToMs(time.steps, time.decimals);
}

/** A time in the form of the example; cut to its last decimal, as timers do. */
export function writeMs(ms: number, example: string): string {
  const decimals = example.split('.')[1]?.length ?? 0;
  const [whole = ''] = example.split('.');
  const widths = whole.split(':').map(({ length }) => length);
  const steps = Math.floor(Math.max(0, ms) / stepsToMs(1, decimals) + 1e-6);
  const seconds = Math.floor(steps / 10 ** decimals);
  const values = widths.map((_, index) => {
    const unit = 60 ** (widths.length - 1 - index);
    return index === 0 ? Math.floor(seconds / unit) : Math.floor(seconds / unit) % 60;
  });
  const text = values.map((value, index) => String(value).padStart(widths[index] ?? 2, '0')).join(':');
  return decimals === 0 ? text : `${text}.${String(steps % 10 ** decimals).padStart(decimals, '0')}`;
}

/** The beginning that every time between the two has in common. */
export function commonStart(lowMs: number, highMs: number, example: string): string {
  const [low, high] = [digitsOf(writeMs(lowMs, example)), digitsOf(writeMs(highMs, example))];
  if (low.length !== high.length || highMs < lowMs) return '';
  const differs = [...low].findIndex((digit, index) => digit !== high[index]);
  return differs < 0 ? low : low.slice(0, differs);
}
