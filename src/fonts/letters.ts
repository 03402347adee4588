/** Which letters the fonts of a site have. */

/** Code points. */
export type Letters = ReadonlySet<number>;

/** What the words of the tool are made of: those of ASCII that they print, and signs. */
export const BASIC: Letters = pointsOf(
  ` !"#%&'()*+,-./0123456789:;<=>?ABCDEFGHIJKLMNOPQRSTUVWXYZ[]_abcdefghijklmnopqrstuvwxyz{|}` +
    '\u{a0}°±²³·¹¼½¾×–—‘’“”…′−≤≥≈ΔΠΣαεμπρστχℓᵀŷ\u{304}',
);

/** Every letter in the texts of a value, however deep, those of keys included. */
export function lettersOf(value: unknown): Letters {
  const found = new Set<number>();
  const seen = new Set<object>();
  const look = (one: unknown): void => {
    if (typeof one === 'string') for (const point of pointsOf(one)) found.add(point);
    if (typeof one !== 'object' || one === null || seen.has(one) || ArrayBuffer.isView(one)) return;
    seen.add(one);
    if (one instanceof Map || one instanceof Set) for (const part of one) look(part);
    else for (const part of Object.entries(one).flat()) look(part);
  };
  look(value);
  return found;
}

/** The code points of ranges as CSS writes them: `U+20-7E,U+2212`. */
export function lettersIn(ranges: string): Letters {
  const points = new Set<number>();
  for (const range of ranges.split(',').filter((one) => one !== '')) {
    const [first = NaN, last = first] = range
      .replace('U+', '')
      .split('-')
      .map((hexadecimal) => Number.parseInt(hexadecimal, 16));
    for (let point = first; point <= last; point += 1) points.add(point);
  }
  return points;
}

function pointsOf(text: string): Set<number> {
  return new Set([...text].map((letter) => letter.codePointAt(0) ?? 0));
}
