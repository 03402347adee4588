import { expect, it } from 'vitest';
import { relativePath } from '../../src/pictures/outlines.ts';

/**
 * Every point that a path goes through, by the rules of SVG 2, 9.3: a small letter counts from where the last command
 * ended.
 */
function pointsOf(path: string): readonly (readonly [number, number])[] {
  let [x, y, startX, startY] = [0, 0, 0, 0];
  return [...path.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)].flatMap(([, letter = '', written = '']) => {
    const numbers = (written.match(/-?\d+/g) ?? []).map(Number);
    const isRelative = letter === letter.toLowerCase();
    const [fromX, fromY] = isRelative ? [x, y] : [0, 0];
    const command = letter.toUpperCase();
    if (command === 'Z') {
      [x, y] = [startX, startY];
      return [[x, y] as const];
    }
    const pairs =
      command === 'H'
        ? [[fromX + numbers[0]!, y] as const]
        : command === 'V'
          ? [[x, fromY + numbers[0]!] as const]
          : numbers.flatMap((number, at) =>
              at % 2 === 0 ? [[fromX + number, fromY + numbers[at + 1]!] as const] : [],
            );
    [x, y] = pairs.at(-1)!;
    if (command === 'M') [startX, startY] = [x, y];
    return pairs;
  });
}

it.each([
  'M60 222L760 222L760 -40L60 222Z',
  'M346 -12Q263 -12 196 27Q128 66 89 142L89 142L-5 -7Z',
  'M0 0C10 -20 30 40 50 60ZM100 100L100 200L120 210ZL5 5',
])('a path in relative commands goes through the same points: %s', (path) => {
  const relative = relativePath(path);
  expect(relative).toMatch(/^[mhvlqcz\d -]+$/);
  expect(pointsOf(relative)).toEqual(pointsOf(path));
});

it('says horizontal and vertical lines in one number', () =>
  expect(relativePath('M60 222L760 222L760 -40')).toBe('m60 222h700v-262'));
