import { describe, expect, it } from 'vitest';
import { betweenSessions } from '../../src/register/findings/inputs/between-sessions.ts';
import { unevenClips } from '../../src/register/findings/inputs/uneven-clips.ts';
import { repeatedRows } from '../../src/register/findings/inputs/repeated-rows.ts';
import type { SessionFigures } from '../../src/register/session-figures.ts';
import { compileBench } from '../../src/site/compile.ts';
import { isReason } from '../../src/ingest/reasons.ts';
import { rate } from '../../src/model/rate.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const AT_24 = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const own = (first: number) => ({ readings: [0, 1, 2, 3].map((at) => reading(first + at, 300 + at)) });
const rulesOf = (...sessions: Parameters<typeof bench>[0]): readonly string[] =>
  betweenSessions(bench(sessions)).map(({ rule, where }) => `${rule} ${where['session']}`);

it('says nothing of sessions that have nothing wrong between them', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', AT_24, own(9)))).toEqual([]);
});

it('names a session whose readings are those of another', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', AT_24, own(2)))).toEqual(['copied-readings b']);
});

it('names a session whose latencies are those of another, at other times or by another method', () => {
  const twelve = [303, 317, 298, 305, 311, 300, 309, 296, 314, 302, 307, 299];
  const at = (first: number) => ({ readings: twelve.map((ms, index) => reading(first + index, ms)) });
  expect(rulesOf(session('a', AT_24, at(2)), session('b', AT_24, at(60)))).toEqual(['copied-readings b']);
  const counted = (latencies: readonly number[]) => ({
    method: 'frame-count' as const,
    readings: latencies.map((latencyMs, index) => ({ line: 2 + index, run: 1, latencyMs, cells: {} })),
  });
  const other = counted([...twelve].reverse());
  expect(rulesOf(session('a', AT_24, counted(twelve)), session('b', AT_24, other))).toEqual([]);
  const both = {
    ...other,
    readings: [...other.readings, ...counted(twelve).readings.map((row) => ({ ...row, run: 2 }))],
  };
  expect(rulesOf(session('a', AT_24, counted(twelve)), session('b', AT_24, both))).toEqual(['copied-readings b']);
});

it('names a session that leaves a setting out', () => {
  expect(rulesOf(session('a', AT_24, own(2)), session('b', { rate: '24', resolution: 'uhd' }, own(9)))).toEqual([
    'setting-not-stated b',
  ]);
});

it.each(['1.4', 'v1.40', '1.40 beta', '1,40', 'l.40', '1.4O', '1.4\u041e'])(
  'names a firmware 1.40 that is also written %s',
  (firmware) => {
    expect(
      rulesOf(session('a', AT_24, { ...own(2), firmware: '1.40' }), session('b', AT_24, { ...own(9), firmware })),
    ).toEqual(['firmware-spelling b']);
  },
);

it('names a date far from any other', () => {
  const days = ['2026-01-02', '2026-01-03', '2062-01-02'];
  expect(rulesOf(...days.map((date, at) => session(`s${at}`, AT_24, { ...own(2 + 7 * at), date })))).toEqual([
    'date-apart s2',
  ]);
});

it('names a date a year off, where the others lie within weeks', () => {
  const of = (...days: readonly string[]) =>
    rulesOf(...days.map((date, at) => session(`s${at}`, AT_24, { ...own(2 + 7 * at), date })));
  expect(of('2025-02-20', '2026-02-12', '2026-03-01', '2026-03-02')).toEqual(['date-apart s0']);
  expect(of('2026-02-12', '2026-03-01', '2026-05-20')).toEqual([]);
  // A bench that rests for months rests for months again.
  expect(of('2026-02-12', '2026-08-01', '2027-02-10')).toEqual([]);
});

it('names a firmware that went back, and a session that states none', () => {
  const of = (...stated: readonly (readonly [string, string | undefined])[]) =>
    rulesOf(
      ...stated.map(([date, firmware], at) =>
        session(`s${at}`, AT_24, { ...own(2 + 7 * at), date, ...(firmware === undefined ? {} : { firmware }) }),
      ),
    );
  expect(of(['2026-03-01', '1.9'], ['2026-03-02', '1.10'], ['2026-03-03', '1.10'])).toEqual([]);
  expect(of(['2026-03-01', '1.41'], ['2026-03-02', '1.40'], ['2026-03-03', '1.40'])).toEqual(['firmware-went-back s0']);
  expect(of(['2026-03-01', '2.0'], ['2026-03-02', '2.0'], ['2026-03-03', '1.0'])).toEqual(['firmware-went-back s2']);
  expect(of(['2026-03-01', '2.0'], ['2026-03-01', '1.0'])).toEqual([]);
  expect(of(['2026-03-01', '2.0'], ['2026-03-01', undefined])).toEqual(['firmware-not-stated s1']);
  expect(of(['2026-03-01', undefined], ['2026-03-01', undefined])).toEqual([]);
});

