import { expect, it } from 'vitest';
import { runEdits } from '../rebuild/run-edits.ts';

it('a site built after edits is that which is built from nothing (npm run rebuilds takes 200 edits)', () => {
  const outcomes = runEdits({ seed: 20_261, edits: 3 });
  expect(outcomes.filter(({ isBuilt }) => isBuilt).length).toBeGreaterThan(1);
  expect(outcomes.at(-1)?.stale).toEqual([]);
}, 300_000);
