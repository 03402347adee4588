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
  ['<Figure id="frames/a" />', [...A, 'frames/a']],
  ['<FigureTable ids={["total/b", "mean/b"]} caption="x" />', [...B, 'mean/b', 'total/b']],
  ['<FigureChart kind="total" caption="x" />', [...AB, 'session/a-audio', 'total/a', 'total/a-audio', 'total/b']],
  ['<FigureChart kind="total" where={{ resolution: "hd" }} caption="x" />', [...B, 'total/b']],
  ['<Readings session="b" />', [...B, 'total/b']],
  ['<Difference of="a" than="b" />', [...AB, 'difference/a/b']],
  ['<Ratio of="a" than="b" />', [...AB, 'ratio/a/b']],
  ['<Verdict of="a" than="b" margin="8 ms" />', [...AB, 'verdict/report-r/a/b/within-8-ms']],
  [
    '<DifferenceTable pairs={[["b", "a"]]} caption="x" />',
    [...AB, 'difference/b/a', 'ratio/b/a', 'verdict/report-r/b/a'],
  ],
  [
    '<DifferenceTable pairs={[["b", "a"]]} caption="x" /> and <Difference of="a-audio" than="a" />',
    [
      ...AB,
      'session/a-audio',
      'difference/b/a',
      'ratio/b/a',
      'verdict/report-r/b/a',
      'family/report-r',
      'difference/a-audio/a',
    ],
  ],
  ['<Advice body="alba-one" rig="attic" />', [...AUDIO, 'total/a', 'total/a-audio', ...COSTS]],
  ['<Lowest kind="total" body="alba-one" />', [...A, 'total/a']],
  ['<Claim of="total/b" atLeast="100 ms">over 100 ms</Claim>', [...B, 'total/b']],
  ['<Claim of="a-audio" than="a" verdict="slower">slower</Claim>', [...AUDIO, 'verdict/report-r/a-audio/a']],
  ['<Figure id="count/sessions" />', ['count/sessions']],
  ['<Figure {...{}} /> and <Mine />', []],
  ['<Quoted from="a standard">125 ms</Quoted> and no figure', []],
])('%s', (text, ids) => expect(shownBy(text)).toEqual([...ids].sort()));