it('names a session that is called by another body', () => {
  const [alba, brae] = bench([]).bodies;
  expect([alba?.id, brae?.id]).toEqual(['alba-one', 'brae']);
  expect(rulesOf(session('brae-24', AT_24, own(2)))).toEqual(['named-for-another-body brae-24']);
  expect(rulesOf(session('alba-24', AT_24, own(2)), session('one-24', AT_24, own(9)))).toEqual([]);
  expect(rulesOf(session('alba-beside-brae', AT_24, own(2)))).toEqual([]);
});

it('names a session that is called by another level of a setting than it states, where others keep to theirs', () => {
  const of = (...named: readonly (readonly [string, string, string])[]) =>
    rulesOf(
      ...named.map(([id, resolution, rate], at) =>
        session(id, { rate, resolution, 'audio-out': 'off' }, own(2 + 7 * at)),
      ),
    );
  const three = [
    ['alba-uhd24-a', 'uhd', '24'],
    ['alba-hd24-a', 'hd', '24'],
    ['alba-hd25-a', 'hd', '25'],
  ] as const;
  expect(of(...three)).toEqual([]);
  expect(of(...three, ['alba-uhd25-a', 'hd', '25'])).toEqual(['named-for-another-level alba-uhd25-a']);
  expect(of(...three, ['alba-hd25-b', 'hd', '24'])).toEqual(['named-for-another-level alba-hd25-b']);
  // Where names do not say it as a rule, they say nothing.
  expect(of(...three.slice(0, 1), ['alba-uhd25-a', 'hd', '25'])).toEqual([]);
  expect(of(...three, ['alba-b', 'hd', '25'])).toEqual([]);
});

it('names the one session of twelve that leaves a setting out, and how many state it', () => {
  const twelve = Array.from({ length: 12 }, (_, at) =>
    session(`s${at}`, at === 7 ? { rate: '24', resolution: 'uhd' } : AT_24, own(2 + 10 * at)),
  );
  const [found, ...more] = betweenSessions(bench(twelve));
  expect(more).toEqual([]);
  expect(found).toMatchObject({ rule: 'setting-not-stated', where: { session: 's7' } });
  expect(found?.message).toContain('data/sessions/s7.md does not state Embedded audio, as 11 of 12 sessions do,');
});

describe('a stated latency', () => {
  const said = (valueMs: number, standardUncertaintyMs: number, scanOutMs = 16): readonly string[] => {
    const [screen] = bench([]).displays;
    const latency = { valueMs, standardUncertaintyMs, source: 'a data sheet' };
    const whole = bench([session('a', AT_24, own(2))], { displays: [{ ...screen!, scanOutMs, latency }] });
    return betweenSessions(whole).map(({ rule, where, message }) => `${rule} ${where['place']} ${message}`);
  };

  it('passes where the chain can hold it', () => {
    expect(said(14.4, 0.6)).toEqual([]);
    expect(said(0, 0)).toEqual([]);
  });

  it('is named where it is longer than whole chains with it, as in another unit', () =>
    expect(said(1440, 6)).toEqual([
      'stated-latency data/displays/screen.md latency Screen states a latency of 1440 ms, and a, with it in the chain, reads 302 ms in all.',
    ]));

  it('is named where drawing alone takes longer', () =>
    expect(said(0.0144, 0.006)).toEqual([
      'stated-latency data/displays/screen.md latency Screen states a latency of 0.0144 ms, and takes 8.00 ms to draw as far as the middle of its screen.',
    ]));

  it('is named where its uncertainty is finer than any', () =>
    expect(said(14.4, 0.0006)).toEqual([
      'stated-latency data/displays/screen.md latency Screen states its latency to within 0.00060 ms, finer than anything here is measured.',
    ]));
});

