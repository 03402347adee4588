/**
 * Fonts cut down to the letters, weights and features that a site prints: a fifth of their weight.
 *
 * What is left is called otherwise, as its licence asks (SIL Open Font License 1.1, condition 3, on reserved names).
 */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { convert } from 'fontverter';
import subsetFont from 'subset-font';
import { Store } from '../memory/memory.ts';
import type { Face, FontFile, Script } from './faces.ts';
import { renameFont } from './rename-font.ts';
import { lettersIn, type Letters } from './letters.ts';

/** What browsers apply by themselves, and lining and tabular figures, which these fonts have where nothing is asked for. */
const FEATURES = ['ccmp', 'kern', 'liga', 'lnum', 'locl', 'mark', 'mkmk', 'tnum'];
/** Of its texts: the copyright, and the licence and its address. */
const RIGHTS = [0, 13, 14];
/** The word that the licence of both fonts reserves, and as long a one. */
const RESERVED = { from: 'Source', to: 'Subset' } as const;

const subsets = new Store('fonts', ['src/fonts']);
const require = createRequire(import.meta.url);

/** The letters that the file of a script has for a face, as its package says. */
export function lettersOfScript({ from }: Face, script: Script): Letters {
  const ranges = require(`${from}/unicode.json`) as Readonly<Record<string, string>>;
  return lettersIn(ranges[script] ?? '');
}

/** The licence of the font that a face is made of, with whom it is by. */
export async function licenceText({ from, of }: Face): Promise<string> {
  const licence = await readFile(require.resolve(`${from}/LICENSE`), 'utf8');
  return `These fonts hold some letters of ${of}, copyright Adobe (http://www.adobe.com/), with Reserved Font Name 'Source'.\n\n${licence}`;
}

/** As WOFF2; the same bytes from the same letters. */
export async function fontBytes({ face, script, letters }: FontFile): Promise<Uint8Array> {
  const name = subsets.nameOf({ face, script, letters });
  const kept = subsets.get(name);
  if (kept instanceof Uint8Array) return kept;
  const bytes = await cut({ face, script, letters });
  subsets.put(name, bytes);
  return bytes;
}

async function cut({ face, script, letters }: Pick<FontFile, 'face' | 'script' | 'letters'>): Promise<Uint8Array> {
  const [before, after] = face.file;
  const whole = await readFile(require.resolve(`${face.from}/files/${before}-${script}-${after}.woff2`));
  const [min, max] = face.weights;
  const cutDown = await subsetFont(whole, letters, {
    targetFormat: 'sfnt',
    keepFeatures: FEATURES,
    noHinting: true,
    preserveNameIds: RIGHTS,
    variationAxes: { wght: min === max ? min : { min, max } },
  });
  return new Uint8Array(await convert(renameFont(cutDown, RESERVED, RIGHTS), 'woff2'));
}
