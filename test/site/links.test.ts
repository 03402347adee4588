/** That every link leads somewhere, from whatever folder of whatever host the site is served. */
import { expect, it } from 'vitest';
import { addressesOf, checkHosts, checkLinks, checkReach, isInternal } from '../../src/verify/links.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';

const site = demonstrationSite();

it('every internal link and fragment resolves, from any path prefix', () => {
  const internal = addressesOf(site).filter(isInternal);
  expect(internal.length).toBeGreaterThan(1000);
  expect(internal.filter(({ to }) => to.includes('#')).length).toBeGreaterThan(300);
  expect(checkLinks(site)).toEqual({ looked: internal.length, faults: [] });
});

it('nothing that a page or the stylesheet loads comes from another host, and links lead to the web or to mail only', () => {
  const { looked, faults } = checkHosts(site);
  expect(looked).toBeGreaterThan(80);
  expect(faults).toEqual([]);
});

it('every page can be reached from the home page', () => {
  expect(checkReach(site)).toEqual({ looked: site.pages.length, faults: [] });
});

it('every font goes with its licence', () => {
  const fonts = site.files.filter((path) => path.endsWith('.woff2'));
  expect(fonts.length).toBeGreaterThan(2);
  for (const font of fonts) {
    const [family] = /^fonts\/(?:serif|sans)/.exec(font) ?? [];
    expect(site.bytes(`${family}-licence.txt`).toString(), font).toContain('SIL OPEN FONT LICENSE Version 1.1');
  }
});
