/** The pictures of the demonstration, drawn: a still as the observer films it, and a clip of what a lag looks like. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Glyphs } from '../../src/pictures/outlines.ts';

const [WIDTH, HEIGHT] = [1280, 720];
const SKY = '#1d2733';
const LIGHT = '#e8edf2';

/** The session whose first reading the still shows. */
const STILL_OF = 'vennick-uhd25-a';

/** The timer before the body and, later in its own time, the same timer on the stage screen. */
export function stillSvg(): string {
  const csv = readFileSync(fileURLToPath(new URL(`../../data/sessions/${STILL_OF}.csv`, import.meta.url)), 'utf8');
  const [, source = '', shown = ''] = csv.split('\n')[1]?.split(',') ?? [];
  const glyphs = new Glyphs();
  const digits = (text: string, x: number, y: number, size: number, fill: string): string =>
    glyphs.draw(text, { x, y, size, weight: 600, fill, align: 'center' });
  const drawn = [
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="${SKY}"/>`,
    `<rect y="560" width="${WIDTH}" height="160" fill="#141b24"/>`,
    // the screen above the stage, and on it the phone as the body sees it
    '<rect x="520" y="70" width="660" height="380" rx="6" fill="#0b0f14" stroke="#55616e" stroke-width="6"/>',
    '<rect x="610" y="130" width="480" height="260" rx="24" fill="#27313d"/>',
    digits(shown, 850, 290, 92, '#f3c969'),
    '<path d="M840 450V560M760 560H940" stroke="#55616e" stroke-width="10" fill="none"/>',
    // the body on its stand
    '<path d="M420 470L380 640M420 470L460 640" stroke="#39434f" stroke-width="10"/>',
    '<rect x="366" y="408" width="110" height="70" rx="8" fill="#39434f"/>',
    '<rect x="334" y="424" width="34" height="38" rx="4" fill="#55616e"/>',
    // the phone that it films, nearer to the observer
    '<rect x="60" y="390" width="260" height="150" rx="16" fill="#39434f" stroke="#8391a0" stroke-width="4"/>',
    digits(source, 190, 482, 52, LIGHT),
  ].join('');
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}">`,
    glyphs.definitions,
    drawn,
    '</svg>',
  ].join('');
}

export const CLIP_RATE = 25;
/** Twice to and fro. */
const SWING_FRAMES = 50;
export const CLIP_FRAMES = 2 * SWING_FRAMES;
/** Far more than any body here lags, so that everybody sees it. */
const LAG_FRAMES = 10;

/** One picture of a pendulum, and of a screen on which it swings a little later. */
export function swingSvg(frame: number): string {
  const pendulum = (x: number, y: number, length: number, at: number): string => {
    const angle = 0.6 * Math.cos((2 * Math.PI * at) / SWING_FRAMES);
    const [toX, toY] = [x + length * Math.sin(angle), y + length * Math.cos(angle)].map((value) => value.toFixed(2));
    return `<path d="M${x} ${y}L${toX} ${toY}" stroke="#8391a0" stroke-width="3"/><circle cx="${toX}" cy="${toY}" r="${length / 8}" fill="#f3c969"/>`;
  };
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 480 270" width="480" height="270">',
    `<rect width="480" height="270" fill="${SKY}"/>`,
    pendulum(120, 40, 170, frame),
    '<rect x="262" y="62" width="196" height="134" rx="4" fill="#0b0f14" stroke="#55616e" stroke-width="4"/>',
    pendulum(360, 82, 90, frame - LAG_FRAMES),
    '</svg>',
  ].join('');
}
