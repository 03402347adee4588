/** What a rig's page says of it, field by field as its author stated it. */
import { describe, expect, it } from 'vitest';
import type { Bench, Rig } from '../../src/model/bench.ts';
import { rate } from '../../src/model/rate.ts';
import { lookup } from '../../src/register/lookup.ts';
import { rigFacts } from '../../src/views/rig-facts.ts';
import { bench } from '../support/small-bench.ts';

const [screen] = bench([]).displays;
const [attic] = bench([]).rigs;
if (screen === undefined || attic === undefined) throw new Error('the small bench has a display and a rig');

function facts(rig: Partial<Rig>, more: Partial<Bench> = {}): Readonly<Record<string, string>> {
  const whole = bench([], more);
  return Object.fromEntries(rigFacts({ ...attic, ...rig } as Rig, lookup(whole)).map(({ part, says }) => [part, says]));
}

describe('the facts of a rig', () => {
  it('say of a bare rig what it states, and what it leaves open', () => {
    expect(facts({})).toEqual({
      'Source timer': 'Timer; refreshes at 60 Hz',
      Display: 'Screen; refreshes at 60 Hz; in step with its input; scan-out not stated',
    });
  });

  it('say everything that can be stated of timer, observer, display and digits', () => {
    const said = facts(
      {
        sourceTimer: {
          name: 'Timer',
          refresh: rate(120),
          resolutionMs: 1,
          wrapsAfterMs: 600_000,
          clockTolerancePpm: 50,
        },
        observer: {
          name: 'Spare camera',
          rate: rate(240),
          exposureMs: 2,
          readoutMs: 4.5,
          sourceRow: 0.25,
          displayRow: 0.755,
        },
        digitsRow: 0.1,
      },
      {
        displays: [
          {
            ...screen,
            refresh: rate(60_000, 1001),
            sync: 'free',
            scanOutMs: 16.2,
            latency: { valueMs: 8, standardUncertaintyMs: 0.5, source: 'light sensor, 3 May' },
          },
        ],
      },
    );
    expect(said).toEqual({
      'Source timer':
        'Timer; refreshes at 120 Hz; counts in steps of 1 ms; starts again after 10 min; clock within 50 ppm',
      Observer:
        'Spare camera; 240 frames/s; exposure 2 ms; readout 4.5 ms; timer at 25 % of the picture’s height from the top; display’s digits at 75.5 %',
      Display:
        'Screen; refreshes at 59.94 Hz; on its own clock; scan-out 16.2 ms; digits at 10 % of its height from the top; stated latency 8 ms, standard uncertainty 0.5 ms (light sensor, 3 May)',
    });
  });

  it('name every link between, with what was stated of it', () => {
    const link = (id: string, name: string, more = {}) => ({ ...attic, id, name, ...more });
    const latency = { valueMs: 12.5, standardUncertaintyMs: 1, source: 'a light sensor' };
    const whole = bench([], { links: [link('radio', 'Radio pair', { latency }), link('loop', 'Loop')] });
    expect(rigFacts({ ...attic, links: ['radio', 'loop'] }, lookup(whole)).slice(1, 3)).toMatchObject([
      { part: 'Link', says: 'Radio pair; stated latency 12.5 ms, standard uncertainty 1 ms (a light sensor)' },
      { part: 'Link', says: 'Loop' },
    ]);
  });

  it('say of an observer what it does not state', () => {
    expect(facts({ observer: { name: 'Spare camera', rate: rate(25) } })['Observer']).toBe(
      'Spare camera; 25 frames/s; exposure not stated; readout not stated',
    );
  });

  it('call the uncertainty of an instrument expanded, with the k that makes it so', () => {
    const { sourceTimer: _timer, ...without } = attic;
    const said = rigFacts(
      { ...without, instrument: { name: 'Light sensor', expandedUncertaintyMs: 0.4 } } as Rig,
      lookup(bench([])),
    );
    expect(said[0]).toMatchObject({
      part: 'Instrument',
      says: 'Light sensor, expanded uncertainty 0.4 ms (k = 2), as stated',
    });
  });
});
