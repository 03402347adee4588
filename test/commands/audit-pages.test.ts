import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { keepResultsIn } from 'lagfolio/memory';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { siteFacts, type Site } from '../../src/audit/site-facts.ts';
import { auditPages } from '../../src/commands/audit-pages.ts';
import { compileBench } from '../../src/site/compile.ts';
import { bench, reading, session } from '../support/small-bench.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'audit-'));
  keepResultsIn(join(folder, 'results'));
});
afterEach(() => {
  keepResultsIn(undefined);
  rmSync(folder, { recursive: true });
});

/** A site of one session with these latencies. */
const siteOf = (...latencies: readonly number[]): { readonly site: Site; readonly total: string } => {
  const readings = latencies.map((ms, index) => reading(2 + index, ms));
  const published = compileBench(bench([session('a', { rate: '24' }, { readings })]));
  return { site: siteFacts(published, new Map()), total: published.figure('total/a')?.text ?? '' };
};
const write = (text: string): void => {
  mkdirSync(join(folder, 'site'), { recursive: true });
  writeFileSync(join(folder, 'site/index.html'), `<!doctype html><p data-from="total/a">${text}</p>`);
};
const left = async (site: Site): Promise<readonly string[]> =>
  (await auditPages(join(folder, 'site'), site)).unaccounted.map(({ number }) => number);

it('finds on a page of before what it says wrongly since something else changed', async () => {
  const [first, then] = [siteOf(300, 310, 305), siteOf(300, 310, 320)];
  expect(then.total).not.toBe(first.total);
  write(first.total);
  expect(await left(first.site)).toEqual([]);
  expect(await left(then.site)).toEqual([first.total]);
  expect(await left(first.site)).toEqual([]);
});

it('reads no page again while page and facts are the same, and any page that changed', async () => {
  const { site, total } = siteOf(300, 310, 305);
  write(total);
  expect((await auditPages(join(folder, 'site'), site)).read).toBe(1);
  const unasked: Site = {
    ...site,
    says() {
      throw new Error('it was read again');
    },
  };
  expect(await left(unasked)).toEqual([]);
  write(`${total}, or 1.5 ms`);
  await expect(left(unasked)).rejects.toThrow('it was read again');
  expect(await left(site)).toEqual(['1.5 ms']);
});
