import { expect, it } from 'vitest';
import { StalePages } from '../../src/commands/stale-pages.ts';

it('tells of a page that was asked for before a file changed, once', () => {
  const pages = new StalePages();
  pages.serve('/a/');
  expect(pages.takeStale()).toBe(false);
  pages.change();
  expect(pages.takeStale()).toBe(true);
  expect(pages.takeStale()).toBe(false);
});

it('takes a page that was asked for again for fresh', () => {
  const pages = new StalePages();
  pages.serve('/a/');
  pages.change();
  pages.serve('/a/');
  expect(pages.takeStale()).toBe(false);
});
