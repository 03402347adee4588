/** A chart as a picture that stands alone: title, what is drawn, the drawing, its source; all text as outlines, colours still by name. */
import { escapeMarkup, readMarkup } from '../model/markup-text.ts';
import { PALETTE, type Format, type Scheme } from './formats.ts';
import { Glyphs, short, wrap, type Weight } from './outlines.ts';

export interface PictureWords {
  readonly title: string;
  /** Under the title: what rows share, what marks and bars mean. */
  readonly lines: readonly string[];
  /** Where it is from. */
  readonly source: string;
  /** The text alternative. */
  readonly description: string;
}

interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly inside: string;
}

/** Of the size of the title. */
const LINE_SHARE = 0.56;
const SOURCE_SHARE = 0.44;
const LEADING = 1.3;
/** Letters of a chart grow to this share of the title's at most. */
const MOST_SHARE = 0.85;
const CHART_TEXT = 13.5;
/** So many times larger may the letters of another drawing come out before it is taken. */
const FIRST_WINS = 1.33;

const SVG = /^<svg\b([^>]*)>([\s\S]*)<\/svg>$/;
const WORDS = /<title[\s\S]*?<\/title>|<desc[\s\S]*?<\/desc>/g;
const TEXT = /<text\b([^>]*)>([^<]*)<\/text>/g;
/** A group of texts only: what it says of letters holds for all of them. */
const TEXTS = /(<g\b([^>]*)>)((?:<text\b[^>]*>[^<]*<\/text>)+)<\/g>/g;
const OF_LETTERS = / (?:fill|font-size|font-weight|text-anchor)="[^"]*"/g;
const VARIABLE = /var\(--([\w-]+)(?:,[^)]*)?\)/g;

/** @param drawings the same chart for wide and for narrow columns: the first, unless the other’s letters come out much larger; none for a card of words */
export function standAlone(drawings: readonly string[], words: PictureWords, format: Format): string {
  const { width, height, margin, titleSize } = format;
  const glyphs = new Glyphs();
  const room = width - margin.left - margin.right;
  const [ink, soft] = ['var(--ink)', 'var(--ink-soft)'];
  const parts: string[] = [];
  const stack = (text: string, size: number, weight: Weight, fill: string, from: number): number => {
    let y = from;
    for (const line of wrap(text, room, size, weight)) {
      parts.push(glyphs.draw(line, { x: margin.left, y: y + size, size, weight, fill }));
      y += size * LEADING;
    }
    return y;
  };
  let top = stack(words.title, titleSize, 600, ink, margin.top);
  for (const line of words.lines) top = stack(line, titleSize * LINE_SHARE, 400, soft, top + titleSize * 0.1);

  const sourceSize = titleSize * SOURCE_SHARE;
  const sourceLines = wrap(words.source, room, sourceSize, 400);
  const bottom = height - margin.bottom - sourceLines.length * sourceSize * LEADING;
  sourceLines.forEach((line, index) => {
    const y = bottom + sourceSize * (1 + index * LEADING);
    parts.push(glyphs.draw(line, { x: margin.left, y, size: sourceSize, weight: 400, fill: soft }));
  });

  const space = {
    x: margin.left,
    y: top + titleSize * 0.5,
    width: room,
    height: bottom - titleSize * 0.5 - (top + titleSize * 0.5),
  };
  const most = (titleSize * MOST_SHARE) / CHART_TEXT;
  const fitted = drawings
    .map(readDrawing)
    .map((drawing, index) => {
      const scale = Math.min(space.width / drawing.width, space.height / drawing.height, most);
      return { ...drawing, scale, weight: index === 0 ? scale * FIRST_WINS : scale };
    })
    .sort((a, b) => b.weight - a.weight)[0];
  if (fitted !== undefined && fitted.scale > 0) {
    // In the middle of the height that is left, a little above: the eye takes that for the middle.
    const y = space.y + (space.height - fitted.height * fitted.scale) * 0.4;
    const x = space.x + (space.width - fitted.width * fitted.scale) / 2;
    const drawn = outlined(fitted.inside, glyphs);
    parts.push(`<g transform="translate(${short(x)},${short(y)}) scale(${short(fitted.scale, 4)})">${drawn}</g>`);
  }
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}" ` +
    `viewBox="0 0 ${width} ${height}" role="img"><title>${escapeMarkup(words.title)}</title>` +
    `<desc>${escapeMarkup(words.description)}</desc>${glyphs.definitions}` +
    `<rect width="${width}" height="${height}" fill="var(--paper)"/>${parts.join('')}</svg>\n`
  );
}

function readDrawing(svg: string): Drawing {
  const [, attributes = '', inside = ''] = SVG.exec(svg.trim()) ?? [];
  const size = (name: string): number => Number(new RegExp(`\\b${name}="([\\d.]+)"`).exec(attributes)?.[1]);
  const [width, height] = [size('width'), size('height')];
  if (!(width > 0 && height > 0)) throw new Error('a chart says how large it is');
  return { width, height, inside: inside.replace(WORDS, '') };
}

/** Every text of a drawing as outlines, where and as large as it stood. */
function outlined(inside: string, glyphs: Glyphs): string {
  const each = inside.replace(TEXTS, (_all, group: string, said: string, texts: string) => {
    const handedOn = [...said.matchAll(OF_LETTERS)].join('');
    return `${group.replace(OF_LETTERS, '')}${texts.replace(TEXT, (_text, own: string, text: string) => `<text${own}${handedOn}>${text}</text>`)}</g>`;
  });
  return each.replace(TEXT, (_all, attributes: string, text: string) => {
    const read = (name: string): string | undefined => new RegExp(`\\b${name}="([^"]*)"`).exec(attributes)?.[1];
    const [, x = '0', y = '0'] = /translate\(([-\d.]+)[ ,]([-\d.]+)\)/.exec(read('transform') ?? '') ?? [];
    const anchor = read('text-anchor');
    return glyphs.draw(readMarkup(text), {
      x: Number(x),
      y: Number(y),
      size: Number.parseFloat(read('font-size') ?? String(CHART_TEXT)),
      weight: Number(read('font-weight') ?? 400) >= 600 ? 600 : 400,
      fill: read('fill') ?? 'currentColor',
      align: anchor === 'middle' ? 'center' : anchor === 'end' ? 'right' : 'left',
    });
  });
}

/** A picture in the colours of a scheme; it has no page to take them from. */
export function inColours(picture: string, scheme: Scheme): string {
  const colours = PALETTE[scheme];
  return picture
    .replace(VARIABLE, (_all, name: string) => colour(colours, name))
    .replaceAll('currentColor', colour(colours, 'ink'));
}

function colour(colours: Readonly<Record<string, string>>, name: string): string {
  const found = colours[name];
  if (found === undefined)
    throw new Error(`no picture has the colour --${name}: give it one in src/pictures/formats.ts`);
  return found;
}
