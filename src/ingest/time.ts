/**
 * Times as a running timer shows them, kept as integers: a difference of two is exact, and is divided only once.
 * 31.482 s and 31.181 s are 31482 and 31181 steps of 1 ms, so their difference is 301 ms and not 300.9999….
 */
export interface TimerTime {
  /** In steps of the last decimal, a safe integer: 31482 for `31.482`. */
  readonly steps: number;
  /** Digits after the point: 3 for `31.482`. */
  readonly decimals: number;
}

const [MINUS, POINT, ZERO, NINE, COLON] = [0x2d, 0x2e, 0x30, 0x39, 0x3a];

/**
 * Parses `s.mmm`, `mm:ss.mmm` or `hh:mm:ss.mmm` with any number of decimals, none included, and an optional
 * minus sign. A unit that has a higher one before it is written with two digits and is less than 60. Undefined
 * for anything else, and for times too long to be counted exactly.
 *
 * Written out by character: a session may hold a million of these.
 */
export function parseTime(text: string): TimerTime | undefined {
  const negative = text.charCodeAt(0) === MINUS;
  let total = 0;
  let unit = 0;
  let digits = 0;
  let colons = 0;
  let decimals = -1;
  for (let at = negative ? 1 : 0; at < text.length; at += 1) {
    const char = text.charCodeAt(at);
    if (char >= ZERO && char <= NINE) {
      unit = unit * 10 + (char - ZERO);
      digits += 1;
      if (decimals >= 0) decimals += 1;
    } else if (char === COLON && decimals < 0 && colons < 2 && isUnit(unit, digits, colons)) {
      total = (total + unit) * 60;
      colons += 1;
      unit = digits = 0;
    } else if (char === POINT && decimals < 0 && isUnit(unit, digits, colons)) {
      total += unit;
      decimals = 0;
      unit = digits = 0;
    } else return undefined;
  }
  if (decimals < 0) {
    if (!isUnit(unit, digits, colons)) return undefined;
    total += unit;
    unit = decimals = 0;
  } else if (decimals === 0) return undefined;
  const steps = total * 10 ** decimals + unit;
  if (!Number.isSafeInteger(steps) || !Number.isSafeInteger(unit)) return undefined;
  return { steps: negative ? 0 - steps : steps, decimals };
}

/** Steps of the last decimal in milliseconds, correctly rounded: 301 steps at three decimals are 301 ms. */
export function stepsToMs(steps: number, decimals: number): number {
  return decimals <= 3 ? steps * 10 ** (3 - decimals) : steps / 10 ** (decimals - 3);
}

function isUnit(value: number, digits: number, colonsBefore: number): boolean {
  return colonsBefore === 0 ? digits > 0 : digits === 2 && value < 60;
}
