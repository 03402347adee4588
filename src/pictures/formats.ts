/** In what sizes and colours a chart is drawn to stand alone. */

/** Margins keep clear what players, phones and captions lay over a picture; common practice, no source. */
export interface Format {
  readonly name: string;
  /** In words: `16:9`. */
  readonly label: string;
  readonly width: number;
  readonly height: number;
  readonly margin: Readonly<Record<'top' | 'right' | 'bottom' | 'left', number>>;
  /** Of the title, in px; what stands under it and the source are smaller by fixed shares. */
  readonly titleSize: number;
}

/** The sides are 5 % as in EBU R 95, graphics safe; the bottom sixth is left to captions. */
const LANDSCAPE: Format = {
  name: 'landscape',
  label: '1920 × 1080',
  width: 1920,
  height: 1080,
  margin: { top: 60, right: 96, bottom: 170, left: 96 },
  titleSize: 50,
};
const SQUARE: Format = {
  name: 'square',
  label: '1080 × 1080',
  width: 1080,
  height: 1080,
  margin: { top: 54, right: 54, bottom: 130, left: 54 },
  titleSize: 42,
};
/** Phones lay names, buttons and captions over the top, the right and the bottom of upright video. */
const UPRIGHT: Format = {
  name: 'upright',
  label: '1080 × 1920',
  width: 1080,
  height: 1920,
  margin: { top: 230, right: 110, bottom: 420, left: 60 },
  titleSize: 46,
};
export const FORMATS: readonly Format[] = [LANDSCAPE, SQUARE, UPRIGHT];

/** The one that a site has of each chart, light; the others are drawn by command. */
export const PUBLISHED = LANDSCAPE;

/** What previews of links show; nothing is laid over it. */
export const CARD: Format = {
  name: 'card',
  label: '1200 × 630',
  width: 1200,
  height: 630,
  margin: { top: 48, right: 56, bottom: 40, left: 56 },
  titleSize: 44,
};

export type Scheme = 'light' | 'dark';
export const SCHEMES: readonly Scheme[] = ['light', 'dark'];

/** As in `src/styles/tokens.css`; a test holds the two together. */
export const PALETTE: Readonly<Record<Scheme, Readonly<Record<string, string>>>> = {
  light: {
    paper: '#fcfbf8',
    ink: '#1d1c1a',
    'ink-soft': '#4c4944',
    rule: '#d9d5cb',
    accent: '#0f4c5c',
    'accent-2': '#8a3b12',
    'accent-3': '#5b4a8a',
    'body-1': '#0f4c5c',
    'body-2': '#a03c0c',
    'body-3': '#5b4a8a',
    'body-4': '#2c6530',
    'body-5': '#7a5c00',
    'body-6': '#93286a',
    caution: '#8a1c1c',
  },
  dark: {
    paper: '#171614',
    ink: '#ece9e2',
    'ink-soft': '#bdb8ae',
    rule: '#403c36',
    accent: '#8ccbd8',
    'accent-2': '#f0ab85',
    'accent-3': '#c3b3f0',
    'body-1': '#8ccbd8',
    'body-2': '#f0ab85',
    'body-3': '#c3b3f0',
    'body-4': '#9bd08f',
    'body-5': '#e3c765',
    'body-6': '#efa0cf',
    caution: '#f5a3a0',
  },
};
