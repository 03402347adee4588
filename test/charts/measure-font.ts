/**
 * Measures the advance widths of Source Sans 3 in Chromium and prints src/charts/advance-widths.ts:
 *
 *     node test/charts/measure-font.ts > src/charts/advance-widths.ts
 *
 * Set CHROMIUM where the browser is not /usr/bin/chromium. Run again when the font package changes.
 */
import { readFile } from 'node:fs/promises';
import { chromium } from 'playwright-core';

const RANGES: readonly (readonly [first: number, last: number])[] = [
  [0x20, 0x7e], // ASCII
  [0xa0, 0x17f], // Latin-1 supplement and Latin extended A
  [0x391, 0x3c9], // Greek
  [0x2009, 0x200a], // thin and hair space
  [0x2010, 0x2026], // dashes, quotation marks, bullet, ellipsis
  [0x202f, 0x2033], // narrow no-break space, per mille, primes
  [0x20ac, 0x20ac], // euro
  [0x2122, 0x2122], // trade mark
  [0x2190, 0x2193], // arrows
  [0x2212, 0x2212], // minus
  [0x2248, 0x2248], // almost equal
  [0x2260, 0x2265], // not equal, less or equal, greater or equal
];
const WEIGHTS = [400, 600];
const SUBSETS = ['latin', 'latin-ext', 'greek'];
const PER_LINE = 20;

const files = new URL('../../node_modules/@fontsource-variable/source-sans-3/files/', import.meta.url);
const faces = await Promise.all(
  SUBSETS.map(async (subset) => {
    const bytes = await readFile(new URL(`source-sans-3-${subset}-wght-normal.woff2`, files));
    return { family: `measured-${subset}`, data: bytes.toString('base64') };
  }),
);

const browser = await chromium.launch({
  executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
  args: [
    '--no-sandbox',
    '--disable-gpu',
    '--disable-quic',
    '--no-first-run',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
  ],
});
const page = await browser.newPage();
const tables = await page.evaluate(
  async ({ faces, ranges, weights }) => {
    for (const { family, data } of faces) {
      const face = new FontFace(family, `url(data:font/woff2;base64,${data})`, { weight: '200 900' });
      document.fonts.add(await face.load());
    }
    const context = document.createElement('canvas').getContext('2d');
    if (!context) throw new Error('no 2d canvas');
    const stack = faces.map(({ family }) => family).join(', ');
    const width = (text: string, weight: number, fallback: string) => {
      context.font = `${String(weight)} 1000px ${stack}, ${fallback}`;
      return Math.round(context.measureText(text).width);
    };
    return ranges.map(([first, last]) =>
      weights.map((weight) =>
        Array.from({ length: last - first + 1 }, (_, i) => {
          const text = String.fromCodePoint(first + i);
          // a glyph that the font lacks comes from elsewhere: count it as one em
          const [serif, mono] = [width(text, weight, 'serif'), width(text, weight, 'monospace')];
          return serif === mono ? serif : 1000;
        }),
      ),
    );
  },
  { faces, ranges: RANGES, weights: WEIGHTS },
);
await browser.close();

const row = (widths: readonly number[]): string => {
  const lines: string[] = [];
  for (let i = 0; i < widths.length; i += PER_LINE) lines.push(`      ${widths.slice(i, i + PER_LINE).join(', ')},`);
  return `[\n${lines.join('\n')}\n    ]`;
};
const entries = RANGES.map(([first], i) => {
  const [regular = [], semibold = []] = tables[i] ?? [];
  return `  {\n    first: 0x${first.toString(16)},\n    regular: ${row(regular)},\n    semibold: ${row(semibold)},\n  },`;
});
process.stdout.write(`/**
 * Advance widths of Source Sans 3, in thousandths of an em, from the font files that the site serves.
 *
 * Written by \`node test/charts/measure-font.ts > src/charts/advance-widths.ts\`; do not edit.
 */
export interface WidthRange {
  /** Code point of the first entry; the others follow it. */
  readonly first: number;
  /** Weight 400. */
  readonly regular: readonly number[];
  /** Weight 600. */
  readonly semibold: readonly number[];
}

export const ADVANCE_WIDTHS: readonly WidthRange[] = [
${entries.join('\n')}
];
`);
