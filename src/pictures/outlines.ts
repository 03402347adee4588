/** Text as outlines, so that a picture needs no font where it is shown: Source Sans 3, which the site ships too. */
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkitten';

export type Weight = 400 | 600;

/** In the order in which a character is looked for. */
const SUBSETS = ['latin', 'latin-ext', 'greek', 'greek-ext', 'cyrillic', 'cyrillic-ext', 'vietnamese'];
const UNITS_PER_EM = 1000;
/** For a character that the font lacks, in its units: a hollow box, one em wide as a CJK character is. */
const BOX = 'M80 0H920V700H80ZM140 60V640H860V60Z';

/** What pages write and the font of pictures lacks, drawn here in its units. */
const DRAWN: Readonly<Record<string, string>> = {
  '→': 'M60 222H760L610 92 656 40 930 250 656 460 610 408 760 278H60Z',
};

const fonts = new Map<string, Font>();

function font(subset: string, weight: Weight): Font {
  const name = `@fontsource/source-sans-3/files/source-sans-3-${subset}-${weight}-normal.woff2`;
  const known = fonts.get(name);
  if (known !== undefined) return known;
  const made = create(readFileSync(new URL(import.meta.resolve(name))));
  if (made.isCollection) throw new Error(`${name} is a collection of fonts`);
  fonts.set(name, made);
  return made;
}

interface Outline {
  readonly path: string;
  readonly advance: number;
}

const outlines = new Map<string, Outline>();

function outlineOf(character: string, weight: Weight): Outline {
  const key = `${weight} ${character}`;
  const known = outlines.get(key);
  if (known !== undefined) return known;
  const code = character.codePointAt(0) ?? 0;
  const holder = SUBSETS.map((subset) => font(subset, weight)).find((each) => each.hasGlyphForCodePoint(code));
  const glyph = holder?.glyphForCodePoint(code);
  const made = glyph
    ? { path: relativePath(rounded(glyph.path.toSVG())), advance: glyph.advanceWidth }
    : { path: DRAWN[character] ?? BOX, advance: UNITS_PER_EM };
  outlines.set(key, made);
  return made;
}

/** To a thousandth of an em, which nobody sees. */
function rounded(path: string): string {
  return path.replace(/-?\d+\.\d+/g, (number) => String(Math.round(Number(number))));
}

/**
 * The same path, of absolute M, L, Q, C and Z in whole numbers, in relative commands: `M60 222L760 222` is `m60 222h700`.
 * Letters are most of a picture, and their points lie close to each other.
 */
export function relativePath(path: string): string {
  let [x, y, startX, startY] = [0, 0, 0, 0];
  return [...path.matchAll(/([MLQCZ])([^MLQCZ]*)/g)]
    .map(([, command = '', written = '']) => {
      if (command === 'Z') {
        [x, y] = [startX, startY];
        return 'z';
      }
      const numbers = (written.match(/-?\d+/g) ?? []).map(Number);
      const steps = numbers.map((number, index) => number - (index % 2 === 0 ? x : y));
      const [dx = 0, dy = 0] = steps.slice(-2);
      [x, y] = [x + dx, y + dy];
      if (command === 'M') [startX, startY] = [x, y];
      if (command === 'L' && dy === 0) return `h${dx}`;
      if (command === 'L' && dx === 0) return `v${dy}`;
      return command.toLowerCase() + steps.join(' ').replaceAll(' -', '-');
    })
    .join('');
}

export interface TextRun {
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly size: number;
  readonly weight: Weight;
  readonly fill: string;
  readonly align?: 'left' | 'center' | 'right';
}

/** The glyphs and words of one picture, each drawn once and used wherever it stands: labels of rows repeat theirs. */
export class Glyphs {
  /** Ids by weight and path. */
  readonly #used = new Map<string, string>();
  /** By weight and text. */
  readonly #words = new Map<string, { readonly id: string; readonly drawn: string; readonly advance: number }>();

  /** A line of text as SVG. */
  draw(text: string, { x, y, size, weight, fill, align = 'left' }: TextRun): string {
    let pen = 0;
    const uses = text.split(' ').map((word, index) => {
      if (index > 0) pen += outlineOf(' ', weight).advance;
      if (word === '') return '';
      const { id, advance } = this.#word(word, weight);
      const at = pen;
      pen += advance;
      return `<use xlink:href="#${id}" x="${at}"/>`;
    });
    const scale = size / UNITS_PER_EM;
    const width = pen * scale;
    const left = align === 'left' ? x : align === 'center' ? x - width / 2 : x - width;
    return `<g fill="${fill}" transform="translate(${short(left)},${short(y)}) scale(${short(scale, 5)},${short(-scale, 5)})">${uses.join('')}</g>`;
  }

  /** What the uses refer to. */
  get definitions(): string {
    const letters = [...this.#used].map(([key, id]) => `<path id="${id}" d="${key.slice(4)}"/>`);
    const words = [...this.#words.values()].map(({ id, drawn }) => `<g id="${id}">${drawn}</g>`);
    return `<defs>${[...letters, ...words].join('')}</defs>`;
  }

  #word(text: string, weight: Weight): { readonly id: string; readonly advance: number } {
    const key = `${weight} ${text}`;
    const known = this.#words.get(key);
    if (known !== undefined) return known;
    let advance = 0;
    const letters = [...text].map((character) => {
      const outline = outlineOf(character, weight);
      const at = advance;
      advance += outline.advance;
      return outline.path === '' ? '' : `<use xlink:href="#${this.#letter(outline.path, weight)}" x="${at}"/>`;
    });
    const word = { id: `w${this.#words.size.toString(36)}`, drawn: letters.join(''), advance };
    this.#words.set(key, word);
    return word;
  }

  #letter(path: string, weight: Weight): string {
    const key = `${weight} ${path}`;
    const id = this.#used.get(key) ?? `g${this.#used.size.toString(36)}`;
    this.#used.set(key, id);
    return id;
  }
}

/** Width of a line of text in px. */
export function widthOf(text: string, size: number, weight: Weight): number {
  return [...text].reduce((sum, character) => sum + outlineOf(character, weight).advance, 0) * (size / UNITS_PER_EM);
}

/** Lines no wider than the limit, broken at spaces; a longer word stands alone. */
export function wrap(text: string, limit: number, size: number, weight: Weight): readonly string[] {
  const lines: string[] = [];
  for (const word of text.split(/[ \n\t]+/).filter(Boolean)) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && widthOf(longer, size, weight) <= limit) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

export function short(value: number, decimals = 2): string {
  return String(Number(value.toFixed(decimals)));
}
