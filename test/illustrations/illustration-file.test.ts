import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { boxesOf } from '../../src/ingest/illustrations/mp4-boxes.ts';
import { checkIllustrations, readIllustrationFile } from '../../src/illustrations/illustration-file.ts';
import { plainFormat, sizesOf } from '../../src/illustrations/files.ts';
import { stripClip } from '../../src/illustrations/strip-clip.ts';
import type { Bench } from '../../src/model/bench.ts';
import type { Photograph } from '../../src/model/illustration.ts';
import { asTaken, CLIP, plain } from '../support/pictures.ts';

const root = mkdtempSync(join(tmpdir(), 'pictures-'));
afterAll(() => rmSync(root, { recursive: true }));

function photograph(name: string, bytes: Buffer, width: number, height: number, isLossless = false): Photograph {
  writeFileSync(join(root, name), bytes);
  return {
    kind: 'photograph',
    file: { path: name, sha256: name.padEnd(64, '0'), bytes: bytes.length },
    width,
    height,
    isLossless,
  };
}

describe('a photograph', async () => {
  // Taken 1200 wide and lying on its side: it stands 800 wide.
  const taken = await asTaken(1200, 800);
  const upright = photograph('rig.jpg', taken, 800, 1200);

  it('holds what nobody is to know, before it is put out', async () => {
    const { exif, orientation } = await sharp(taken).metadata();
    expect(orientation).toBe(6);
    expect(exif?.toString('latin1')).toContain('Nobody');
  });

  it.each(['webp', 'jpeg'] as const)(
    'stands upright as %s, no larger than it is, and says nothing of its maker',
    async (format) => {
      const sizes = sizesOf(upright, format);
      expect(sizes.map(({ width }) => width)).toEqual([480, 800]);
      for (const size of sizes) {
        const { bytes, type } = await readIllustrationFile(root, size);
        const head = await sharp(bytes).metadata();
        expect(type).toBe(`image/${format}`);
        expect([head.format, head.width, head.height]).toEqual([format, size.width, (size.width * 3) / 2]);
        expect([head.exif, head.xmp, head.iptc, head.orientation]).toEqual([
          undefined,
          undefined,
          undefined,
          undefined,
        ]);
      }
    },
  );

  it('is the same byte for byte each time', async () => {
    const [size] = sizesOf(upright, 'webp');
    if (size === undefined) throw new Error('no size');
    const [one, other] = [await readIllustrationFile(root, size), await readIllustrationFile(root, size)];
    expect(Buffer.from(one.bytes).equals(Buffer.from(other.bytes))).toBe(true);
  });

  it('that is a picture of a screen keeps every pixel', async () => {
    const screen = sharp({
      create: {
        width: 300,
        height: 200,
        channels: 3,
        background: '#000',
        noise: { type: 'gaussian', mean: 99, sigma: 40 },
      },
    });
    const png = await screen.png().toBuffer();
    const drawing = photograph('screen.png', png, 300, 200, true);
    expect(plainFormat(drawing)).toBe('png');
    for (const format of ['png', 'webp'] as const) {
      const [size] = sizesOf(drawing, format);
      if (size === undefined) throw new Error('no size');
      const { bytes } = await readIllustrationFile(root, size);
      const [made, was] = [await sharp(bytes).raw().toBuffer(), await sharp(png).raw().toBuffer()];
      expect(made.equals(was)).toBe(true);
    }
  });

  it('that breaks off in the middle is refused before any page is written', async () => {
    const whole = await plain(600, 400).jpeg().toBuffer();
    const broken = photograph('broken.jpg', whole.subarray(0, whole.length / 2), 600, 400);
    const show = (shows: Photograph): Bench =>
      ({ illustrations: [{ text: 'content/reports/a.mdx', to: 'a.jpg', shows }] }) as unknown as Bench;
    await expect(checkIllustrations(root, show(broken))).rejects.toThrow(/broken\.jpg {2}cannot be read as a picture/);
    await expect(checkIllustrations(root, show(photograph('whole.jpg', whole, 600, 400)))).resolves.toBeUndefined();
  });
});

describe('a clip', () => {
  const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1');

  it('loses its place, its maker and its days, and nothing else', () => {
    expect(text(CLIP)).toContain('Nobody');
    expect(boxesOf(CLIP).some(({ type }) => type === 'udta')).toBe(true);
    const stripped = stripClip(CLIP);
    expect(text(stripped)).not.toMatch(/Nobody|loci|©xyz/);
    expect(stripped.length).toBe(CLIP.length);
    const kept = (bytes: Uint8Array) =>
      boxesOf(bytes)
        .filter(({ type }) => !['udta', 'free', 'mvhd', 'tkhd', 'mdhd'].includes(type))
        .map(({ type, start, end }) => [type, Buffer.from(bytes.subarray(start, end)).toString('base64')])
        .filter(([type]) => !['moov', 'trak', 'mdia'].includes(type ?? ''));
    expect(kept(stripped)).toEqual(kept(CLIP));
    expect(kept(stripped).length).toBeGreaterThan(4);
  });

  it('loses days of either width: ISO/IEC 14496-12:2022, 8.2.2', () => {
    const head = (version: number, days: number): Uint8Array => {
      const content = Buffer.alloc(4 + 2 * days + 8, 7);
      content[0] = version;
      const box = Buffer.alloc(8);
      box.writeUInt32BE(16 + content.length);
      box.write('moov', 4);
      const inner = Buffer.alloc(8);
      inner.writeUInt32BE(8 + content.length);
      inner.write('mvhd', 4);
      return Buffer.concat([box, inner, content]);
    };
    for (const [version, days] of [
      [0, 4],
      [1, 8],
    ] as const) {
      const after = stripClip(head(version, days)).subarray(16);
      expect([...after.subarray(4, 4 + 2 * days)]).toEqual(new Array(2 * days).fill(0));
      expect([...after.subarray(4 + 2 * days)]).toEqual(new Array(8).fill(7));
    }
  });
});
