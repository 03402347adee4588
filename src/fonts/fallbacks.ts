/**
 * Fonts of the reader's own machine, set as wide and as high as the site's: little moves when those arrive.
 *
 * `size-adjust` (CSS Fonts 5, 4.9) is the mean advance of the site's font over that of the other: of letters, each weighed
 * as often as it occurs (weights of @capsizecss/unpack 4.0.1, latin), and of spaces and digits apart, since these pages
 * have more numbers than others do.
 */
interface Advances {
  /** In em. */
  readonly letters: number;
  readonly spaces: number;
  readonly digits: number;
}

/** How faces are told apart, in the order regular, semibold and bold, italic. */
const FACES = [
  'font-style: normal; font-weight: 100 500',
  'font-style: normal; font-weight: 501 900',
  'font-style: italic; font-weight: 100 900',
];

const em = (letters: number, spaces: number, digits: number): Advances => ({ letters, spaces, digits });

/** Read from the files of @fontsource/source-serif-4 and @fontsource/source-sans-3, 5.3: 400, 600, 400 italic. */
const SITE = {
  serif: {
    ascent: 1.036,
    descent: 0.335,
    faces: [em(0.5306, 0.237, 0.529), em(0.5404, 0.228, 0.547), em(0.485, 0.227, 0.537)],
  },
  sans: { ascent: 1.024, descent: 0.4, faces: [em(0.4636, 0.2, 0.497), em(0.4784, 0.2, 0.513)] },
};

/**
 * Read from the files of @fontsource/tinos, noto-serif, arimo and roboto, 5: 400, 700, 400 italic. Tinos and Arimo are as
 * wide as Times New Roman and Arial, letter for letter, and so are the two of Liberation.
 */
const LOCAL = [
  {
    of: 'serif',
    family: 'Fallback serif 1',
    names: [
      ['Times New Roman', 'Liberation Serif', 'Tinos'],
      ['Times New Roman Bold', 'Liberation Serif Bold', 'Tinos Bold'],
      ['Times New Roman Italic', 'Liberation Serif Italic', 'Tinos Italic'],
    ],
    faces: [em(0.4395, 0.25, 0.5), em(0.4717, 0.25, 0.5), em(0.441, 0.25, 0.5)],
  },
  {
    of: 'serif',
    family: 'Fallback serif 2',
    names: [['Noto Serif', 'Noto Serif Regular'], ['Noto Serif Bold'], ['Noto Serif Italic']],
    faces: [em(0.5286, 0.26, 0.559), em(0.5645, 0.26, 0.565), em(0.513, 0.26, 0.559)],
  },
  {
    of: 'sans',
    family: 'Fallback sans 1',
    names: [
      ['Arial', 'Liberation Sans', 'Arimo'],
      ['Arial Bold', 'Liberation Sans Bold', 'Arimo Bold'],
    ],
    faces: [em(0.4819, 0.2778, 0.5562), em(0.5239, 0.2778, 0.5562)],
  },
  {
    of: 'sans',
    family: 'Fallback sans 2',
    names: [['Roboto', 'Roboto Regular'], ['Roboto Bold']],
    faces: [em(0.4877, 0.248, 0.562), em(0.4952, 0.2485, 0.5737)],
  },
] as const;

/** What else a face is for; letters and whatever is left have no range. */
const RANGES = { letters: undefined, spaces: 'U+20, U+A0', digits: 'U+30-39, U+B1, U+D7, U+2212' };
const PARTS = ['letters', 'spaces', 'digits'] as const;

/** Rules `@font-face` for the families `Fallback serif 1`, `Fallback serif 2`, `Fallback sans 1` … */
export function fallbackFaces(): string {
  return LOCAL.flatMap(({ of, family, names, faces }) => {
    const { ascent, descent, faces: own } = SITE[of];
    return faces.flatMap((local, face) =>
      PARTS.map((part) => {
        const size = (own[face]?.[part] ?? 0) / local[part];
        return [
          `@font-face { font-family: '${family}'; ${FACES[face]};`,
          `src: ${names[face]?.map((name) => `local('${name}')`).join(', ')};`,
          `size-adjust: ${percent(size)}; ascent-override: ${percent(ascent / size)};`,
          `descent-override: ${percent(descent / size)}; line-gap-override: 0%;`,
          RANGES[part] === undefined ? '}' : `unicode-range: ${RANGES[part]}; }`,
        ].join(' ');
      }),
    );
  }).join('\n');
}

function percent(share: number): string {
  return `${(100 * share).toFixed(2)}%`;
}
