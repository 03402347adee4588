/** The files that a site has of its photographs and clips: their sizes, formats and names. */
import type { Bench, SourceFile } from '../model/bench.ts';
import type { Clip, Photograph } from '../model/illustration.ts';

/** Of a phone, of a column of text, and of a whole screen, in pixels. */
const WIDTHS = [480, 960, 1920] as const;

export type PhotographFormat = 'webp' | 'jpeg' | 'png';

/** One file of a photograph. */
export interface DrawnPhotograph {
  readonly kind: 'photograph';
  readonly name: string;
  readonly of: Photograph;
  readonly width: number;
  readonly format: PhotographFormat;
}

export type IllustrationFile =
  | DrawnPhotograph
  | { readonly kind: 'clip'; readonly name: string; readonly of: SourceFile }
  | { readonly kind: 'captions'; readonly name: string; readonly of: SourceFile };

/** Every size of a photograph in one format, the smallest first; never larger than it is. */
export function sizesOf(photograph: Photograph, format: PhotographFormat): readonly DrawnPhotograph[] {
  const smaller = WIDTHS.filter((width) => width < photograph.width);
  const widths = smaller.length < WIDTHS.length ? [...smaller, photograph.width] : smaller;
  return widths.map((width) => ({
    kind: 'photograph',
    name: nameOf(photograph.file, `-${width}.${format === 'jpeg' ? 'jpg' : format}`),
    of: photograph,
    width,
    format,
  }));
}

/** The format that every browser shows. */
export function plainFormat({ isLossless }: Photograph): PhotographFormat {
  return isLossless ? 'png' : 'jpeg';
}

export function clipFile({ file }: Clip): IllustrationFile {
  return { kind: 'clip', name: nameOf(file, '.mp4'), of: file };
}

export function captionsFile({ captions }: Clip): IllustrationFile | undefined {
  return captions && { kind: 'captions', name: nameOf(captions.file, '.vtt'), of: captions.file };
}

/** Of everything that texts show, each file once. */
export function illustrationFiles({ illustrations = [] }: Bench): readonly IllustrationFile[] {
  const files = illustrations.flatMap(({ shows }): readonly IllustrationFile[] =>
    shows.kind === 'photograph'
      ? filesOf(shows)
      : [...filesOf(shows.poster), clipFile(shows), captionsFile(shows)].filter((file) => file !== undefined),
  );
  return [...new Map(files.map((file) => [file.name, file])).values()];
}

function filesOf(photograph: Photograph): readonly DrawnPhotograph[] {
  return [...sizesOf(photograph, 'webp'), ...sizesOf(photograph, plainFormat(photograph))];
}

/** `balcony-3f2a9c01be-960.webp`: another picture has another name, so that nobody is shown an old one. */
function nameOf({ path, sha256 }: SourceFile, ending: string): string {
  const stem = path
    .replace(/^.*\//, '')
    .replace(/\.[^.]*$/, '')
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 40);
  return `${stem === '' ? 'picture' : stem}-${sha256.slice(0, 10)}${ending}`;
}
