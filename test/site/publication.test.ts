/**
 * A publication apart from the tool: wherever either stands and however its folder is called, in whatever time zone and
 * language it is built, it is the same site byte for byte, and nothing was asked of another host.
 */
import { hash } from 'node:crypto';
import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readBuiltSite, type BuiltSite } from '../../src/verify/built-site.ts';
import { demonstrationSite } from '../support/demonstration-site.ts';
import { startDevServer } from '../support/dev-server.ts';
import { copyProject, openCopy, type ProjectCopy } from '../support/project-copy.ts';
import { PROJECT } from '../support/project-files.ts';
import { writeFiles } from '../support/text-files.ts';

const WATCH = pathToFileURL(join(PROJECT, 'test/support/record-connections.ts')).href;

const demonstration = openCopy(inject('builtProject'));
const digests = ({ files, bytes }: BuiltSite): readonly string[] =>
  files.map((path) => `${hash('sha256', bytes(path))} ${path}`);

/** Everything that a bundler, a shell or an address takes for something else. */
const NAME = "Käse #1 & 100 % [?] 'mine'";
let tool: ProjectCopy;
let outer: string;
let root: string;

beforeAll(() => {
  tool = copyProject({ name: 'a folder with spaces (and ünïcode)', backwards: true });
  outer = mkdtempSync(join(tmpdir(), 'publication-'));
  root = join(outer, NAME);
  mkdirSync(root);
  for (const folder of ['data', 'content']) cpSync(join(PROJECT, folder), join(root, folder), { recursive: true });
});
afterAll(() => {
  rmSync(outer, { recursive: true, force: true });
  tool?.[Symbol.dispose]();
});

/** What was noted of the build, npm's own processes aside. */
function notes(file: string): readonly string[] {
  return [...new Set(readFileSync(file, 'utf8').split('\n'))].filter((line) =>
    /^(?:launch\.mjs|build\.ts) /.test(line),
  );
}

function setWritable(isWritable: boolean): void {
  for (const folder of ['data', 'content'])
    for (const name of ['', ...readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })]) {
      const path = join(root, folder, name);
      chmodSync(path, (isWritable ? 0o644 : 0o444) | (/\.\w+$/.test(name) ? 0 : 0o111));
    }
}

describe('a publication in a folder of any name', () => {
  it('is built into its own dist/, from data that nobody may write, byte for byte as in the tool', () => {
    const connections = join(outer, 'connections');
    const watched = { CONNECTIONS: connections, NODE_OPTIONS: `--import ${WATCH}` };
    setWritable(false);
    try {
      const { code, stderr } = tool.run('build', ['--publication', root], {
        ...watched,
        TZ: 'Asia/Tokyo',
        LANG: 'tr_TR.UTF-8',
        LC_ALL: 'tr_TR.UTF-8',
        FORCE_COLOR: '1',
      });
      expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    } finally {
      setWritable(true);
    }
    expect(notes(connections)).toEqual(['launch.mjs begins']);
    expect(readdirSync(root).sort()).toEqual(['.dist.building', 'content', 'data', 'dist']);
    const [here, there] = [readBuiltSite(join(root, 'dist')), demonstrationSite()];
    expect(there.files.length).toBeGreaterThan(130);
    expect(digests(here)).toEqual(digests(there));
    expect(here.files.filter((path) => [root, tool.root].some((folder) => here.bytes(path).includes(folder)))).toEqual(
      [],
    );
  });

  it('is named by the environment as well, and builds wherever it is told', () => {
    const output = join(outer, 'out #2');
    const { code } = tool.run('build', ['--output', output], { LAGFOLIO_PUBLICATION: root });
    expect(code).toBe(0);
    expect(hash('sha256', readFileSync(join(output, 'index.html')))).toBe(
      hash('sha256', readFileSync(join(demonstration.dist, 'index.html'))),
    );
  });

  it('has its mistakes named by its own paths', () => {
    using _changed = writeFiles(root, {
      'content/reports/x.mdx':
        '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\n<Figur id="a" />\n\nimport a from "b"\n',
    });
    const { code, stderr } = tool.run('build', ['--publication', root]);
    expect(code).toBe(1);
    expect(stderr.split('\n').filter((line) => line.startsWith('content/reports/x.mdx:'))).toHaveLength(2);
  });

  it('is served while it is written: what is saved shows, and where it is wrong', async () => {
    await using server = await startDevServer(tool.root, root);
    const get = async (path: string): Promise<string> =>
      (await fetch(`${server.origin}${path}`, { headers: { accept: 'text/html' } })).text();
    using _changed = writeFiles(root, {
      'content/reports/x.mdx': '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\nFirst words.\n',
    });
    await expect.poll(() => get('/reports/x/'), { timeout: 60_000 }).toContain('First words.');
    using _again = writeFiles(root, {
      'content/reports/x.mdx': '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\nOther words.\n',
    });
    await expect.poll(() => get('/reports/x/'), { timeout: 60_000 }).toContain('Other words.');
    using _wrong = writeFiles(root, {
      'content/reports/x.mdx': '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\nOther {words.\n',
    });
    await expect.poll(() => get('/reports/x/'), { timeout: 60_000 }).toContain('content/reports/x.mdx:7');
  });

  it('leaves the demonstration alone', () => {
    expect(existsSync(join(tool.root, 'content/reports/x.mdx'))).toBe(false);
    expect(readdirSync(join(root, 'content')).sort()).toEqual(readdirSync(join(PROJECT, 'content')).sort());
  });
});

it('the watch for requests sees one', () => {
  const watched = join(outer, 'watched');
  const env = { ...process.env, CONNECTIONS: watched, NODE_OPTIONS: `--import ${WATCH}` };
  const program = "require('node:net').connect(9, '127.0.0.1').on('error', () => undefined)";
  spawnSync(process.execPath, ['-e', program], { env });
  expect(readFileSync(watched, 'utf8')).toMatch(/connect .*127\.0\.0\.1/);
});
