import { describe, expect, it } from 'vitest';
import { conditionId, configurationId } from '../../src/register/configuration.ts';
import { lookup } from '../../src/register/lookup.ts';
import { nameConfigurations } from '../../src/register/name-configurations.ts';
import { bench, session } from '../support/small-bench.ts';

const SETTINGS = { resolution: 'uhd', rate: '24', 'audio-out': 'off' };
const plain = session('a', SETTINGS);
const whole = bench([plain]);
const find = lookup(whole);

describe('the name of a configuration comes from its session alone', () => {
  it.each([
    ['body, rig and levels in the order of the settings', plain, {}, 'alba-one/attic/uhd-24-off'],
    ['firmware where one is stated', { ...plain, firmware: '1.40' }, {}, 'alba-one/1.40/attic/uhd-24-off'],
    ['a link that the rig has not', { ...plain, links: ['radio'] }, {}, 'alba-one/attic+radio/uhd-24-off'],
    [
      'another display, another method',
      { ...plain, display: 'panel', method: 'frame-count' as const },
      {},
      'alba-one/attic+panel+frame-count/uhd-24-off',
    ],
    ['a setting that nobody recorded', { ...plain, settings: { rate: '24' } }, {}, 'alba-one/attic/_-24-_'],
    ['not the rate', plain, { rate: true }, 'alba-one/attic/uhd-off'],
    ['not the firmware', { ...plain, firmware: '1.40' }, { firmware: true }, 'alba-one/attic/uhd-24-off'],
  ])('%s', (_what, one, apart, name) => expect(configurationId(one, whole, find, apart)).toBe(name));

  it('says that a link of the rig was left out', () => {
    const rigged = bench([plain], { rigs: whole.rigs.map((rig) => ({ ...rig, links: ['radio'] })) });
    expect(configurationId(plain, rigged, lookup(rigged))).toBe('alba-one/attic+no-link/uhd-24-off');
  });

  it('a condition is the body alone, wherever its picture went', () =>
    expect(conditionId({ ...plain, links: ['radio'], display: 'panel' }, whole)).toBe('alba-one/uhd-24-off'));
});

describe('in words, a configuration is what sets it apart', () => {
  const hd = session('b', { ...SETTINGS, resolution: 'hd' });
  const faster = session('c', { ...SETTINGS, rate: '25' });
  it.each([
    ['a setting', [plain, hd], {}, ['UHD 3840 × 2160', 'HD 1920 × 1080']],
    ['the rate', [plain, faster], {}, ['24 frames/s', '25 frames/s']],
    ['not the rate where it is left out: then the body', [plain, faster], { rate: false }, ['Alba One', 'Alba One']],
    [
      'the body first where it is asked for',
      [plain, hd],
      { body: true },
      ['Alba One, UHD 3840 × 2160', 'Alba One, HD 1920 × 1080'],
    ],
    ['the chain', [plain, { ...plain, method: 'instrument' as const }], {}, ['two-timers', 'instrument']],
    [
      'not the chain where it is left out',
      [plain, { ...plain, method: 'instrument' as const }],
      { chain: false },
      ['Alba One', 'Alba One'],
    ],
  ])('%s', (_what, examples, say, names) =>
    expect(nameConfigurations(bench([...examples]), examples, say)).toEqual(names),
  );
});
