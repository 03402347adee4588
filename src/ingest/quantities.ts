/** Quantities as authors write them, number and unit, to plain numbers. Undefined when the text is no such quantity. */

const DURATION = /^(\d{1,9})(?:\.(\d{1,9})|\s*\/\s*(\d{1,9}))?\s*(µs|μs|us|ms|s|min|h)$/;
const TOLERANCE = /^(?:±\s*)?(\d{1,6}(?:\.\d{1,6})?)\s*ppm$/;
const SPEED = /^(\d{1,9}(?:\.\d{1,9})?)\s*(m\/s|km\/h)$/;
const DECIMAL = /^\d{1,9}(?:\.\d{1,9})?$/;

/** Milliseconds per unit, as a fraction of integers. */
const UNITS: Readonly<Record<string, readonly [number, number]>> = {
  µs: [1, 1000], // micro sign, U+00B5
  μs: [1, 1000], // Greek mu, U+03BC
  us: [1, 1000],
  ms: [1, 1],
  s: [1000, 1],
  min: [60_000, 1],
  h: [3_600_000, 1],
};

/** `14 ms`, `1/500 s`, `60 s`, `60 min`, `24 h` in milliseconds: one division of integers, so correctly rounded. */
export function parseDurationMs(text: string): number | undefined {
  const match = DURATION.exec(text.trim());
  if (!match) return undefined;
  const [, whole = '', decimals = '', divisor = '1', unit = ''] = match;
  const [up, down] = UNITS[unit] ?? [0, 0];
  const denominator = 10 ** decimals.length * Number(divisor) * down;
  const durationMs = (Number(whole + decimals) * up) / denominator;
  return Number.isFinite(durationMs) ? durationMs : undefined;
}

/** `1.2 m/s`, `5 km/h` in metres per second; more than zero, and slower than light (BIPM, SI Brochure, 2.2). */
export function parseSpeed(text: string): number | undefined {
  const [, amount, unit] = SPEED.exec(text.trim()) ?? [];
  const speed = Number(amount) / (unit === 'km/h' ? 3.6 : 1);
  return speed > 0 && speed < 299_792_458 ? speed : undefined;
}

/** `50 ppm` or `± 50 ppm`, a half-width in parts per million. */
export function parseTolerancePpm(text: string): number | undefined {
  const match = TOLERANCE.exec(text.trim());
  return match ? Number(match[1]) : undefined;
}

/** A height in a picture: 0 top edge, 1 bottom edge. */
export function parseRowHeight(text: string): number | undefined {
  const height = parseDecimal(text);
  return height !== undefined && height <= 1 ? height : undefined;
}

/** A plain decimal number, not negative: `10`, `0.85`. */
function parseDecimal(text: string): number | undefined {
  return DECIMAL.test(text) ? Number(text) : undefined;
}
