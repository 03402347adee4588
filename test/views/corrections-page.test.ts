/** What the corrections page says, of a ledger recorded here. */
import { expect, it } from 'vitest';
import { compileBench } from '../../src/site/compile.ts';
import { correctionsPage } from '../../src/views/corrections-page.ts';
import { ledgerAfter } from '../support/ledger.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const UHD = { rate: '24', resolution: 'uhd', 'audio-out': 'off' };
const a = session('a', UHD);
const longer = {
  ...a,
  readings: [reading(2, 800), reading(3, 310), reading(4, 305)],
  readingsFile: { ...a.readingsFile, sha256: '1'.repeat(64) },
};
const other = session('c', UHD, { body: 'brae' });
const now = bench([longer, other]);
const ledger = ledgerAfter([
  { bench: bench([a]), date: '2026-03-01' },
  { bench: bench([longer]), date: '2026-04-01', reason: 'Mistyped' },
  { bench: now, date: '2026-05-01', reason: 'Another body' },
]);
const page = correctionsPage(compileBench({ ...now, ledger }));

it('lists what moved where readings were corrected', () => {
  const [, mended] = page;
  expect(mended).toMatchObject({ day: '1 April 2026', reason: 'Mistyped', causes: ['data/sessions/a.csv changed'] });
  const rows = mended?.groups.flatMap((group) => group.rows) ?? [];
  expect(rows.find(({ id }) => id === 'maximum/a')).toMatchObject({ from: '310', to: '800 ms' });
});

it('says in one sentence what moved only because a body was added, and lists none of it', () => {
  const [added] = page;
  expect(added?.reason).toBe('Another body');
  const ids = added?.groups.flatMap(({ rows }) => rows.map(({ id }) => id)) ?? [];
  expect(ids.filter((id) => /^(?:count|bracket)\//.test(id))).toEqual([]);
  // of the whole bench: sessions, readings; of the body: the same
  expect(added?.follows).toMatch(/^Besides, (?:.* and )?\d+ of “Count”(?: and .*)? moved because something was added;/);
});
