import { ADVANCE_WIDTHS } from './advance-widths.ts';

const EM = 1000;
const SEMIBOLD = 600;

/**
 * Width of one line of text in Source Sans 3, in the unit of `size`.
 *
 * The sum of the advance widths, without kerning (which nearly always tightens). A character that the
 * table lacks counts as one em, which is what a CJK character takes.
 */
export function textWidth(text: string, size: number, weight = 400): number {
  let width = 0;
  for (const character of text) width += advance(character.codePointAt(0) ?? 0, weight);
  return (width * size) / EM;
}

function advance(code: number, weight: number): number {
  for (const { first, regular, semibold } of ADVANCE_WIDTHS) {
    const width = (weight >= SEMIBOLD ? semibold : regular)[code - first];
    if (width !== undefined) return width;
  }
  return EM;
}

/**
 * Breaks text into lines no wider than `limit`, at spaces and after hyphens and slashes; a longer word is
 * broken where it must be. Nothing is cut off. White space of any kind counts as one space.
 */
export function wrapText(text: string, limit: number, size: number, weight = 400): string[] {
  const lines: string[] = [];
  let line = '';
  const fits = (candidate: string) => textWidth(candidate.trimEnd(), size, weight) <= limit;
  for (const piece of breakable(text)) {
    if (fits(line + piece)) {
      line += piece;
      continue;
    }
    if (line !== '' && fits(piece)) {
      lines.push(line.trimEnd());
      line = piece;
      continue;
    }
    for (const character of piece) {
      if (line !== '' && !fits(line + character)) {
        lines.push(line.trimEnd());
        line = '';
      }
      line += character;
    }
  }
  return [...lines, line.trimEnd()];
}

/** Words with the space, hyphen or slash after them. A no-break space does not part words. */
function breakable(text: string): string[] {
  return (
    text
      .replace(/[ \t\r\n\f\v]+/g, ' ')
      .trim()
      .match(/[^ \-/]*[ \-/]+|[^ \-/]+/g) ?? []
  );
}
