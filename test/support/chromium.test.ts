import { chmodSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { findChromium, launchOptions, WAYS, type Way } from './chromium.ts';
import { firstInPath } from './install.ts';

const starts = async () => undefined;
const tried: string[] = [];
const way = (name: string, path?: string): Way => ({
  name,
  path: () => {
    tried.push(name);
    return path;
  },
});

it('takes the first way that leads to a browser, and does not go on to install one', async () => {
  tried.length = 0;
  expect(await findChromium([way('named'), way('system', '/bin/a'), way('package', '/bin/b')], starts)).toBe('/bin/a');
  expect(tried).toEqual(['named', 'system']);
});

it('passes over a browser that does not start', async () => {
  const onlyB = async (path: string) => (path === '/bin/b' ? undefined : 'no such library');
  expect(await findChromium([way('named'), way('system', '/bin/a'), way('package', '/bin/b')], onlyB)).toBe('/bin/b');
});

it('does not replace the browser that somebody named by another', async () => {
  const onlyB = async (path: string) => (path === '/bin/b' ? undefined : 'no such file');
  await expect(findChromium([way('named', '/bin/a'), way('system', '/bin/b')], onlyB)).rejects.toThrow(
    'named (/bin/a): no such file',
  );
});

it('says what to install when no way leads to one', async () => {
  await expect(findChromium([way('named'), way('system')], starts)).rejects.toThrow(
    /apt-get install chromium[\s\S]*playwright-core install chromium[\s\S]*CHROMIUM=/,
  );
});

it('asks for what is there before it fetches anything', () => {
  expect(WAYS.map(({ name }) => name)).toEqual([
    'the one named in $CHROMIUM',
    "the system's",
    "the browser driver's",
    "Debian's package",
    "the browser driver's download",
  ]);
});

it('finds a command in the folders of a search path, in order of preference', () => {
  const folder = mkdtempSync(join(tmpdir(), 'commands-'));
  try {
    for (const name of ['first', 'second']) {
      writeFileSync(join(folder, name), '');
      chmodSync(join(folder, name), 0o755);
    }
    expect(firstInPath(['absent', 'second', 'first'], `/nowhere:${folder}`)).toBe(join(folder, 'second'));
    expect(firstInPath(['absent'], `/nowhere:${folder}`)).toBeUndefined();
  } finally {
    rmSync(folder, { recursive: true });
  }
});

it('starts the browser so that it asks nothing of the network by itself', () => {
  expect(launchOptions('/bin/a').args).toEqual(
    expect.arrayContaining(['--disable-background-networking', '--disable-component-update', '--disable-sync']),
  );
});