describe('the time at which a timer starts again', () => {
  const onTimer = (wrapsAfterMs: number, pairs: readonly (readonly [number, number])[]) => {
    const [attic] = bench([]).rigs;
    const readings = pairs.map(([sourceMs, shownMs], at) =>
      reading(2 + at, (sourceMs - shownMs + wrapsAfterMs) % wrapsAfterMs, { sourceMs, shownMs }),
    );
    return bench([session('a', AT_24, { readings })], {
      rigs: [{ ...attic!, sourceTimer: { name: 'Timer', refresh: rate(60), wrapsAfterMs } }],
    });
  };

  it.each([10, 60, 100, 1000, 3600, 86_400])('passes at %i s', (seconds) =>
    expect(betweenSessions(onTimer(1000 * seconds, []))).toEqual([]),
  );

  it.each([101, 99, 120, 61])('is named at %i s', (seconds) =>
    expect(betweenSessions(onTimer(1000 * seconds, []))).toMatchObject([
      { rule: 'odd-restart', where: { place: 'data/rigs/attic.md source-timer.wraps-after' } },
    ]),
  );

  it('is named where the readings across a restart differ from the others', () => {
    const pairs = [
      [10_000, 9_700],
      [40_000, 39_690],
      [70_000, 69_690],
      [100, 99_790],
    ] as const;
    const found = (wrapsAfterMs: number) =>
      compileBench(onTimer(wrapsAfterMs, pairs)).register.findings.filter(({ rule }) => rule === 'across-restart');
    expect(found(100_000)).toEqual([]);
    expect(found(100_500)[0]?.message).toBe(
      'Readings across a restart of the source timer differ from the others by more than the rates allow: line 5 (810 ms). They rest on source-timer.wraps-after in data/rigs/attic.md, 100.500 s.',
    );
  });
});

it('names a note that reads as if the reading did not count', () => {
  const notes = [
    'slightly blurred',
    'excluded: digits overlap',
    'ignore this one',
    'not to be excluded',
    'does not count',
    'bad - skip',
    'unreadable',
    'struck out',
    'tens unreadable; by guess',
    'dropped frames before',
  ];
  const readings = notes.map((note, at) => reading(2 + at, 300 + at, { note }));
  const { findings } = compileBench(bench([session('a', AT_24, { readings })])).register;
  expect(findings.find(({ rule }) => rule === 'note-excludes')?.message).toBe(
    'Counted, though the note reads as if it were not to be: line 3 (excluded: digits overlap), line 4 (ignore this one), line 6 (does not count), line 7 (bad - skip), line 8 (unreadable), line 9 (struck out).',
  );
});

describe('under exclude', () => {
  it.each([
    'no',
    'No.',
    'keep this one',
    'not excluded',
    'OK, checked',
    'do not exclude',
    'good reading',
    'no reason',
    'fine – use it',
    'readable',
    'x',
    '?',
  ])('%s is no reason', (text) => expect(isReason(text)).toBe(false));

  it.each([
    'digits overlap',
    'not readable: hand before the screen',
    'two values',
    'blurred',
    'body not warm',
    '模糊',
    'no picture',
  ])('%s is one', (text) => expect(isReason(text)).toBe(true));
});

it('names an instrument that is stated as finer than its readings are written', () => {
  const [attic] = bench([]).rigs;
  const found = (expandedUncertaintyMs: number) => {
    const readings = [300.1, 310.2, 305.3].map((ms, at) => reading(2 + at, ms, { cells: { latency: String(ms) } }));
    const rigs = [{ ...attic!, instrument: { name: 'Sensor', expandedUncertaintyMs } }];
    const { findings } = compileBench(
      bench([session('a', AT_24, { method: 'instrument', readings })], { rigs }),
    ).register;
    return findings.filter(({ rule }) => rule === 'fine-instrument').map(({ message }) => message);
  };
  expect(found(0.05)).toEqual([]);
  expect(found(100)).toEqual([
    'data/rigs/attic.md states an instrument.expanded-uncertainty of 100 ms, and the readings are about 305 ms: it decides nearly all of the interval.',
  ]);
  expect(found(0.001)).toEqual([
    'The readings are written in steps of 0.1 ms, and data/rigs/attic.md states an instrument.expanded-uncertainty of 0.0010 ms, finer than that allows.',
  ]);
});

