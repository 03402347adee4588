/** That every chart of the built site is there as a picture, and as PNG by command. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, inject, it } from 'vitest';
import { attributeOf, elementsOf, hasClass } from '../../src/verify/html.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { openCopy } from '../support/project-copy.ts';

const project = openCopy(inject('builtProject'));
const site = demonstrationSite();
const sizeOf = (png: Buffer): readonly number[] => [png.readUInt32BE(16), png.readUInt32BE(20)];

it('every chart has an address on its page, and its files', () => {
  const charts = site.pages.flatMap(({ root }) => elementsOf(root, (element) => hasClass(element, 'plate')));
  expect(charts.length).toBeGreaterThan(60);
  const files = new Set(site.files);
  const lacking = charts
    .filter((chart) => {
      const id = attributeOf(chart, 'id') ?? '';
      const pictured = attributeOf(chart, 'data-pictured') !== 'no';
      return files.has(`charts/${id}/picture.svg`) !== pictured || !files.has(`charts/${id}/specification.json`);
    })
    .map((chart) => attributeOf(chart, 'id'));
  expect(lacking).toEqual([]);
});

it('every report and body has its card', () => {
  const pages = site.pages.filter(({ path }) => /^\/(?:reports|bodies)\/[^/]+\/$/.test(path));
  expect(pages.length).toBeGreaterThan(3);
  for (const { path, elements } of pages) {
    const image = elements.find((element) => attributeOf(element, 'property') === 'og:image');
    expect(image && attributeOf(image, 'content')).toMatch(new RegExp(`^https://.*${path}card\\.png$`));
    expect(sizeOf(site.bytes(`${path.slice(1)}card.png`))).toEqual([1200, 630]);
  }
});

it('charts are drawn as PNG by command', () => {
  const folder = join(project.root, 'drawn');
  const { code, stderr } = project.run('pictures', [folder, '--only', 'every body on balcony']);
  expect([code, stderr]).toEqual([0, '']);
  const sizes = readdirSync(folder).map((name) => sizeOf(readFileSync(join(folder, name))).join('x'));
  expect(new Set(sizes)).toEqual(new Set(['1920x1080', '1080x1080', '1080x1920']));
  const refused = project.run('pictures', [folder, '--only', 'no such chart']);
  expect(refused.code).toBe(2);
  expect(refused.stderr).toContain('no chart has “no such chart” in its title');
});

it('the readings of a session are drawn by command, as PNG and as SVG that says whose they are', () => {
  const folder = join(project.root, 'drawn-readings');
  const { code, stderr } = project.run('pictures', [folder, '--session', 'dunmere-uhd25-a', '--svg']);
  expect([code, stderr]).toEqual([0, '']);
  const names = readdirSync(folder);
  expect(names.filter((name) => name.endsWith('.png'))).toHaveLength(6);
  const drawn = names.filter((name) => name.endsWith('.svg')).map((name) => readFileSync(join(folder, name), 'utf8'));
  expect(drawn.map((svg) => /<title>[^<]*Dunmere 30[^<]*<\/title>/.test(svg))).toEqual(Array(6).fill(true));
  const refused = project.run('pictures', [folder, '--session', 'no-such-session']);
  expect(refused.code).toBe(2);
  expect(refused.stderr).toContain("there is no session 'no-such-session'");
});
