import { describe, expect, it } from 'vitest';
import { bodyFamilies } from '../../../src/register/comparisons/body-families.ts';
import { labelPairs } from '../../../src/register/comparisons/pair-labels.ts';
import { settingFamilies } from '../../../src/register/comparisons/setting-families.ts';
import type { Family } from '../../../src/register/comparisons/family.ts';
import type { Bench } from '../../../src/model/bench.ts';
import { bench, reading, session } from '../../support/small-bench.ts';

const uhd = { resolution: 'uhd', rate: '24', 'audio-out': 'off' };
const told = (families: readonly Family[]): readonly string[] =>
  families.flatMap(({ id, pairs }) => pairs.map(({ a, b }) => `${id}: ${a} − ${b}`));
const labels = (of: Bench, family: Family | undefined): readonly string[] => {
  const { of: label } = labelPairs(of, family?.pairs ?? []);
  return (family?.pairs ?? []).map((pair) => [label(pair).group, label(pair).row].filter(Boolean).join(' | '));
};

describe('matched pairs of a body on a rig', () => {
  it('differ in one setting and in nothing else', () => {
    const sessions = [
      session('base', uhd),
      session('audio', { ...uhd, 'audio-out': 'on' }),
      session('both', { ...uhd, 'audio-out': 'on', resolution: 'hd' }),
      session('firmware', { ...uhd, rate: '25' }, { firmware: '2.0' }),
      session('way', { ...uhd, rate: '25' }, { method: 'frame-count' }),
      session('link', { ...uhd, rate: '25' }, { links: ['air'] }),
      session('body', { ...uhd, rate: '25' }, { body: 'brae' }),
    ];
    const whole = bench(sessions, {
      links: [
        {
          id: 'air',
          name: 'Air',
          invented: true,
          description: '',
          prose: [],
          file: { path: 'x', sha256: '', bytes: 0 },
        },
      ],
    });
    expect(told(settingFamilies(whole))).toEqual([
      'settings-alba-one-attic: audio − both',
      'settings-alba-one-attic: audio − base',
    ]);
    expect(labels(whole, settingFamilies(whole)[0])).toEqual([
      'Resolution | HD 1920 × 1080 → UHD 3840 × 2160',
      'Embedded audio | Off → On',
    ]);
  });

  it('pair repeats one to one, those closest in time first', () => {
    const repeats = ['2026-01-01', '2026-02-01', '2026-03-01'].map((date, n) => session(`off-${n}`, uhd, { date }));
    const on = [
      session('on-0', { ...uhd, 'audio-out': 'on' }, { date: '2026-02-27' }),
      session('on-1', { ...uhd, 'audio-out': 'on' }, { date: '2026-02-20' }),
    ];
    expect(told(settingFamilies(bench([...repeats, ...on])))).toEqual([
      'settings-alba-one-attic: on-1 − off-1',
      'settings-alba-one-attic: on-0 − off-2',
    ]);
  });
});

describe('matched pairs of sessions that are not ordinary', () => {
  const on = { ...uhd, 'audio-out': 'on' };
  const twoClips = { readings: [reading(2, 300), reading(3, 310, { run: 2 })] };

  it('are none where a session was cut short, however alone it stands', () => {
    const sessions = [session('off', uhd, twoClips), session('on', on, { ...twoClips, cutShort: 'it got hot' })];
    expect(told(settingFamilies(bench(sessions)))).toEqual([]);
  });

  it('stand back where a step has a pair of ordinary ones', () => {
    const sessions = [session('off', uhd, twoClips), session('on', on, twoClips), session('on-single', on)];
    expect(told(settingFamilies(bench(sessions)))).toEqual(['settings-alba-one-attic: on − off']);
    expect(told(settingFamilies(bench(sessions.filter(({ id }) => id !== 'on'))))).toEqual([
      'settings-alba-one-attic: on-single − off',
    ]);
  });
});

describe('bodies against bodies', () => {
  it('in the same condition, on the same rig and chain', () => {
    const sessions = [
      session('a', uhd),
      session('b', uhd, { body: 'brae' }),
      session('c', { ...uhd, rate: '25' }, { body: 'brae' }),
      session('d', { ...uhd, rate: '25' }, { method: 'frame-count' }),
    ];
    const whole = bench(sessions);
    expect(told(bodyFamilies(whole))).toEqual(['bodies-attic-uhd-24-off: a − b']);
    expect(bodyFamilies(whole)[0]).toMatchObject({
      group: 'bodies-attic-uhd-24-off',
      groupTitle: 'Bodies compared: 24 frames/s, resolution UHD 3840 × 2160, embedded audio off on Attic',
    });
    expect(labels(whole, bodyFamilies(whole)[0])).toEqual(['Alba One against Brae']);
  });
});

it('no body, no session, one session: no family', () => {
  for (const sessions of [[], [session('a', uhd)]])
    expect([...settingFamilies(bench(sessions)), ...bodyFamilies(bench(sessions))]).toEqual([]);
});
