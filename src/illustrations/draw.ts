/** Photographs in the sizes and formats of pages. */
import service from 'astro/assets/services/sharp';
import { Store } from 'lagfolio/memory';
import type { DrawnPhotograph } from './files.ts';

const drawings = new Store('illustrations', ['src/illustrations']);

/** Of what Astro hands its service, what it reads. Lossless pictures stay without loss. */
const settingsFor = (isLossless: boolean) =>
  ({
    service: { config: { webp: isLossless ? { lossless: true } : { quality: 82 }, jpeg: { quality: 82 } } },
  }) as unknown as Parameters<typeof service.transform>[2];
const SILENT = { warn: () => {} } as unknown as Parameters<typeof service.transform>[3];

/**
 * One size of a photograph, upright and without anything that it says of its place, time and camera. What was drawn
 * before is taken from disk.
 *
 * @throws where it cannot be drawn in that format
 */
export async function drawPhotograph(bytes: Buffer, drawn: DrawnPhotograph): Promise<Uint8Array<ArrayBuffer>> {
  const { of, width, format, name } = drawn;
  const key = drawings.nameOf({ sha256: of.file.sha256, width, format });
  const known = drawings.get(key);
  if (known instanceof Uint8Array) return new Uint8Array(known);
  const made = await service.transform(bytes, { src: name, width, format }, settingsFor(of.isLossless), SILENT);
  if (made.format !== format) throw new Error(`${of.file.path} could not be drawn as ${format}`);
  const picture = new Uint8Array(made.data);
  drawings.put(key, picture);
  return picture;
}

/** Whether every pixel of a picture can be read; what was found sound once is not read again. */
export async function isSound(bytes: Buffer, sha256: string): Promise<boolean> {
  const key = drawings.nameOf({ sound: sha256 });
  if (drawings.get(key) === true) return true;
  const { default: sharp } = await import('sharp');
  const found = await sharp(bytes, { failOn: 'error' })
    .stats()
    .then(
      () => true,
      () => false,
    );
  if (found) drawings.put(key, true);
  return found;
}
