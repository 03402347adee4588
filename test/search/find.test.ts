import { describe, expect, it } from 'vitest';
import type { SearchFacts } from '../../src/search/facts.ts';
import { finderOf } from '../../src/search/find.ts';

const FACTS: SearchFacts = {
  names: ['Median', 'Difference'],
  pages: [
    { section: 'More', title: 'Method', path: '/method/', says: 'How readings of the balcony are taken.' },
    { section: 'Bodies', title: 'Vennick Q4', path: '/bodies/vennick-q4/', words: 'stage shutter' },
    { section: 'Reports', title: 'The stage screen', path: '/reports/stage/', words: 'vennick shutter' },
    {
      section: 'Sessions',
      title: 'Vennick Q4, 50 frames/s',
      path: '/sessions/vennick-uhd50-a/',
      says: 'vennick-uhd50-a, 1 April 2026',
      words: 'balcony',
      figures: [[0, '', '163 ms', 'median']],
    },
    {
      section: 'Figures',
      title: 'Bodies compared',
      path: '/figures/bodies/',
      figures: [[1, 'Vennick Q4 less Dunmere 30, 59.94 frames/s', '12 ± 3 ms', 'difference-a-b']],
    },
  ],
};
const find = finderOf(FACTS);
const paths = (question: string): readonly string[] =>
  find(question).flatMap(({ found }) => found.map(({ path }) => path));

describe('a question', () => {
  it.each([
    ['by the word in a title', 'dunmere', ['/figures/bodies/#difference-a-b']],
    ['whatever its case', 'METHOD', ['/method/']],
    ['by how a word begins', 'shut', ['/bodies/vennick-q4/', '/reports/stage/']],
    ['with a slip in it', 'shuter', ['/bodies/vennick-q4/', '/reports/stage/']],
    ['by all of its words', 'stage vennick', ['/bodies/vennick-q4/', '/reports/stage/']],
    ['by an id', 'vennick-uhd50-a', ['/sessions/vennick-uhd50-a/']],
    ['by a figure and what it is of', 'median q4', ['/sessions/vennick-uhd50-a/#median']],
    ['by a rate', '59.94', ['/figures/bodies/#difference-a-b']],
    ['never by a number near it', '53', []],
    ['by nothing', '', []],
    ['by what is nowhere', 'stage nowhere', []],
  ])('is answered %s', (_how, question, expected) => {
    expect(paths(question)).toEqual(expected);
  });

  it('is answered section by section, bodies and reports before all else', () => {
    expect(find('vennick').map(({ title, found }) => [title, found.length])).toEqual([
      ['Bodies', 1],
      ['Reports', 1],
      ['Sessions', 1],
      ['Figures', 2],
    ]);
  });

  it('is answered with what a figure is, of what, and where', () => {
    expect(find('difference')).toMatchObject([
      {
        title: 'Figures',
        found: [
          {
            title: 'Difference: Vennick Q4 less Dunmere 30, 59.94 frames/s',
            path: '/figures/bodies/#difference-a-b',
            says: '12 ± 3 ms; Bodies compared',
          },
        ],
      },
    ]);
    expect(find('median')[0]?.found[0]).toMatchObject({ title: 'Median: Vennick Q4, 50 frames/s', says: '163 ms' });
  });

  it('is answered with the better place of a word first: a title before other words', () => {
    const [both] = finderOf({
      names: [],
      pages: [
        { section: 'Reports', title: 'Other', path: '/b/', words: 'gain' },
        { section: 'Reports', title: 'Gain', path: '/a/' },
      ],
    })('gain');
    expect(both?.found.map(({ path }) => path)).toEqual(['/a/', '/b/']);
  });
});
