import { expect, it } from 'vitest';
import { labelCells } from '../../src/components/label-cells.ts';

it('a cell carries the label of its column, a table the number of its columns, and each part its role', () => {
  const html =
    '<table><thead><tr><th scope="col">Body</th><th scope="col" class="number">A <b>&amp;</b> "B"</th></tr></thead>' +
    '<tbody><tr><th scope="row">One</th><td title="x > y">1</td></tr></tbody></table>';
  expect(labelCells(html)).toBe(
    '<table role="table" data-columns="2"><thead role="rowgroup"><tr role="row">' +
      '<th scope="col" role="columnheader">Body</th><th scope="col" class="number" role="columnheader">A <b>&amp;</b> "B"</th></tr></thead>' +
      '<tbody role="rowgroup"><tr role="row"><th scope="row" role="rowheader">One</th>' +
      '<td title="x > y" role="cell" data-label="A &amp; &quot;B&quot;">1</td></tr></tbody></table>',
  );
});

it('a cell over several columns takes their place', () => {
  const html =
    '<table><thead><tr><th>A</th><th>B</th><th>C</th></tr></thead><tbody><tr><td colspan="2">1</td><td>2</td></tr></tbody></table>';
  expect([...labelCells(html).matchAll(/data-label="(.)"/g)].map(([, label]) => label)).toEqual(['A', 'C']);
});

it('a table without a head has no labels', () => {
  expect(labelCells('<table><tbody><tr><td>1</td></tr></tbody></table>')).toBe(
    '<table role="table" data-columns="0"><tbody role="rowgroup"><tr role="row"><td role="cell">1</td></tr></tbody></table>',
  );
});
