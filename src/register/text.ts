/**
 * Numbers become text here and nowhere else, so that prose, table, chart and download agree.
 *
 * JCGM 100:2008, 7.2.6: an uncertainty is stated to at most two significant digits, and the value is
 * rounded to be consistent with it. Text is for display: a computation never reads it back.
 */

export const MINUS = '−';

/** `300.8 ± 8.8 ms`: the expanded uncertainty to two significant digits, the value to the same place. */
export function describeMeasured(value: number, expandedUncertainty: number, unit: string): string {
  const place = placeOfUncertainty(expandedUncertainty);
  return withUnit(`${roundTo(value, place)} ± ${roundTo(expandedUncertainty, place)}`, unit);
}

/** `292.0 to 309.6 ms`: an interval whose ends are rounded to the place of its half-width. */
export function describeInterval(low: number, high: number, unit: string): string {
  const place = placeOfUncertainty((high - low) / 2);
  return withUnit(`${roundTo(low, place)} to ${roundTo(high, place)}`, unit);
}

/** A plain value with a stated number of decimals: `301 ms`. */
export function describeValue(value: number, decimals: number, unit: string): string {
  return withUnit(roundTo(value, decimals), unit);
}

/** A value to so many significant digits: `4.4 ms`, `0.12 ms`, `120 ms`. */
export function describeSignificant(value: number, digits: number, unit: string): string {
  return withUnit(roundTo(value, placeOfSignificant(value, digits)), unit);
}

/** A whole count, with thin spaces between thousands from ten thousand on (ISO 80000-1, 7.3.1): `1 000 000`. */
export function describeCount(count: number): string {
  const digits = String(Math.round(count));
  return digits.length < 5 ? digits : digits.replace(/\B(?=(\d{3})+$)/g, '\u2009');
}

/** Decimals of a value read in steps of so much: 0 for 1 and 20, 1 for 0.5, 2 for 0.01; 1 where nobody says. */
export function decimalsOfStep(step = 0.1): number {
  let decimals = 0;
  while (step * 10 ** decimals < 1 - 1e-9) decimals += 1;
  return decimals;
}

/** Decimal place of the second significant digit of an uncertainty; negative places are tens and hundreds. */
export function placeOfUncertainty(expandedUncertainty: number): number {
  return placeOfSignificant(expandedUncertainty, 2);
}

function placeOfSignificant(value: number, digits: number): number {
  if (value === 0) return 0;
  // toExponential rounds first, so that 9.96 counts as 10 and not as 9.
  const exponent = Number(value.toExponential(digits - 1).split('e')[1]);
  return digits - 1 - exponent;
}

/** Rounds to a decimal place and writes it, with a true minus sign and no negative zero. */
export function roundTo(value: number, place: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`a figure must be finite, not ${value}`);
  const text = place >= 0 ? value.toFixed(Math.min(place, 20)) : String(Math.round(value * 10 ** place) * 10 ** -place);
  const bare = text.startsWith('-') ? text.slice(1) : text;
  return text.startsWith('-') && Number(bare) !== 0 ? `${MINUS}${bare}` : bare;
}

function withUnit(text: string, unit: string): string {
  return unit === '1' ? text : `${text} ${unit}`;
}

/** `observer row skew` → `Observer row skew`. */
export function capitalize(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
