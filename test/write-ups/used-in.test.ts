import { expect, it } from 'vitest';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { compileBench } from '../../src/site/compile.ts';
import { usesOfSessions } from '../../src/write-ups/used-in.ts';
import { bench, session } from '../support/small-bench.ts';

const small = bench([
  session('a', { rate: '24', resolution: 'uhd', 'audio-out': 'off' }),
  session('b', { rate: '25', resolution: 'hd', 'audio-out': 'off' }, { body: 'brae' }),
  session('c', { rate: '59.94', resolution: 'hd', 'audio-out': 'off' }),
]);

function report(id: string, title: string, text: string): WriteUp {
  const refuse = (): never => {
    throw new Error('the text of a test must be MDX');
  };
  const parsed = parseReferences(text, refuse, true);
  return { id, title, summary: id, date: '2026-01-05', ...parsed, text, file: small.settingsFile };
}

it('a session is used where a write-up shows it, compares it, or rests a claim on it; each write-up once', () => {
  const uses = usesOfSessions(
    compileBench({
      ...small,
      reports: [
        report('one', 'One', '<Figure id="total/a" /> and <Figure id="frames/a" />'),
        report('two', 'Two', '<Difference of="a" than="b" />'),
        report('three', 'Three', '<Claim of="total/b" atLeast="100 ms">over 100 ms</Claim>'),
      ],
    }),
  );
  expect(uses.get('a')).toEqual([
    { title: 'One', path: '/reports/one/' },
    { title: 'Two', path: '/reports/two/' },
  ]);
  expect(uses.get('b')).toEqual([
    { title: 'Two', path: '/reports/two/' },
    { title: 'Three', path: '/reports/three/' },
  ]);
  expect(uses.get('c')).toBeUndefined();
});
