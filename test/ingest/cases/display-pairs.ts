import type { ProblemCase } from './case.ts';

const NOTE = '---\ntitle: Side by side\nsummary: Two displays.\ndate: 2026-04-01\n---\n';
const WALL = '---\nname: Wall\nrefresh: 60\nsync: free\n---\n';
const FRONT = [
  'method: side-by-side',
  'date: 2026-04-11',
  'display: wall',
  'against: screen',
  'source-timer: { name: Laptop, refresh: 60 }',
  'outputs: splitter',
];
const ROWS = ['1,1.000,0.983,,', '1,2.000,2.017,,'];

function pair(from: string, to: string, rows: readonly string[] = ROWS) {
  return {
    'content/methods/side-by-side.mdx': NOTE,
    'data/displays/wall.md': WALL,
    'data/display-pairs/p.md': `---\n${FRONT.join('\n').replace(from, to)}\n---\n`,
    'data/display-pairs/p.csv': `run,source,shown,exclude,note\n${rows.join('\n')}\n`,
  };
}

/** Two displays read against each other. */
export const DISPLAY_PAIR_CASES: readonly ProblemCase[] = [
  { name: 'a sound pair, one of whose differences is below zero', changes: pair('', ''), lines: [] },
  {
    name: 'a planned comparison, which needs no date until readings are typed',
    changes: pair('date: 2026-04-11', 'planned: true', []),
    lines: [],
  },
  {
    name: 'a planned comparison with readings and no date',
    changes: pair('date: 2026-04-11', 'planned: true'),
    lines: ['data/display-pairs/p.md:1  date  this key is missing. Add it.'],
  },
  {
    name: 'a method of totals',
    changes: pair('side-by-side', 'two-timers'),
    lines: [
      'data/display-pairs/p.md:2:9  method  unknown method "two-timers"; expected one of side-by-side, mirrored-screen.',
    ],
  },
  {
    name: 'a method without a note',
    changes: pair('side-by-side', 'mirrored-screen'),
    lines: [
      'data/display-pairs/p.md:2:9  method  the method "mirrored-screen" has no page mirrored-screen.mdx. Write it, so that readers can see how the readings were taken.',
    ],
  },
  {
    name: 'a display against itself',
    changes: pair('against: screen', 'against: wall'),
    lines: [
      'data/display-pairs/p.md:5:10  against  "wall" stands under display as well. Name under “against” the other display, whose values stand under source.',
    ],
  },
  {
    name: 'an unknown display',
    changes: pair('display: wall', 'display: wal'),
    lines: [
      'data/display-pairs/p.md:4:10  display  unknown display "wal"; expected one of screen, wall. Did you mean wall?',
    ],
  },
  {
    name: 'outputs of another word',
    changes: pair('outputs: splitter', 'outputs: two'),
    lines: [
      'data/display-pairs/p.md:7:10  outputs  "two" does not say how the picture is fed to both displays. Write splitter (one output feeds both), unknown (two outputs that nobody compared), or how far they were found alike, as a standard uncertainty (1 ms).',
    ],
  },
  {
    name: 'a time that is none',
    changes: pair('', '', ['1,1.000,0.983,,', '1,two,2.017,,']),
    lines: [
      'data/display-pairs/p.csv:3  source  expected a time, found "two"; write 31.482, 00:31.482 or 00:00:31.482. Where there is no value, leave the cell empty and say under exclude why.',
    ],
  },
];
