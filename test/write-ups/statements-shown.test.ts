/** What a report states: the figures that its parts show, and the sessions and bodies that these are of. */
import { expect, it } from 'vitest';
import { compileBench } from '../../src/site/compile.ts';
import { answeringFor } from '../../src/write-ups/answering.ts';
import { statementsShown } from '../../src/write-ups/statements-shown.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const slower = [reading(2, 400), reading(3, 410), reading(4, 405)];
const published = bench([
  session('a', { rate: '24', resolution: 'uhd', 'audio-out': 'off' }),
  session('a-audio', { rate: '24', resolution: 'uhd', 'audio-out': 'on' }, { readings: slower }),
  session('b', { rate: '25', resolution: 'hd', 'audio-out': 'off' }, { body: 'brae' }),
]);

function shownBy(text: string): readonly string[] {
  const refuse = (): never => {
    throw new Error('the text of a test must be MDX');
  };
  const report: WriteUp = {
    id: 'r',
    title: 'R',
    summary: 'r',
    date: '2026-01-05',
    ...parseReferences(text, refuse, true),
    text,
    file: published.settingsFile,
  };
  const site = compileBench({ ...published, reports: [report] });
  return [...statementsShown(report, answeringFor(site, { kind: 'report', writeUp: report }))].sort();
}

const A = ['body/alba-one', 'session/a'];
const AUDIO = ['body/alba-one', 'session/a', 'session/a-audio'];
const B = ['body/brae', 'session/b'];
const AB = ['body/alba-one', 'body/brae', 'session/a', 'session/b'];
const COSTS = ['cost/a', 'cost/a-audio'];

it.each([
  ['<Figure id="frames/a" />', ['frames/a']],
  ['<FigureTable ids={["total/b", "mean/b"]} caption="x" />', [...B, 'mean/b', 'total/b']],
  ['<FigureChart kind="total" caption="x" />', [...AB, 'session/a-audio', 'total/a', 'total/a-audio', 'total/b']],
  ['<FigureChart kind="total" where={{ resolution: "hd" }} caption="x" />', [...B, 'total/b']],
  ['<Readings session="b" />', [...B, 'total/b']],
  ['<Difference of="a" than="b" />', ['difference/a/b']],
  ['<Ratio of="a" than="b" />', ['ratio/a/b']],
  ['<Verdict of="a" than="b" margin="8 ms" />', ['verdict/report-r/a/b/within-8-ms']],
  [
    '<DifferenceTable pairs={[["b", "a"]]} caption="x" />',
    [...AB, 'difference/b/a', 'ratio/b/a', 'verdict/report-r/b/a'],
  ],
  [
    '<DifferenceTable pairs={[["b", "a"]]} caption="x" /> and <Difference of="a-audio" than="a" />',
    [...AB, 'difference/b/a', 'ratio/b/a', 'verdict/report-r/b/a', 'family/report-r', 'difference/a-audio/a'],
  ],
  ['<Advice body="alba-one" rig="attic" />', [...AUDIO, 'total/a', 'total/a-audio', ...COSTS]],
  ['<Lowest kind="total" body="alba-one" />', A],
  ['<Claim of="total/b" atLeast="100 ms">over 100 ms</Claim>', []],
  ['<Claim of="a-audio" than="a" verdict="slower">slower</Claim>', []],
  ['<Figure id="count/sessions" />', ['count/sessions']],
  ['<Figure {...{}} /> and <Mine />', []],
  ['<Quoted from="a standard">125 ms</Quoted> and no figure', []],
])('%s', (text, ids) => expect(shownBy(text)).toEqual([...ids].sort()));

it('a write-up prints its own title, day and words', () => {
  const file = { ...published.settingsFile, path: 'content/reports/r.mdx' };
  const report = { id: 'r', parts: [], file };
  const site = compileBench(published);
  const writeUp: WriteUp = {
    ...report,
    title: 'R',
    summary: 'r',
    date: '2026-01-05',
    text: '',
    links: [],
    prose: [],
    ownNames: [],
  };
  expect([...statementsShown(report, answeringFor(site, { kind: 'report', writeUp }))].sort()).toEqual([
    'date/reports/r',
    'pictures/reports/r',
    'report/r',
    'words/reports/r',
  ]);
});
