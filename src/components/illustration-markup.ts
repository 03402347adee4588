/** The HTML of a photograph or clip, on whatever page it stands. */
import {
  captionsFile,
  clipFile,
  plainFormat,
  sizesOf,
  type IllustrationFile,
  type PhotographFormat,
} from '../illustrations/files.ts';
import type { Clip, Illustration, Photograph } from '../model/illustration.ts';
import { escapeMarkup } from '../model/markup-text.ts';
import { ILLUSTRATIONS } from '../register/paths.ts';
import { relativeHref } from './relative-href.ts';

/** As its author describes it. */
export interface Described {
  /** For those who do not see it. */
  readonly alt: string;
  /** What stands under it; nothing where it is empty. */
  readonly caption: string;
}

/** As wide as what is wider than text is at most: `--wide` in `src/styles/tokens.css`. */
const SIZES = '(min-width: 48rem) 46rem, 100vw';

/** @param from site path of the page */
export function illustrationMarkup({ shows }: Illustration, { alt, caption }: Described, from: string): string {
  const address = (file: IllustrationFile): string => escapeMarkup(relativeHref(from, ILLUSTRATIONS + file.name));
  const shown = shows.kind === 'photograph' ? photograph(shows, alt, address) : clip(shows, alt, address);
  const words = caption.trim() === '' ? '' : `<figcaption>${escapeMarkup(caption)}</figcaption>`;
  return `<figure class="illustration">${shown}${words}</figure>`;
}

type Address = (file: IllustrationFile) => string;

/** Leads to the largest that there is, to look at more closely. */
function photograph(of: Photograph, alt: string, address: Address): string {
  const plain = sizesOf(of, plainFormat(of));
  const [fallback, largest] = [plain.at(Math.min(1, plain.length - 1)), plain.at(-1)];
  if (fallback === undefined || largest === undefined) throw new Error(`${of.file.path} has no size`);
  const srcset = (format: PhotographFormat): string =>
    sizesOf(of, format)
      .map((file) => `${address(file)} ${String(file.width)}w`)
      .join(', ');
  const size = `width="${String(of.width)}" height="${String(of.height)}"`;
  return [
    `<a href="${address(largest)}"><picture>`,
    `<source type="image/webp" srcset="${srcset('webp')}" sizes="${SIZES}">`,
    `<img src="${address(fallback)}" srcset="${srcset(plainFormat(of))}" sizes="${SIZES}" ${size}`,
    ` alt="${escapeMarkup(alt)}" loading="lazy" decoding="async"></picture></a>`,
  ].join('');
}

/** Started by whoever wants to see it; before it, what could harm; after it, what is heard. */
function clip(of: Clip, alt: string, address: Address): string {
  const poster = sizesOf(of.poster, plainFormat(of.poster));
  const still = poster.at(Math.min(1, poster.length - 1));
  const captions = captionsFile(of);
  const track =
    captions === undefined || of.captions === undefined
      ? ''
      : `<track kind="captions" src="${address(captions)}" srclang="${escapeMarkup(of.captions.language)}" label="Captions">`;
  const lines = of.inWords.split(/\n+/).filter((line) => line.trim() !== '');
  return [
    of.flashes
      ? '<p class="note"><strong>This clip flashes.</strong> Flashes can trigger seizures in photosensitive people: do not start it if that may concern you.</p>'
      : '',
    `<video controls playsinline preload="none" width="${String(of.width)}" height="${String(of.height)}"`,
    still === undefined ? '' : ` poster="${address(still)}"`,
    ` aria-label="${escapeMarkup(alt)}"><source src="${address(clipFile(of))}" type="video/mp4">${track}</video>`,
    `<details><summary>What is seen and heard in this clip</summary><div data-quoted="the clip ${escapeMarkup(nameOf(of))}">`,
    ...lines.map((line) => `<p>${escapeMarkup(line)}</p>`),
    `</div><p class="small"><a href="${address(clipFile(of))}">The clip as a file</a></p></details>`,
  ].join('');
}

function nameOf({ file }: Clip): string {
  return file.path.replace(/^.*\//, '');
}
