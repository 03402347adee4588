import { expect, it } from 'vitest';
import { shareAttributes } from '../../src/charts/share-attributes.ts';

it('puts on a group what all its marks have alike, and leaves what only some have', () => {
  expect(
    shareAttributes(
      '<g class="a"><line x1="3" x2="0" y2="9" stroke="red" stroke-width="1"/><line x2="0" y2="8" stroke="red" stroke-width="2"/></g>',
    ),
  ).toBe('<g class="a" stroke="red"><line x1="3" y2="9" stroke-width="1"/><line y2="8" stroke-width="2"/></g>');
  expect(shareAttributes('<g><text fill="red" x="1">a</text><text fill="red" x="2">b</text></g>')).toBe(
    '<g fill="red"><text x="1">a</text><text x="2">b</text></g>',
  );
});

it.each([
  ['a mark without the attribute', '<g><path d="M0,0" fill="red"/><path d="M1,1"/></g>'],
  ['a mark alone', '<g><path d="M0,0" fill="red"/></g>'],
  ['a group that says otherwise', '<g fill="none"><path d="M0,0" fill="red"/><path d="M1,1" fill="red"/></g>'],
  ['marks beside a group', '<g><g></g><path d="M0,0" fill="red"/><path d="M1,1" fill="red"/></g>'],
  ['what is not inherited', '<g><path d="M0,0" opacity="0.5"/><path d="M0,0" opacity="0.5"/></g>'],
])('leaves %s as it is', (_what, svg) => expect(shareAttributes(svg)).toBe(svg));
