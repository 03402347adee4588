import { describe, expect, it } from 'vitest';
import { textWidth, wrapText } from '../../src/charts/text-width.ts';

describe('textWidth', () => {
  // advance widths of Source Sans in its published metrics, thousandths of an em (values from memory)
  it.each([
    [' ', 200],
    ['0', 497],
    ['A', 544],
    ['m', 829],
    ['i', 246],
  ])('of %j is %i thousandths of an em, to one unit of rounding', (character, width) => {
    expect(Math.abs(textWidth(character, 1000) - width)).toBeLessThanOrEqual(1);
  });

  it('gives all digits the same width, so that columns of numbers line up', () => {
    expect(new Set([...'0123456789'].map((digit) => textWidth(digit, 1000))).size).toBe(1);
  });

  it('grows with size and weight', () => {
    expect(textWidth('Total', 20)).toBeCloseTo(2 * textWidth('Total', 10), 10);
    expect(textWidth('Total', 10, 600)).toBeGreaterThan(textWidth('Total', 10, 400));
  });

  it('counts a character that the font lacks as one em', () => {
    expect(textWidth('映像', 10)).toBe(20);
    expect(textWidth('🎥', 10)).toBe(10);
  });
});

describe('wrapText', () => {
  const SIZE = 10;
  it.each([
    ['UHD 23.976p, audio on', 1000, ['UHD 23.976p, audio on']],
    ['UHD 23.976p, audio on', 60, ['UHD 23.976p,', 'audio on']],
    ['recorder-loop', 50, ['recorder-', 'loop']],
    ['line one\nline two', 1000, ['line one line two']],
    ['', 100, ['']],
  ])('breaks %j at %i into %j', (text, limit, lines) => {
    expect(wrapText(text, limit, SIZE)).toEqual(lines);
  });

  it('breaks a word that fits no line, and loses no letter', () => {
    const word = 'a_word_without_any_place_to_break_it_anywhere_at_all';
    const lines = wrapText(`an ${word}`, 80, SIZE);
    expect(lines.join('').replace(/\s/g, '')).toBe(`an${word}`);
    for (const line of lines) expect(textWidth(line, SIZE)).toBeLessThanOrEqual(80);
  });

  it('keeps together what a no-break space joins', () => {
    expect(wrapText('seen at no.\u00a07 only', textWidth('seen at no.', SIZE), SIZE)).toEqual([
      'seen at',
      'no.\u00a07 only',
    ]);
  });
});
