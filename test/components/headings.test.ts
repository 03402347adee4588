import { expect, it } from 'vitest';
import { anchorHeadings } from '../../src/components/headings.ts';

it('a heading with an id has an anchor in sight, and the second level makes the contents', () => {
  const { html, headings } = anchorHeadings(
    '<h1 id="a">A</h1><h2 id="b">On <a href="x">B &amp; C</a></h2><h3 class="d" id="e">E</h3><h2>no id</h2>',
  );
  expect(html).toBe(
    '<h1 id="a">A</h1><h2 id="b">On <a href="x">B &amp; C</a> <a class="anchor" href="#b" aria-label="Link to “On B &amp; C”">#</a></h2>' +
      '<h3 class="d" id="e">E <a class="anchor" href="#e" aria-label="Link to “E”">#</a></h3><h2>no id</h2>',
  );
  expect(headings).toEqual([{ id: 'b', text: 'On B &amp; C' }]);
});
