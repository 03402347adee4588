import { hash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { expect, inject, it } from 'vitest';
import { readBuiltSite } from '../../src/verify/built-site.ts';
import { copyProject, openCopy } from '../support/project-copy.ts';
import { PROJECT } from '../support/project-files.ts';

const WATCH = pathToFileURL(join(PROJECT, 'test/support/record-connections.ts')).href;

/** What was noted of the build, npm's own processes aside. */
function notes(file: string): readonly string[] {
  return [...new Set(readFileSync(file, 'utf8').split('\n'))].filter((line) =>
    /^(?:launch\.mjs|build\.ts) /.test(line),
  );
}

it('the same files give the same bytes in another folder, time zone, language and order of files, and no request leaves', () => {
  const first = readBuiltSite(openCopy(inject('builtProject')).dist);
  using copy = copyProject({ name: 'a folder with spaces (and ünïcode)', backwards: true });
  const connections = `${copy.root}-connections`;
  const watched = { CONNECTIONS: connections, NODE_OPTIONS: `--import ${WATCH}` };
  copy.build({ ...watched, TZ: 'Asia/Tokyo', LANG: 'tr_TR.UTF-8', LC_ALL: 'tr_TR.UTF-8', FORCE_COLOR: '1' });
  expect(notes(connections)).toEqual(['launch.mjs begins']);
  const second = readBuiltSite(copy.dist);
  expect(first.files.length).toBeGreaterThan(130);
  expect(second.files).toEqual(first.files);
  expect(
    first.files.filter((path) => hash('sha256', first.bytes(path)) !== hash('sha256', second.bytes(path))),
  ).toEqual([]);
});

it('no file of the site names the folder in which it was built', () => {
  const { root, dist } = openCopy(inject('builtProject'));
  const site = readBuiltSite(dist);
  expect(site.files.filter((path) => site.bytes(path).includes(root))).toEqual([]);
});

it('the watch for requests sees one', () => {
  const folder = mkdtempSync(join(tmpdir(), 'watch-'));
  try {
    const env = { ...process.env, CONNECTIONS: join(folder, 'notes'), NODE_OPTIONS: `--import ${WATCH}` };
    const program = "require('node:net').connect(9, '127.0.0.1').on('error', () => undefined)";
    spawnSync(process.execPath, ['-e', program], { env });
    expect(readFileSync(join(folder, 'notes'), 'utf8')).toMatch(/connect .*127\.0\.0\.1/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
