/** What write-ups compare: each question once, with its exact margin, in a family of its own. */
import { describe, expect, it } from 'vitest';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { compileBench } from '../../src/site/compile.ts';
import { answeringFor } from '../../src/write-ups/answering.ts';
import { askedFamilies } from '../../src/write-ups/asked-families.ts';
import { figuresShown } from '../../src/write-ups/statements-shown.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const slower = [reading(2, 400), reading(3, 410), reading(4, 405)];
const published = bench([
  session('a', { rate: '24', resolution: 'uhd', 'audio-out': 'off' }),
  session('b', { rate: '24', resolution: 'uhd', 'audio-out': 'on' }, { readings: slower }),
]);

function writeUp(text: string, id = 'r'): WriteUp {
  const refuse = (): never => {
    throw new Error('the text of a test must be MDX');
  };
  return {
    id,
    title: id,
    summary: id,
    date: '2026-01-05',
    ...parseReferences(text, refuse),
    text,
    file: published.settingsFile,
  };
}

describe('the comparisons of a write-up', () => {
  const pairsOf = (text: string) => askedFamilies({ ...published, reports: [writeUp(text)] }, [])[0]?.pairs ?? [];
  const B_A = { a: 'b', b: 'a' };
  const verdict = (margin: string): string => `<Verdict of="b" than="a" margin="${margin}" />`;

  it.each([
    ['<Difference of="b" than="a" /> <Ratio of="b" than="a" /> <Verdict of="b" than="a" />', [B_A]],
    ['<Figure id="difference/b/a" />', [B_A]],
    ['<Figure id="ratio/b/a" /> <Figure id="difference/b/c" /> <Figure id="total/a" />', [B_A]],
    [`<Difference of="b" than="a" /> ${verdict('8 ms')}`, [{ ...B_A, marginMs: 8 }]],
    [
      `${verdict('8 ms')} ${verdict('9 ms')}`,
      [
        { ...B_A, marginMs: 8 },
        { ...B_A, marginMs: 9 },
      ],
    ],
    // 1/240 s is 4.1666… ms and prints as 4.167 ms: one question, and the smaller of the two is its margin.
    [`${verdict('1/240 s')} ${verdict('4.167 ms')}`, [{ ...B_A, marginMs: 1000 / 240 }]],
    [`${verdict('4.167 ms')} ${verdict('1/240 s')}`, [{ ...B_A, marginMs: 1000 / 240 }]],
    ['<Claim of="b" than="a" verdict="slower" margin="8 ms">slower</Claim>', [{ ...B_A, marginMs: 8 }]],
    ['<Verdict of="b" than="b" /> <Verdict of="b" than="c" />', []],
  ])('%s', (text, pairs) => expect(pairsOf(text)).toEqual(pairs));
});

it('counts margins that print alike once in Holm’s family, and publishes one verdict', () => {
  const report = writeUp(
    '<Verdict of="b" than="a" margin="1/240 s" /> <Verdict of="b" than="a" margin="4.167 ms" /> <Verdict of="b" than="a" />',
  );
  const site = compileBench({ ...published, reports: [report] });
  expect(site.figure('family/report-r')?.value).toBe(1);
  expect(figuresShown(report, answeringFor(site, { kind: 'report', writeUp: report })).map(({ id }) => id)).toEqual(
    Array.from({ length: 3 }, () => 'verdict/report-r/b/a/within-4.167-ms'),
  );
});

it('answers a report and a method note of one id each from its own family', () => {
  const [report, method] = [writeUp('<Verdict of="b" than="a" />'), writeUp('<Verdict of="a" than="b" />')];
  const site = compileBench({ ...published, reports: [report], methods: [method] });
  const shown = (['report', 'method'] as const).map((kind) => {
    const of = kind === 'report' ? report : method;
    return figuresShown(of, answeringFor(site, { kind, writeUp: of })).map(({ id }) => id);
  });
  expect(shown).toEqual([['verdict/report-r/b/a'], ['verdict/method-r/a/b']]);
});
