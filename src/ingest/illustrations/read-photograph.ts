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
  if ((head.pages ?? 1) > 1) {
    report({ code: 'moving-picture' });
    return undefined;
  }
  return { kind: 'photograph', file, width, height, isLossless: head.format === 'png' };
}
