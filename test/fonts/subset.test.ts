/** That fonts which were cut down still show what pages print, as stylesheets ask for it, under a name that they may bear. */
import { readFileSync } from 'node:fs';
import { create, type Font } from 'fontkitten';
import { convert } from 'fontverter';
import { describe, expect, it } from 'vitest';
import { FACES, type FontFile } from '../../src/fonts/faces.ts';
import { fontsFor } from '../../src/fonts/index.ts';
import { renameFont } from '../../src/fonts/rename-font.ts';
import { fontBytes, licenceText } from '../../src/fonts/subset.ts';

const files = fontsFor(['Łukasz Ирина é']);

/** Tags of the features in the tables GSUB and GPOS: OpenType 1.9.1, “Common table formats”, FeatureList. */
async function featuresOf(file: FontFile): Promise<string[]> {
  const font = Buffer.from(await convert(Buffer.from(await fontBytes(file)), 'sfnt'));
  return ['GSUB', 'GPOS'].flatMap((table) => {
    const at = font.readUInt32BE(font.indexOf(table) + 8);
    const list = at + font.readUInt16BE(at + 6);
    return Array.from({ length: font.readUInt16BE(list) }, (_, nth) =>
      font.toString('latin1', list + 2 + 6 * nth, list + 6 + 6 * nth),
    );
  });
}

async function read(file: FontFile): Promise<Font> {
  const font = create(Buffer.from(await fontBytes(file)));
  if (font.isCollection) throw new Error(`${file.path} is a collection`);
  return font;
}

describe.each(files.map((file) => [file.path, file] as const))('%s', (_path, file) => {
  it('has its letters, as far as the font of which it is made does', async () => {
    const font = await read(file);
    const [before, after] = file.face.file;
    const name = `${file.face.from}/files/${before}-${file.script}-${after}.woff2`;
    const whole = create(readFileSync(new URL(import.meta.resolve(name))));
    const had = new Set(whole.isCollection ? [] : whole.characterSet);
    expect(had.size).toBeGreaterThan(0);
    const missing = [...file.letters]
      .map((letter) => letter.codePointAt(0) ?? 0)
      .filter((point) => had.has(point) && !font.hasGlyphForCodePoint(point));
    expect(missing).toEqual([]);
  });

  it('bears no name that its licence reserves, and says whose it is', async () => {
    const { familyName, fullName, postscriptName, copyright } = await read(file);
    for (const name of [familyName, fullName, postscriptName]) {
      expect(name).toMatch(/\S/);
      expect(name).not.toMatch(/Source/i);
    }
    expect(copyright).toMatch(/Adobe.*Reserved Font Name .Source/);
  });

  it('is made of the same bytes again', async () => {
    expect(Buffer.compare(await fontBytes(file), await fontBytes({ ...file }))).toBe(0);
  });
});

describe.each(FACES.map((face) => [face.name, face] as const))('the face %s', (_name, face) => {
  const file = files.find((one) => one.face === face && one.script === 'latin')!;

  it('is kerned, and joins letters', async () => {
    // CSS Fonts 4, 6.4 and 6.5: both are on by default
    expect(await featuresOf(file)).toEqual(expect.arrayContaining(['kern', 'liga']));
  });

  it('has figures of one width, as columns of numbers need', async () => {
    const font = await read(file);
    const widths = [...'0123456789'].map((digit) => font.glyphForCodePoint(digit.codePointAt(0) ?? 0).advanceWidth);
    expect(new Set(widths).size).toBe(1);
    expect(widths[0]).toBeGreaterThan(0);
  });

  it('has the weights that it is said to have', async () => {
    const { variationAxes } = await read(file);
    const [min, max] = face.weights;
    if (min === max) expect(variationAxes).toEqual({});
    else expect(variationAxes).toEqual({ wght: expect.objectContaining({ min, max }) });
  });

  it('comes with its licence', async () => {
    expect(await licenceText(face)).toMatch(/Reserved Font Name 'Source'[\s\S]*SIL OPEN FONT LICENSE Version 1\.1/);
  });
});

describe('another name for a font', () => {
  it('is as long, so that nothing else moves', () => {
    expect(() => renameFont(new Uint8Array(), { from: 'Source', to: 'Sub' }, [])).toThrow(/one length/);
  });
});
