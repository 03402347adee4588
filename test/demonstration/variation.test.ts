import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { readBench } from '../../src/ingest/read-bench.ts';
import { renderVariation } from '../../src/ingest/render-variation.ts';
import { learnStatement } from '../../src/register/variation/learn-statement.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

it('the committed statement of variation is what these sessions say', async () => {
  const bench = await readBench({ root: ROOT, dataDir: `${ROOT}data`, contentDir: `${ROOT}content` });
  expect(renderVariation(learnStatement(bench, '2026-04-16'))).toBe(readFileSync(`${ROOT}data/variation.yaml`, 'utf8'));
});
