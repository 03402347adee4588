/**
 * The comparison of bodies, of a small bench: one set of readings shifted, so that who is lowest is known beforehand.
 */
import { describe, expect, it } from 'vitest';
import type { Bench, Session } from '../../src/model/bench.ts';
import { compileBench } from '../../src/site/compile.ts';
import { bodyGrids } from '../../src/views/body-grid.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const at = (middle: number) =>
  [0, 1, 2, 3, 4, 5].map((n) =>
    reading(n + 2, middle + 6 * ((n % 3) - 1), { run: 1 + (n % 3), sourceMs: 3001 * n + 7 * n * n }),
  );
const hd = (rate: string) => ({ resolution: 'hd', rate, 'audio-out': 'off' });
const of = (id: string, body: string, rate: string, middle: number, more: Partial<Session> = {}): Session =>
  session(id, hd(rate), { body, readings: at(middle), ...more });
const part = (folder: string, id: string, name: string) => ({
  id,
  name,
  invented: true,
  description: '',
  prose: [],
  file: { path: `data/${folder}/${id}.md`, sha256: '0'.repeat(64), bytes: 1 },
});

function three(sessions: readonly Session[]): Bench {
  const whole = bench(sessions);
  const [first, second] = whole.bodies;
  const [rig] = whole.rigs;
  if (!first || !second || !rig) throw new Error('the small bench has two bodies and a rig');
  return {
    ...whole,
    bodies: [first, second, { ...second, id: 'corrie', name: 'Corrie' }],
    rigs: [rig, { ...rig, id: 'barn', name: 'Barn' }],
    links: [part('links', 'radio', 'Radio pair')],
  };
}
const grids = (sessions: readonly Session[]) => bodyGrids(compileBench(three(sessions)));
/** `lowest`, with the total's session: what stands in each cell of a row. */
const cells = (row: ReturnType<typeof grids>[number]['rows'][number] | undefined) =>
  row?.cells.map((cell) => cell.map(({ total, words, standing }) => [total.of['session'], standing, words]));

describe('the grid of a rig', () => {
  const [grid, ...others] = grids([
    of('a24', 'alba-one', '24', 400),
    of('b24', 'brae', '24', 200),
    of('c24', 'corrie', '24', 201),
    of('a25', 'alba-one', '25', 300),
  ]);

  it('has a row for each condition and a cell for each body, open where nobody measured', () => {
    expect(others).toEqual([]);
    expect([grid?.name, grid?.rig, grid?.bodies.map(({ name }) => name)]).toEqual([
      'Attic',
      'attic',
      ['Alba One', 'Brae', 'Corrie'],
    ]);
    expect(grid?.rows.map(({ condition }) => condition)).toEqual(['24 frames/s', '25 frames/s']);
    expect(grid?.shared).toBe('Resolution HD 1920 × 1080; embedded audio off.');
  });

  it('says which is lowest, which is too close to call with it, and nothing of the rest', () => {
    expect(cells(grid?.rows[0])).toEqual([
      [['a24', 'higher', '']],
      [['b24', 'lowest', 'lowest']],
      [['c24', 'tied', 'too close to call']],
    ]);
  });

  it('calls nothing lowest where only one body was measured', () => {
    expect(cells(grid?.rows[1])).toEqual([[['a25', undefined, '']], [], []]);
  });

  it('compares every two bodies under the heading of their condition', () => {
    expect(grid?.compared?.rows.map(({ group, label }) => [group, label])).toEqual([
      ['24 frames/s', 'Alba One against Brae'],
      ['24 frames/s', 'Alba One against Corrie'],
      ['24 frames/s', 'Brae against Corrie'],
    ]);
    // shifted readings: 400 − 200, 400 − 201, 200 − 201
    expect(grid?.compared?.rows.map(({ difference }) => Math.round(difference.value))).toEqual([200, 199, -1]);
    expect(grid?.compared?.familySizes.map(({ value }) => value)).toEqual([3]);
    expect(grid?.compared?.shared).toBe('');
  });
});

describe('several grids', () => {
  it('stand in the order of the rigs, the one with more conditions first, each named by what sets its chain apart', () => {
    const made = grids([
      of('x', 'alba-one', '24', 400, { rig: 'barn' }),
      of('r', 'alba-one', '24', 410, { links: ['radio'] }),
      of('r2', 'brae', '24', 420, { links: ['radio'] }),
      of('d24', 'brae', '24', 300),
      of('d25', 'brae', '25', 290),
    ]);
    expect(made.map(({ name, rows }) => [name, rows.length])).toEqual([
      ['Attic', 2],
      ['Attic, through Radio pair', 1],
      ['Barn', 1],
    ]);
    expect(made.map(({ compared }) => compared?.rows.map(({ label }) => label))).toEqual([
      undefined,
      ['Alba One against Brae'],
      undefined,
    ]);
  });

  it('are named by the method where a rig was read in two ways', () => {
    const made = grids([
      of('t', 'alba-one', '24', 400),
      session('i', hd('25'), { method: 'instrument', readings: [reading(2, 300), reading(3, 301)] }),
    ]);
    expect(made.map(({ name }) => name)).toEqual(['Attic, read by two-timers', 'Attic, read by instrument']);
  });
});

it('bodies stand against their frame rates where two of them have two rates, alike in everything else', () => {
  const [grid] = grids([
    of('a24', 'alba-one', '24', 400),
    of('a60', 'alba-one', '59.94', 200),
    of('c60', 'corrie', '59.94', 150),
    of('c25', 'corrie', '25', 290),
    of('b24', 'brae', '24', 390),
    session('loud', { ...hd('25'), 'audio-out': 'on' }, { readings: at(380) }),
  ]);
  expect(
    grid?.rates?.bodies.map(({ name, place, points }) => [
      name,
      place,
      points.map(({ rate, figure }) => [rate, figure.id]),
    ]),
  ).toEqual([
    [
      'Alba One',
      0,
      [
        ['24', 'total/a24'],
        ['59.94', 'total/a60'],
      ],
    ],
    [
      'Corrie',
      2,
      [
        ['25', 'total/c25'],
        ['59.94', 'total/c60'],
      ],
    ],
  ]);
  expect(grids([of('a24', 'alba-one', '24', 400), of('b24', 'brae', '24', 390)])[0]?.rates).toBeUndefined();
});

it('two sessions of one body in one condition are told apart, and one of them stands for it', () => {
  const [grid] = grids([
    of('a1', 'alba-one', '24', 400, { date: '2026-01-02' }),
    of('a2', 'alba-one', '24', 404, { date: '2026-01-09' }),
    of('b', 'brae', '24', 200),
  ]);
  const [alba, brae] = cells(grid?.rows[0]) ?? [];
  expect(brae).toEqual([['b', 'lowest', 'lowest']]);
  expect(alba).toEqual([
    ['a1', undefined, '2026-01-02'],
    ['a2', 'higher', '2026-01-09'],
  ]);
});
