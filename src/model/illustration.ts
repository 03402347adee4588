/** Photographs and clips that authors show in their texts. */
import type { SourceFile } from './source-file.ts';

/** A still picture, as it stands upright. */
export interface Photograph {
  readonly kind: 'photograph';
  readonly file: SourceFile;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Whether it was kept without loss, as drawings and pictures of screens are: then it is put out without loss. */
  readonly isLossless: boolean;
}

/** A film. Whatever is in its sound is there to be read as well. */
export interface Clip {
  readonly kind: 'clip';
  readonly file: SourceFile;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  readonly seconds: number;
  /** What stands in its place until it is started. */
  readonly poster: Photograph;
  /** WebVTT, and the language of its words as a tag of BCP 47. */
  readonly captions?: { readonly file: SourceFile; readonly language: string };
  /** What is seen and heard, as text: the author's, or the words of the captions. */
  readonly inWords: string;
  /** Whether something in it flashes, as its author says. */
  readonly flashes: boolean;
}

/** Every file that is shown with it: a clip's poster and captions too. */
export function filesShown(shows: Photograph | Clip): readonly SourceFile[] {
  if (shows.kind === 'photograph') return [shows.file];
  return [shows.file, shows.poster.file, ...(shows.captions === undefined ? [] : [shows.captions.file])];
}

/** A photograph or clip at its place in a text. */
export interface Illustration {
  /** The text, by its published path: `data/rigs/balcony.md`. */
  readonly text: string;
  /** As the text names it, percent escapes read: `balcony.jpg`. */
  readonly to: string;
  readonly shows: Photograph | Clip;
}
