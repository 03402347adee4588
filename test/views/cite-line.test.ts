import { describe, expect, it } from 'vitest';
import { compileBench } from '../../src/site/compile.ts';
import { citedPublication, citeFigure, citeShown } from '../../src/views/cite-line.ts';
import { bench, session } from '../support/small-bench.ts';

const small = bench([session('a', { rate: '24', resolution: 'hd' })]);
const siteWith = (more: object) => compileBench({ ...small, site: { ...small.site, publisher: 'Us', ...more } });

describe('a line to cite by', () => {
  it('holds value, interval, condition, rig, state of the record and address', () => {
    const site = siteWith({ address: 'https://bench.example/notes/' });
    const total = site.figure('total/a');
    if (total === undefined) throw new Error('no total');
    const line = citeFigure(site, total);
    for (const part of [
      total.text,
      '95 % interval',
      'HD 1920 × 1080',
      'on the rig',
      'session a',
      'Test, Us',
      'not yet recorded',
    ])
      expect(line).toContain(part);
    expect(line).toMatch(/^Total latency of .* https:\/\/bench\.example\/notes\/sessions\/a\/#total$/);
  });

  it('gives a place on the site where nobody said where the site stands', () => {
    const site = siteWith({});
    expect(citeShown(citedPublication(site), 'All totals.', '/bodies/a/#chart-1')).toBe(
      `All totals. Test, Us; not yet recorded, analysis version ${site.register.analysis}. /bodies/a/#chart-1`,
    );
  });
});
