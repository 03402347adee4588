/** Pictures and a clip for tests: plain colours, and a test pattern with a place written into it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { PROJECT } from './project-files.ts';

export const CLIP = readFileSync(join(PROJECT, 'test/support/pictures/clip.mp4'));

/** One colour all over. */
export function plain(width: number, height: number): Sharp {
  return sharp({ create: { width, height, channels: 3, background: '#47a' } });
}

/** A photograph as a camera leaves it: lying on its side, with the place and the name of whoever took it. */
export function asTaken(width: number, height: number): Promise<Buffer<ArrayBufferLike>> {
  return plain(width, height)
    .jpeg()
    .withExif({ IFD0: { Artist: 'Nobody' }, IFD3: { GPSLatitude: '51/1 30/1 0/1' } })
    .withMetadata({ orientation: 6 })
    .toBuffer();
}
