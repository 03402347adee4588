import { expect, it } from 'vitest';
import { placeTable } from '../../src/components/table-place.ts';

const table = (caption: string, row: string, value: string): string =>
  `<table><caption>${caption}<span class="shared">HD.</span></caption><thead><tr><th>Name</th><th>Value</th></tr></thead><tbody><tr><th>${row}</th><td>${value}</td></tr></tbody></table>`;

it('a table stays in its place when its numbers move, and another has another', () => {
  const place = (html: string): string => placeTable(html, new Map()).id;
  expect(place(table('All', 'A', '1 ms'))).toBe(place(table('All', 'A', '2 ms')));
  expect(place(table('All', 'A', '1 ms'))).not.toBe(place(table('All', 'B', '1 ms')));
});

it('a table that comes again on a page has a place of its own', () => {
  const taken = new Map<string, number>();
  const [first, second] = [1, 2].map(() => placeTable(table('All', 'A', '1'), taken).id);
  expect(second).toBe(`${first}-2`);
});

it('a table is called by its caption, else by its columns', () => {
  expect(placeTable(table('A &amp; &lt;B&gt;', 'A', '1'), new Map()).caption).toBe('A & <B>');
  expect(placeTable(table('', 'A', '1'), new Map()).caption).toBe('Name, Value');
});
