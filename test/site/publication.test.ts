/** A publication apart from the tool: wherever it stands and however its folder is called, it is the same site. */
import { hash } from 'node:crypto';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { readBuiltSite, type BuiltSite } from '../../src/verify/built-site.ts';
import { startDevServer } from '../support/dev-server.ts';
import { openCopy } from '../support/project-copy.ts';
import { PROJECT } from '../support/project-files.ts';
import { writeFiles } from '../support/text-files.ts';

const tool = openCopy(inject('builtProject'));
const digests = ({ files, bytes }: BuiltSite): readonly string[] =>
  files.map((path) => `${hash('sha256', bytes(path))} ${path}`);

/** Everything that a bundler, a shell or an address takes for something else. */
const NAME = "Käse #1 & 100 % [?] 'mine'";
let outer: string;
let root: string;

beforeAll(() => {
  outer = mkdtempSync(join(tmpdir(), 'publication-'));
  root = join(outer, NAME);
  mkdirSync(root);
  for (const folder of ['data', 'content']) cpSync(join(PROJECT, folder), join(root, folder), { recursive: true });
});
afterAll(() => rmSync(outer, { recursive: true, force: true }));

function setWritable(isWritable: boolean): void {
  for (const folder of ['data', 'content'])
    for (const name of ['', ...readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })]) {
      const path = join(root, folder, name);
      chmodSync(path, (isWritable ? 0o644 : 0o444) | (/\.\w+$/.test(name) ? 0 : 0o111));
    }
}

describe('a publication in a folder of any name', () => {
  it('is built into its own dist/, from data that nobody may write, byte for byte as in the tool', () => {
    setWritable(false);
    try {
      const { code, stderr } = tool.run('build', ['--publication', root]);
      expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    } finally {
      setWritable(true);
    }
    expect(readdirSync(root).sort()).toEqual(['.dist.building', 'content', 'data', 'dist']);
    const [here, there] = [readBuiltSite(join(root, 'dist')), readBuiltSite(tool.dist)];
    expect(there.files.length).toBeGreaterThan(130);
    expect(digests(here)).toEqual(digests(there));
  });

  it('is named by the environment as well, and builds wherever it is told', () => {
    const output = join(outer, 'out #2');
    const { code } = tool.run('build', ['--output', output], { LAGFOLIO_PUBLICATION: root });
    expect(code).toBe(0);
    expect(hash('sha256', readFileSync(join(output, 'index.html')))).toBe(
      hash('sha256', readFileSync(join(tool.dist, 'index.html'))),
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
    await expect.poll(() => get('/reports/x/'), { timeout: 20_000 }).toContain('First words.');
    using _again = writeFiles(root, {
      'content/reports/x.mdx': '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\nOther words.\n',
    });
    await expect.poll(() => get('/reports/x/'), { timeout: 20_000 }).toContain('Other words.');
    using _wrong = writeFiles(root, {
      'content/reports/x.mdx': '---\ntitle: X\nsummary: X.\ndate: 2026-04-21\n---\n\nOther {words.\n',
    });
    await expect.poll(() => get('/reports/x/'), { timeout: 20_000 }).toContain('content/reports/x.mdx:7');
  });

  it('leaves the demonstration alone', () => {
    expect(existsSync(join(tool.root, 'content/reports/x.mdx'))).toBe(false);
    expect(readdirSync(join(root, 'content')).sort()).toEqual(readdirSync(join(PROJECT, 'content')).sort());
  });
});
