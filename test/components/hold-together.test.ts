import { expect, it } from 'vitest';
import { holdTogether } from '../../src/components/hold-together.ts';

it.each([
  ['<p>on 2026-03-17, twice</p>', '<p>on <span class="whole">2026-03-17</span>, twice</p>'],
  ['<td>UHD 3840 × 2160</td>', '<td>UHD <span class="whole">3840 × 2160</span></td>'],
  [
    '<p>about ± 3.6 ms or 23 ± 11 ms</p>',
    '<p>about <span class="whole">± 3.6 ms</span> or <span class="whole">23 ± 11 ms</span></p>',
  ],
  ['<p>claims 95 % of all</p>', '<p>claims <span class="whole">95 %</span> of all</p>'],
  ['<p>−2.5 % <b>99.9 %</b></p>', '<p><span class="whole">−2.5 %</span> <b><span class="whole">99.9 %</span></b></p>'],
])('%s is held together', (html, held) => {
  expect(holdTogether(html)).toBe(held);
});

it.each([
  '<a title="2026-03-17" data-x="a > 95 %">x</a>',
  '<svg><g><text>2026-03-17</text></g></svg>',
  '<code>--date 2026-04-16</code>',
  '<pre><b>95 %</b> 2026-04-16</pre>',
  '<a class="figure" href="x">94.9 ± 3.7 ms</a>',
  '<p>12026-03-171</p>',
])('%s is left as it is', (html) => {
  expect(holdTogether(html)).toBe(html);
});
