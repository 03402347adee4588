/**
 * The faces of the site's fonts: which file brings each, and the rules `@font-face` for them.
 *
 * They are `optional` (CSS Fonts 4, 11): a reader whose connection is slow reads the first page in a font of their own
 * machine, set as wide (fallbacks), and the next one in these. A font that came late in the midst of reading would break
 * paragraphs anew, however alike the two are: one line more moves all that stands below it.
 */
interface Face {
  readonly family: string;
  /** The package that brings it. */
  readonly from: string;
  /** Of its file in the package, without an ending; also of its file on the site. */
  readonly name: string;
  readonly style: 'normal' | 'italic';
  readonly weight: string;
  /** Whether every page needs it: pages ask for those at once. */
  readonly everywhere: boolean;
}

const serif = { family: 'Source Serif 4', from: '@fontsource/source-serif-4' };
const sans = { family: 'Source Sans 3 Variable', from: '@fontsource-variable/source-sans-3' };

export const FACES: readonly Face[] = [
  { ...serif, name: 'source-serif-4-latin-400-normal', style: 'normal', weight: '400', everywhere: true },
  { ...serif, name: 'source-serif-4-latin-600-normal', style: 'normal', weight: '600', everywhere: true },
  { ...serif, name: 'source-serif-4-latin-400-italic', style: 'italic', weight: '400', everywhere: false },
  { ...sans, name: 'source-sans-3-latin-wght-normal', style: 'normal', weight: '200 900', everywhere: true },
];

/** Site path of the file of a face. */
export const facePath = ({ name }: Face): string => `/fonts/${name}.woff2`;

/** Of a face, the name under which its licence goes with it. */
export const licenceOf = ({ name }: Face): string => name.replace(/-latin-.*$/, '-licence');

/** The rules, with addresses relative to the stylesheet. */
export function fontFaces(): string {
  const licences = [...new Set(FACES.map((face) => `fonts/${licenceOf(face)}.txt`))];
  const rules = FACES.map((face) =>
    [
      `@font-face { font-family: '${face.family}'; font-style: ${face.style}; font-weight: ${face.weight};`,
      `font-display: optional; src: url(${facePath(face).slice(1)}) format('woff2'); }`,
    ].join(' '),
  );
  return [`/* Fonts under the SIL Open Font License 1.1: ${licences.join(', ')}. */`, ...rules].join('\n');
}
