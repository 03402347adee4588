/**
 * The faces of the site's fonts: which font each is made of, and in which files it comes.
 *
 * They are `optional` (CSS Fonts 4, 11): a reader whose connection is slow reads the first page in a font of their own
 * machine, set as wide (fallbacks), and the next one in these. A font that came late in the midst of reading would break
 * paragraphs anew, however alike the two are: one line more moves all that stands below it.
 */
import { BASIC, type Letters } from './letters.ts';

export interface Face {
  /** As stylesheets call it, and of its files. No name of the font that it is made of: its licence reserves that. */
  readonly family: 'Site serif' | 'Site sans';
  readonly name: 'serif' | 'serif-italic' | 'sans';
  readonly style: 'normal' | 'italic';
  /** The least and the greatest that stylesheets ask for; the same twice where they ask for one. */
  readonly weights: readonly [least: number, greatest: number];
  /** The package that brings the font, and the name of its files there, before the script and after it. */
  readonly from: string;
  readonly file: readonly [before: string, after: string];
  /** What the font is called. */
  readonly of: string;
  /** Whether every page needs it: pages ask for those at once. */
  readonly everywhere: boolean;
}

/** Letters of one script of a face, as one file. */
export interface FontFile {
  readonly face: Face;
  readonly script: Script;
  /** Each once, in order. */
  readonly letters: string;
  /** Site path. */
  readonly path: string;
}

const SERIF = { family: 'Site serif', from: '@fontsource-variable/source-serif-4', of: 'Source Serif 4' } as const;
const SANS = { family: 'Site sans', from: '@fontsource-variable/source-sans-3', of: 'Source Sans 3' } as const;

export const FACES: readonly Face[] = [
  {
    ...SERIF,
    name: 'serif',
    file: ['source-serif-4', 'wght-normal'],
    style: 'normal',
    weights: [400, 600],
    everywhere: true,
  },
  {
    ...SERIF,
    name: 'serif-italic',
    file: ['source-serif-4', 'wght-italic'],
    style: 'italic',
    weights: [400, 400],
    everywhere: false,
  },
  {
    ...SANS,
    name: 'sans',
    file: ['source-sans-3', 'wght-normal'],
    style: 'normal',
    weights: [400, 600],
    everywhere: true,
  },
];

/** Every page needs the first; letters of the others, each with the first that has it, come where a page prints them. */
const SCRIPTS = ['latin', 'latin-ext', 'greek', 'greek-ext', 'cyrillic', 'cyrillic-ext', 'vietnamese'] as const;
const FIRST = SCRIPTS[0];

export type Script = (typeof SCRIPTS)[number];

/** Site path of the file of a face that has its most frequent letters. */
export const facePath = ({ name }: Face): string => `/fonts/${name}.woff2`;

/** Of a face, the name under which its licence goes with it. */
export const licenceOf = ({ name }: Face): string => `${name.replace('-italic', '')}-licence`;

/** The files of all faces that a publication with these letters needs; `known` says which letters a script has. */
export function fontFiles(letters: Letters, known: (face: Face, script: Script) => Letters): FontFile[] {
  const wanted = letters.union(BASIC);
  return FACES.flatMap((face) => {
    const placed = new Set<number>();
    return SCRIPTS.flatMap((script) => {
      const held = [...wanted.intersection(known(face, script)).difference(placed)].sort((a, b) => a - b);
      for (const letter of held) placed.add(letter);
      const path = script === FIRST ? facePath(face) : `/fonts/${face.name}-${script}.woff2`;
      return held.length === 0 ? [] : [{ face, script, letters: String.fromCodePoint(...held), path }];
    });
  });
}

/** What a stylesheet says of the fonts' licences. */
export function licenceComment(): string {
  const licences = [...new Set(FACES.map((face) => `fonts/${licenceOf(face)}.txt`))];
  return `/* Fonts under the SIL Open Font License 1.1: ${licences.join(', ')}. */`;
}

/** The rules `@font-face`, with addresses relative to the stylesheet. */
export function fontFaces(files: readonly FontFile[]): string {
  return files
    .map(({ face, script, letters, path }) =>
      [
        `@font-face { font-family: '${face.family}'; font-style: ${face.style};`,
        `font-weight: ${[...new Set(face.weights)].join(' ')};`,
        `font-display: optional; src: url(${path.slice(1)}) format('woff2');`,
        script === FIRST ? '}' : `unicode-range: ${rangeOf(letters)}; }`,
      ].join(' '),
    )
    .join('\n');
}

function rangeOf(letters: string): string {
  return [...letters].map((letter) => `U+${letter.codePointAt(0)?.toString(16)}`).join(', ');
}
