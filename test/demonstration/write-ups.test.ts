import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { readBench } from '../../src/ingest/read-bench.ts';
import { typedQuantities } from '../../src/write-ups/prose/typed-quantities.ts';
import { PROJECT } from '../support/project-files.ts';
import { SESSIONS } from './sessions.ts';

const CONTENT = fileURLToPath(new URL('../../content/', import.meta.url));

const read = (folder: string): { name: string; text: string }[] =>
  readdirSync(`${CONTENT}${folder}`)
    .filter((name) => name.endsWith('.mdx'))
    .map((name) => ({ name, text: readFileSync(`${CONTENT}${folder}/${name}`, 'utf8') }));

const REPORTS = read('reports');
const METHODS = read('methods');
const SESSION_IDS = SESSIONS.map(({ id }) => id);
/** Displays read against each other. */
const PAIR_IDS = ['pit-beside-workshop', 'pit-mirrors-tablet'];

describe('the reports', () => {
  it('are two, and name only sessions that there are', () => {
    expect(REPORTS.map(({ name }) => name)).toEqual(['how-we-measure.mdx', 'stage-screen.mdx']);
    const named = REPORTS.flatMap(({ text }) =>
      [
        ...text.matchAll(
          /"[a-z-]+\/([a-z0-9-]+)"|session="([^"]+)"|(?: of="([^"]+)" )?than="([^"]+)"|\/sessions\/([^/]+)\//g,
        ),
      ].flatMap((match) => match.slice(1).filter((id) => id !== undefined)),
    );
    expect(named.length).toBeGreaterThan(50);
    expect(named.filter((id) => !SESSION_IDS.includes(id!) && !PAIR_IDS.includes(id!))).toEqual([]);
  });

  it('type no quantity by hand, and neither do notes', async () => {
    const bench = await readBench({
      root: PROJECT,
      dataDir: join(PROJECT, 'data'),
      contentDir: join(PROJECT, 'content'),
    });
    expect(bench.reports.flatMap(({ prose }) => prose).length).toBeGreaterThan(40);
    expect(typedQuantities(bench)).toEqual([]);
  });
});

describe('the method notes', () => {
  it('are one for each way to take a reading', () => {
    expect(METHODS.map(({ name }) => name)).toEqual([
      'frame-count.mdx',
      'instrument.mdx',
      'mirrored-screen.mdx',
      'side-by-side.mdx',
      'two-timers.mdx',
    ]);
  });

  it.each(METHODS.map(({ name, text }) => [name, text]))(
    '%s warns of flashes, heat, mains and misuse',
    (_name, text) => {
      const cautions = text!.split('## Cautions')[1] ?? '';
      for (const words of [
        'photosensitive',
        'three flashes',
        '2.3.1',
        'let it cool',
        'mains',
        'licensed people',
        'local code',
        'no basis',
      ]) {
        expect(cautions.toLowerCase().replace(/\s+/g, ' ')).toContain(words);
      }
    },
  );
});
