import { describe, expect, it } from 'vitest';
import { assumptionsOf } from '../../src/recompute/assumptions.ts';
import { applyChanges, describeChange, placeOf, type Change } from '../../src/recompute/changes.ts';
import { VALID_FILES } from '../support/bench-folder.ts';

const files = new Map(
  Object.entries(VALID_FILES).map(([path, text]) => [path as string, new TextEncoder().encode(text)] as const),
);
const textOf = (path: string, changes: readonly Change[]): string =>
  new TextDecoder().decode(applyChanges(files, changes).get(path));

const stated = (file: string, path: readonly string[], to: string | undefined, from?: string): Change => ({
  kind: 'stated',
  file,
  path,
  from,
  to,
});
const cell = (line: number, column: string, to: string): Change => ({
  kind: 'reading',
  file: 'data/sessions/a.csv',
  line,
  column,
  from: '',
  to,
});

describe('a change of what a file states', () => {
  const rig = 'data/rigs/balcony.md';

  it('puts another value in the place of the first, and leaves the rest as it was', () => {
    const text = textOf(rig, [stated(rig, ['source-timer', 'refresh'], '120', '60')]);
    expect(text.replace('refresh: "120"', 'refresh: 60').replace('[ air ]', '[air]')).toBe(VALID_FILES[rig]);
  });

  it('states what was not stated, and takes away what was', () => {
    const text = textOf(rig, [
      stated(rig, ['observer', 'readout'], '2 ms'),
      stated(rig, ['observer', 'exposure'], undefined, '1/500 s'),
    ]);
    expect(text).toContain('clock-tolerance: 50 ppm, readout: 2 ms }');
    expect(text).not.toContain('exposure');
    expect(text).toContain('\n---\n\nOn the balcony.\n');
  });

  it('of a latency brings what a latency is stated with', () => {
    const display = 'data/displays/screen.md';
    const text = textOf(display, [stated(display, ['latency', 'value'], '40 ms')]);
    expect(text).toMatch(/latency:\n {2}uncertainty: 0 ms\n {2}source: assumed by a reader\n {2}value: 40 ms\n/);
  });
});

describe('a change of a reading', () => {
  const [header, first, second, third] = VALID_FILES['data/sessions/a.csv'].split('\n');

  it('leaves out, corrects and restores, and quotes what has to be', () => {
    const text = textOf('data/sessions/a.csv', [
      cell(2, 'exclude', 'blurred, both digits'),
      cell(3, 'shown', '00:33.600'),
      cell(4, 'exclude', ''),
    ]);
    expect(text.split('\n')).toEqual([
      header,
      first?.replace(',,', ',"blurred, both digits",'),
      second?.replace('33.590', '33.600'),
      third?.replace('"source digits overlap"', '').replaceAll('"', ''),
      '',
    ]);
  });

  it('names its place and both texts', () => {
    const one: Change = { ...cell(3, 'shown', '00:33.600'), from: '00:33.590' } as Change;
    expect(describeChange(one)).toBe('data/sessions/a.csv, line 3, shown: 00:33.590 → 00:33.600');
    expect(describeChange(cell(2, 'exclude', 'blurred'))).toBe(
      'data/sessions/a.csv, line 2, exclude: nothing → blurred',
    );
    expect(placeOf(one)).toBe(placeOf(cell(3, 'shown', '00:33.700')));
    expect(placeOf(one)).not.toBe(placeOf(cell(3, 'source', '00:33.700')));
  });
});

it('what can be stated otherwise is what rig and display have, each once', () => {
  const session = { rig: 'balcony', display: 'screen' };
  const found = assumptionsOf(files, [session, session]);
  expect(found.map(({ file, path, value }) => [file, path.join('.'), value])).toEqual([
    ['data/rigs/balcony.md', 'source-timer.refresh', '60'],
    ['data/rigs/balcony.md', 'source-timer.resolution', undefined],
    ['data/rigs/balcony.md', 'source-timer.clock-tolerance', undefined],
    ['data/rigs/balcony.md', 'observer.rate', '120'],
    ['data/rigs/balcony.md', 'observer.exposure', '1/500 s'],
    ['data/rigs/balcony.md', 'observer.readout', undefined],
    ['data/rigs/balcony.md', 'observer.source-row', '0.25'],
    ['data/rigs/balcony.md', 'observer.display-row', '0.75'],
    ['data/rigs/balcony.md', 'observer.clock-tolerance', '50 ppm'],
    ['data/rigs/balcony.md', 'instrument.expanded-uncertainty', '0.5 ms'],
    ['data/rigs/balcony.md', 'digits-row', undefined],
    ['data/displays/screen.md', 'refresh', '60'],
    ['data/displays/screen.md', 'sync', 'input'],
    ['data/displays/screen.md', 'scan-out', '1/60 s'],
    ['data/displays/screen.md', 'latency.value', undefined],
    ['data/displays/screen.md', 'latency.uncertainty', undefined],
  ]);
  expect(assumptionsOf(files, [{ rig: 'pit', display: 'screen' }]).some(({ path }) => path[0] === 'observer')).toBe(
    false,
  );
});
