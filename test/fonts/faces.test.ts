/** Which fonts a publication gets, by the letters that it prints. */
import { describe, expect, it } from 'vitest';
import { FACES, fontFaces, fontFiles, type Script } from '../../src/fonts/faces.ts';
import { lettersIn, lettersOf } from '../../src/fonts/letters.ts';
import { lettersOfScript } from '../../src/fonts/subset.ts';

const filesFor = (text: string) => fontFiles(lettersOf(text), lettersOfScript);
const scriptsFor = (text: string): ReadonlySet<Script> => new Set(filesFor(text).map(({ script }) => script));

describe('letters', () => {
  it('are found however deep a text stands, in keys, maps and sets', () => {
    const texts = { ä: ['b', { c: new Map([['d', new Set(['😀'])]]) }], number: 7, nothing: undefined };
    const found = [...lettersOf(texts)].map((point) => String.fromCodePoint(point));
    expect(found).toEqual(expect.arrayContaining(['ä', 'b', 'c', 'd', '😀']));
    expect(found).not.toContain('7');
  });

  it('are found once in what holds itself', () => {
    const ring: { name: string; self?: object } = { name: 'ø' };
    ring.self = ring;
    expect(lettersOf(ring)).toContain('ø'.codePointAt(0));
  });

  it('are read from ranges as CSS Fonts 4, 4.5, writes them', () => {
    expect([...lettersIn('U+41-43,U+2212')]).toEqual([0x41, 0x42, 0x43, 0x2212]);
    expect(lettersIn('').size).toBe(0);
  });
});

describe('the fonts of a publication', () => {
  it('have each of its letters once in each face', () => {
    for (const face of FACES) {
      const letters = filesFor('Łukasz Žižka, Ångström, Ελένη, Ирина, Nguyễn')
        .filter((file) => file.face === face)
        .map((file) => file.letters)
        .join('');
      expect(letters.length).toBe(new Set(letters).size);
      for (const letter of 'ŁŽžÅöΕληИрễ±') expect(letters).toContain(letter);
    }
  });

  it('bring scripts only where they are written', () => {
    expect(scriptsFor('Ирина')).toContain('cyrillic');
    expect(scriptsFor('Irina')).not.toContain('cyrillic');
    expect(scriptsFor('測定')).toEqual(scriptsFor(''));
  });

  it('are asked for by pages that print them, and the first of each face by all', () => {
    const rules = fontFaces(filesFor('Ирина')).split('\n');
    const cyrillic = rules.filter((rule) => rule.includes('-cyrillic.woff2'));
    expect(cyrillic).toHaveLength(FACES.length);
    // И, р, и, н, а: Unicode 16, chart U0400
    for (const rule of cyrillic) expect(rule).toMatch(/unicode-range: U\+418, U\+430, U\+438, U\+43d, U\+440;/);
    expect(rules.filter((rule) => !rule.includes('unicode-range'))).toHaveLength(FACES.length);
  });
});
