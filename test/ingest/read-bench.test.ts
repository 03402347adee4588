import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { readChanged, VALID_FILES } from '../support/bench-folder.ts';

describe('readBench', () => {
  it('reads the smallest bench that has one of everything', async () => {
    const bench = await readChanged();
    const sessionFile = VALID_FILES['data/sessions/a.csv'];
    expect(bench.sessions).toEqual([
      {
        id: 'a',
        body: 'vennick',
        firmware: '1.40',
        rig: 'balcony',
        links: ['air'],
        display: 'screen',
        method: 'two-timers',
        date: '2026-04-11',
        settings: { rate: '23.976', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'on' },
        rate: { frames: 24000, seconds: 1001 },
        room: '22.5 °C',
        warmUp: '15 min',
        notes: 'A quiet morning.',
        prose: [[{ text: 'A quiet morning.', line: 12 }]],
        stated: ['1.40', '2026-04-11', '23.98', '10', '4:2:2', '22.5 °C', '15 min'],
        resolutionMs: 1,
        readings: [
          {
            line: 2,
            run: 1,
            sourceMs: 31482,
            shownMs: 31181,
            latencyMs: 301,
            cells: { run: '1', source: '00:31.482', shown: '00:31.181', exclude: '', note: '' },
          },
          {
            line: 3,
            run: 1,
            sourceMs: 33905,
            shownMs: 33590,
            latencyMs: 315,
            cells: { run: '1', source: '00:33.905', shown: '00:33.590', exclude: '', note: '' },
          },
          {
            line: 4,
            run: 2,
            sourceMs: 12044,
            shownMs: 11779,
            latencyMs: 265,
            excluded: 'source digits overlap',
            note: 'two values readable: .779 and .796',
            cells: {
              run: '2',
              source: '00:12.044',
              shown: '00:11.779',
              exclude: 'source digits overlap',
              note: 'two values readable: .779 and .796',
            },
          },
        ],
        file: expect.objectContaining({ path: 'data/sessions/a.md' }),
        readingsFile: {
          path: 'data/sessions/a.csv',
          sha256: createHash('sha256').update(sessionFile).digest('hex'),
          bytes: sessionFile.length,
        },
      },
    ]);
    expect(bench.rigs.map(({ id }) => id)).toEqual(['balcony', 'pit']);
    expect(bench.rigs[0]).toMatchObject({
      sourceTimer: { name: 'Phone', refresh: { frames: 60, seconds: 1 } },
      observer: {
        name: 'Pocket camera',
        rate: { frames: 120, seconds: 1 },
        exposureMs: 2,
        sourceRow: 0.25,
        displayRow: 0.75,
        clockTolerancePpm: 50,
      },
      instrument: { name: 'Light sensor', expandedUncertaintyMs: 0.5 },
      description: 'On the balcony.',
    });
    expect(bench.links[0]?.latency).toEqual({ valueMs: 1.5, standardUncertaintyMs: 0.2, source: 'its data sheet' });
    expect(bench.displays[0]?.scanOutMs).toBe(1000 / 60);
    expect(bench.bodies[0]).toMatchObject({ id: 'vennick', readoutMs: 14, invented: true, description: 'Invented.' });
    expect(bench.site).toMatchObject({ title: 'Test bench', introduction: 'Hello.' });
  });

  it('freezes everything it returns', async () => {
    const bench = await readChanged();
    let looked = 0;
    const check = (value: unknown): void => {
      if (typeof value !== 'object' || value === null) return;
      looked += 1;
      expect(Object.isFrozen(value)).toBe(true);
      Object.values(value).forEach(check);
    };
    check(bench);
    expect(looked).toBeGreaterThan(50);
  });
});
