import type { Photograph } from '../../model/illustration.ts';
import type { FileBytes } from '../read-source.ts';
import type { Report } from '../source.ts';

/** Far more than any camera of today takes, and what can still be worked with in little memory. */
const MOST_PIXELS = 100_000_000;
const FORMATS = new Set(['jpeg', 'png', 'webp', 'heif']);

/**
 * Undefined, with the mistake reported, where a file is no picture that can be shown. Its head is read, not its pixels.
 */
export async function readPhotograph({ file, bytes }: FileBytes, report: Report): Promise<Photograph | undefined> {
  // The package brings a program for each machine, and is asked for only where a picture is shown.
  const { default: sharp } = await import('sharp');
  const head = await sharp(bytes, { limitInputPixels: false })
    .metadata()
    .catch(() => undefined);
  if (head === undefined || !FORMATS.has(head.format) || (head.format === 'heif' && head.compression !== 'av1')) {
    report({ code: 'unreadable-picture', ...(head === undefined ? {} : { found: head.format }) });
    return undefined;
  }
  const { width, height } = head.autoOrient;
  if (width * height > MOST_PIXELS) {
    report({ code: 'picture-too-large', found: `${width} × ${height}`, expected: String(MOST_PIXELS / 1e6) });
    return undefined;
  }
  if ((head.pages ?? 1) > 1 || (head.format === 'png' && pngFrames(bytes) > 1)) {
    report({ code: 'moving-picture' });
    return undefined;
  }
  return { kind: 'photograph', file, width, height, isLossless: head.format === 'png' };
}

const SIGNATURE_LENGTH = 8;
/** Length, type and checksum of a chunk, around what it holds. */
const CHUNK_FRAME = 12;

/**
 * How many frames a PNG has, by its animation control chunk, which stands before the first data (PNG, third edition,
 * W3C 2025, 5.3 and 11.3.6.1, sections from memory); 1 without one. The reader of pictures takes an animated PNG for
 * its first frame.
 */
function pngFrames(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = SIGNATURE_LENGTH; at + CHUNK_FRAME <= bytes.length; at += CHUNK_FRAME + view.getUint32(at)) {
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (type === 'IDAT') break;
    if (type === 'acTL') return view.getUint32(at + 8);
  }
  return 1;
}
