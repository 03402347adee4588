/** Pictures and a clip for tests: plain colours, and a test pattern with a place written into it. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32, deflateSync } from 'node:zlib';
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

/**
 * Two frames, a tenth of a second each, chunk by chunk as the PNG specification of the W3C has them (third edition,
 * 11.3.6).
 */
export function animatedPng(width: number, height: number): Buffer {
  const chunk = (type: string, ...fields: readonly (Uint8Array | readonly number[])[]): Buffer => {
    const body = Buffer.concat([Buffer.from(type), ...fields.map((field) => Buffer.from(field))]);
    return Buffer.concat([uint32(body.length - 4), body, uint32(crc32(body))]);
  };
  const frame = (grey: number): Buffer =>
    deflateSync(Buffer.concat(Array(height).fill(Buffer.from([0, ...Array(width).fill(grey)]))));
  const control = (sequence: number) => chunk('fcTL', uint32(sequence, width, height, 0, 0), [0, 1, 0, 10, 0, 0]);
  return Buffer.concat([
    Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]),
    chunk('IHDR', uint32(width, height), [8, 0, 0, 0, 0]),
    chunk('acTL', uint32(2, 0)),
    control(0),
    chunk('IDAT', frame(0)),
    control(1),
    chunk('fdAT', uint32(2), frame(255)),
    chunk('IEND'),
  ]);
}

function uint32(...values: readonly number[]): Buffer {
  const bytes = Buffer.alloc(4 * values.length);
  values.forEach((value, at) => bytes.writeUInt32BE(value, 4 * at));
  return bytes;
}