describe('rows that stand in a file twice', () => {
  const found = (method: 'instrument' | 'frame-count', latencies: readonly number[], runOf = (_: number) => 1) => {
    const readings = latencies.map((ms, at) => {
      const {
        sourceMs: _source,
        shownMs: _shown,
        ...counted
      } = reading(2 + at, ms, { run: runOf(at), cells: { latency: String(ms) } });
      return counted;
    });
    const one = repeatedRows({ session: session('a', AT_24, { method, readings }) } as SessionFigures);
    return one && `${one.severity}: ${one.message}`;
  };
  it('are looked for in sessions of any length', () =>
    expect([[], [304], [304, 312], [304, 304], [304, 312, 308]].map((few) => found('frame-count', few))).toEqual(
      Array(5).fill(undefined),
    ));

  // Twelve throws of a die, times four: that of all twelve in order stand there again has a chance of 6^-12.
  const counts = [3, 6, 1, 4, 4, 2, 6, 5, 1, 3, 2, 5].map((frames) => 300 + frames * 4);

  it('are named where a clip was pasted in as a further one', () => {
    const run = (at: number): number => 1 + Math.floor(at / 12);
    const own = [2, 2, 5, 1, 6, 3, 4, 1, 6, 4, 3, 5].map((frames) => 300 + frames * 4);
    expect(found('frame-count', [...counts, ...own], run)).toBeUndefined();
    expect(found('frame-count', [...counts, ...own, ...counts], run)).toBe(
      'warning: The readings of lines 26 to 37 are those of lines 2 to 13, in the same order.',
    );
  });

  it('pass where chance repeats as many', () => {
    // One, two and three readings: too few to be told from chance, alike or not.
    for (const few of [[304], [304, 308], [304, 304], [304, 308, 304]])
      expect(found('frame-count', few)).toBeUndefined();
    expect(found('frame-count', [...counts, ...counts.slice(0, 3)])).toBeUndefined();
    expect(
      found(
        'frame-count',
        Array.from({ length: 24 }, () => 304),
      ),
    ).toBeUndefined();
  });

  it('are named where an instrument gave one reading twice running, with how seldom that is', () => {
    // Standard deviation of these twelve: 5.93 ms (Python’s statistics.stdev); 11 · 0.1 / (2 · √π · 5.93) = 5.2 %.
    const values = [131.2, 149.4, 143.9, 141.8, 141.8, 139.5, 137.6, 146.2, 138.1, 131.7, 135.3, 147.9];
    expect(found('instrument', values)).toBe(
      'note: Lines 5 and 6 hold the same reading to the last digit, which chance brings to about 5 % of sessions like this.',
    );
    expect(found('instrument', values.map(Math.round))).toBeUndefined();
  });
});

describe('names and levels', () => {
  const said = (more: Parameters<typeof bench>[1]): readonly string[] =>
    betweenSessions(bench([session('a', AT_24, own(2))], more)).map(
      ({ rule, where, message }) => `${rule} ${where['place']}: ${message}`,
    );
  const { bodies, settings } = bench([]);

  it('are named where two bodies, settings or levels are called alike', () => {
    const [alba, brae] = bodies;
    expect(said({ bodies: [alba!, { ...brae!, name: ` ${alba!.name.toUpperCase()}` }] })).toEqual([
      'same-name data/bodies/brae.md: It is called  ALBA ONE, as data/bodies/alba-one.md is: pages cannot tell the two apart.',
    ]);
    const onOff = settings.map((setting) =>
      setting.id === 'audio-out'
        ? { ...setting, levels: setting.levels.map((level) => ({ ...level, label: 'Off' })) }
        : setting,
    );
    expect(said({ settings: onOff }).map((each) => each.split(':')[0])).toEqual([
      'same-name data/settings.yaml audio-out.on',
    ]);
  });

  it('are named where numbers neither rise nor fall', () => {
    const numeric = (...ids: readonly string[]) => ({
      settings: [
        ...settings,
        { id: 'gain', label: 'Gain', kind: 'numeric' as const, levels: ids.map((id) => ({ id, label: id })) },
      ],
    });
    const order = (...ids: readonly string[]) => said(numeric(...ids)).filter((each) => each.startsWith('levels'));
    expect(order('0', '1', '2')).toEqual([]);
    expect(order('2', '1', '0')).toEqual([]);
    expect(order('0', '2', '1')[0]).toMatch(/^levels-out-of-order data\/settings\.yaml gain: /);
  });
});

describe('a clip that is a row or two short', () => {
  /** What is said of clips of so many rows. */
  const said = (rows: readonly number[], more: object = {}): string | undefined => {
    const readings = rows.flatMap((count, clip) =>
      Array.from({ length: count }, (_, at) => reading(2 + 40 * clip + at, 300 + at, { run: clip + 1 })),
    );
    const one = session('a', AT_24, { readings, ...more });
    return unevenClips({ session: one } as SessionFigures)?.message;
  };

  it.each([
    [[10, 9, 10], 'Clip 2 has 9 rows, and each of the others 10.'],
    [[8, 6], 'Clip 2 has 6 rows, and the other 8.'],
  ])('is named: %j', (rows, message) => {
    expect(said(rows)).toBe(message);
  });

  it.each([[[10, 10, 10]], [[10, 3, 10]], [[9, 8, 10]], [[12]], [[3, 2, 3]]])('is none of these: %j', (rows) => {
    expect(said(rows)).toBeUndefined();
  });

  it('is none where the session was cut short, or the row is there and excluded', () => {
    expect(said([10, 9, 10], { cutShort: 'It was hot.' })).toBeUndefined();
    const rows = [3, 3].flatMap((count, clip) =>
      Array.from({ length: count }, (_, at) =>
        reading(2 + 40 * clip + at, 300 + at, { run: clip + 1, ...(at === 0 && { excluded: 'blurred' }) }),
      ),
    );
    expect(unevenClips({ session: session('a', AT_24, { readings: rows }) } as SessionFigures)).toBeUndefined();
  });
});
