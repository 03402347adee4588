import { describe, expect, it } from 'vitest';
import { checkWriteUps, expectedOf, knownOf } from '../../src/write-ups/check-write-ups.ts';
import { checkClaims } from '../../src/write-ups/claims/check-claims.ts';
import { compileBench } from '../../src/site/compile.ts';
import { PARTS } from '../../src/write-ups/parts.ts';
import { parseReferences } from '../../src/ingest/references.ts';
import type { WriteUp } from '../../src/model/bench.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { WRITE_UP_CODES, type Problem, type ProblemCode } from '../../src/model/problem.ts';
import { bench, session } from '../support/small-bench.ts';

/** What is wrong with the text by itself. */
const inText: Problem[] = [];

function writeUp(id: string, text: string): WriteUp {
  return {
    id,
    title: id,
    summary: id,
    date: '2026-01-05',
    ...parseReferences(text, (problem) => inText.push({ ...problem, file: `content/reports/${id}.mdx` })),
    text,
    file: { path: `content/reports/${id}.mdx`, sha256: '0'.repeat(64), bytes: text.length },
  };
}

const sessions = [
  session('alba-24', { rate: '24', resolution: 'uhd', 'audio-out': 'off' }),
  session('alba-24-audio', { rate: '24', resolution: 'uhd', 'audio-out': 'on' }),
];
const two = {
  ...writeUp('two-timers', ''),
  file: { path: 'content/methods/two-timers.mdx', sha256: '0'.repeat(64), bytes: 0 },
};

const NAMES = PARTS.map(({ name }) => name);
const WRITE_PARTS =
  "Write Markdown and the parts of the authors' guide. A publisher who trusts every author can allow code and any markup: write-ups-run-code: true in content/site.md.";

const seen = new Set<ProblemCode>();

function check(text: string): readonly string[] {
  inText.length = 0;
  const whole = bench(sessions, { methods: [two], reports: [writeUp('r', text)] });
  const site = compileBench(whole);
  const problems = [...inText, ...checkWriteUps(knownOf(site)), ...checkClaims(site)];
  for (const { code } of problems) seen.add(code);
  return problems.map(describeProblem);
}

it('accepts what exists', () => {
  expect(
    check(`A <Figure id="total/alba-24" />, [its session](/sessions/alba-24/#total), [data](/data/sessions/alba-24.csv), [out](https://example.org/), [beside](../r/#here), [up](../../sessions/alba-24/), [here](#here), [mail](mailto:a@example.org).

<FigureTable ids={["total/alba-24", 'frames/alba-24']} caption="x" />

<FigureChart kind="total" body="alba-one" rig="attic" where={{ resolution: 'uhd' }} caption="x" />

<Readings session="alba-24" />

<FigureChart ids={["total/alba-24"]} bands="sound" caption="x" />

<RateLaw body="alba-one" rig="attic" where={{ resolution: 'uhd' }} caption="x" />

A law: <RateLawSentence body="alba-one" />

<ChainBrackets />

<History body="brae" />

<MethodNote of="two-timers" />

<Difference of="alba-24-audio" than="alba-24" />, <Ratio of="alba-24-audio" than="alba-24" />, <Verdict of="alba-24-audio" than="alba-24" margin="8 ms" />

<DifferenceTable setting="audio-out" body="alba-one" caption="x" />

<DifferenceChart pairs={[["alba-24-audio", "alba-24"]]} margin="1/120 s" caption="x" />

<Effects body="alba-one" rig="attic" />

<Advice body="alba-one" rig="attic" />

<Ranking kind="total" where={{ rate: "24" }} caption="x" />

<Figure id="difference/alba-24/alba-24-audio" />

<Lowest kind="total" rig="attic" /> <Highest ids={["total/alba-24"]} />

<Claim of="total/alba-24" atLeast="100 ms" atMost="12 frames">well over 100 ms</Claim>, <Claim of="alba-24-audio" than="alba-24" verdict="same" margin="1 s">the *same*</Claim>, <Claim of="count/sessions" exactly="2">two</Claim>, <Claim of="total/alba-24" atLeast="0.1 s">not less than a hundred milliseconds on the Alba One at 59.94 frames a second, 25 and all</Claim>, <Claim of="alba-24-audio" than="alba-24" atLeast="half">more than half of the one and over one half</Claim>

<Quoted from="a standard">125 ms</Quoted> <Setting>2 ms</Setting>
`),
  ).toEqual([]);
});

describe('refuses what does not, with the nearest that does', () => {
  it.each([
    [
      '<Claim of="total/alba-24" atLeast="100 ms">hundreds of milliseconds</Claim>',
      'content/reports/r.mdx:1:1  Claim  the words of this claim say "hundreds of milliseconds", and it asserts at least 100 ms. Let the words and the property say the same.',
    ],
    [
      'Limits are <Quoted from=" ">125 ms</Quoted>.',
      'content/reports/r.mdx:1:12  Quoted from  has no value. Write one, or remove the key where it is optional.',
    ],
    [
      '<Figure id="total/alba-25" />',
      'content/reports/r.mdx:1:1  Figure id  there is no figure "total/alba-25". Did you mean total/alba-24?',
    ],
    [
      '<Figure id="nothing-like-it-at-all" />',
      'content/reports/r.mdx:1:1  Figure id  there is no figure "nothing-like-it-at-all". npm run figures lists them all.',
    ],
    ['<Figure />', 'content/reports/r.mdx:1:1  Figure  this part needs the property id. Add it.'],
    [
      '<Figur id="total/alba-24" />',
      `content/reports/r.mdx:1:1  there is no part <Figur>; expected one of ${NAMES.slice(0, 12).join(', ')} and ${NAMES.length - 12} more. Did you mean Figure?`,
    ],
    [
      '<figuretable kind="total" caption="x" />',
      `content/reports/r.mdx:1:1  <figuretable> is neither a part nor an element that a write-up may write. ${WRITE_PARTS} Did you mean FigureTable?`,
    ],
    [
      '<iframe src="https://example.org/"></iframe>',
      `content/reports/r.mdx:1:1  <iframe> is neither a part nor an element that a write-up may write. ${WRITE_PARTS}`,
    ],
    [
      '<script>alert(1)</script>',
      `content/reports/r.mdx:1:1  <script> is neither a part nor an element that a write-up may write. ${WRITE_PARTS}`,
    ],
    [
      'A <meta http-equiv="refresh" content="0; url=https://example.org/" /> b',
      `content/reports/r.mdx:1:3  <meta> is neither a part nor an element that a write-up may write. ${WRITE_PARTS}`,
    ],
    [
      '<Readings sesion="alba-24" />',
      'content/reports/r.mdx:1:1  Readings  this part takes no property "sesion"; expected session. Did you mean session?',
    ],
    [
      '<Readings session="alba24" />',
      'content/reports/r.mdx:1:1  Readings session  unknown session "alba24"; expected one of alba-24, alba-24-audio. Did you mean alba-24?',
    ],
    [
      '<FigureTable ids={["total/alba-24", "total/alba-2"]} caption="x" />',
      'content/reports/r.mdx:1:1  FigureTable ids  there is no figure "total/alba-2". Did you mean total/alba-24?',
    ],
    [
      '<FigureTable caption="x" />',
      'content/reports/r.mdx:1:1  FigureTable  this part needs the property ids or kind. Add it.',
    ],
    [
      '<FigureTable kind="total" body="albaone" caption="x" />',
      'content/reports/r.mdx:1:1  FigureTable body  unknown body "albaone"; expected one of alba-one, brae. Did you mean alba-one?',
    ],
    [
      '<FigureChart kind="total" where={{ resolutoin: "uhd" }} caption="x" />',
      'content/reports/r.mdx:1:1  FigureChart where  unknown setting "resolutoin"; expected one of resolution, rate, audio-out. Did you mean resolution?',
    ],
    [
      '<FigureChart kind="total" where={{ resolution: "uh" }} caption="x" />',
      'content/reports/r.mdx:1:1  FigureChart where  unknown level "uh" of this setting; expected one of hd, uhd. Did you mean uhd?',
    ],
    [
      '<FigureChart kind="total" body="brae" caption="x" />',
      'content/reports/r.mdx:1:1  FigureChart  no session matches this selection. Loosen it, or record the session first.',
    ],
    [
      '<FigureChart kind="total" bands="sounds" caption="x" />',
      'content/reports/r.mdx:1:1  FigureChart bands  "sounds" is not a choice here; expected sound. Did you mean sound?',
    ],
    ['<RateLaw rig="attic" />', 'content/reports/r.mdx:1:1  RateLaw  this part needs the property body. Add it.'],
    [
      '<RateLaw body="alba-on" />',
      'content/reports/r.mdx:1:1  RateLaw body  unknown body "alba-on"; expected one of alba-one, brae. Did you mean alba-one?',
    ],
    [
      '<RateLawSentence body="brae" />',
      'content/reports/r.mdx:1:1  RateLawSentence  no session matches this selection. Loosen it, or record the session first.',
    ],
    [
      '<RateLaw body="alba-one" where={{ resolution: "hd" }} />',
      'content/reports/r.mdx:1:1  RateLaw  no session matches this selection. Loosen it, or record the session first.',
    ],
    ['<History />', 'content/reports/r.mdx:1:1  History  this part needs the property body. Add it.'],
    [
      '<ChainBrackets display="screen" />',
      'content/reports/r.mdx:1:1  ChainBrackets  this part takes no property "display"; expected caption.',
    ],
    [
      '<MethodNote of="two-timer" />',
      'content/reports/r.mdx:1:1  MethodNote of  unknown method "two-timer"; expected two-timers. Did you mean two-timers?',
    ],
    [
      '<Difference of="alba24" than="alba-25-audio" />',
      'content/reports/r.mdx:1:1  Difference of  unknown session "alba24"; expected one of alba-24, alba-24-audio. Did you mean alba-24?',
      'content/reports/r.mdx:1:1  Difference than  unknown session "alba-25-audio"; expected one of alba-24, alba-24-audio. Did you mean alba-24-audio?',
    ],
    ['<Ratio of="alba-24" />', 'content/reports/r.mdx:1:1  Ratio  this part needs the property than. Add it.'],
    [
      '<Verdict of="alba-24" than="alba-24" />',
      'content/reports/r.mdx:1:1  Verdict than  "alba-24" is compared with itself. Name two sessions.',
    ],
    [
      '<Verdict of="alba-24" than="alba-24-audio" margin="8" />',
      'content/reports/r.mdx:1:1  Verdict margin  expected a duration, found "8"; write a number and a unit: 14 ms, 1/500 s, 60 s, 60 min.',
    ],
    [
      '<Verdict of="alba-24" than="alba-24-audio" margin="0 ms" />',
      'content/reports/r.mdx:1:1  Verdict margin  must be longer than zero, found "0 ms".',
    ],
    [
      '<DifferenceTable pairs={[["alba-24", "alba-2"]]} caption="x" />',
      'content/reports/r.mdx:1:1  DifferenceTable pairs  unknown session "alba-2"; expected one of alba-24, alba-24-audio. Did you mean alba-24?',
    ],
    [
      '<DifferenceTable pairs={["alba-24"]} caption="x" />',
      'content/reports/r.mdx:1:1  DifferenceTable pairs  expected pairs of sessions, such as {[["a", "b"], ["c", "d"]]}, found ["alba-24"].',
    ],
    [
      '<DifferenceChart setting="audio" caption="x" />',
      'content/reports/r.mdx:1:1  DifferenceChart setting  unknown setting "audio"; expected one of resolution, rate, audio-out.',
    ],
    [
      '<DifferenceChart setting="resolution" caption="x" />',
      'content/reports/r.mdx:1:1  DifferenceChart  no two sessions match, so there is nothing to compare. Loosen it, or record the sessions first.',
    ],
    [
      '<DifferenceTable caption="x" />',
      'content/reports/r.mdx:1:1  DifferenceTable  this part needs the property pairs or setting or where. Add it.',
    ],
    [
      '<Effects body="brae" rig="attic" />',
      'content/reports/r.mdx:1:1  Effects  no two sessions match, so there is nothing to compare. Loosen it, or record the sessions first.',
    ],
    [
      '<Advice body="bra" rig="attic" />',
      'content/reports/r.mdx:1:1  Advice body  unknown body "bra"; expected one of alba-one, brae. Did you mean brae?',
    ],
    [
      '<Ranking kind="median" caption="x" />',
      'content/reports/r.mdx:1:1  Ranking kind  "median" is not a choice here; expected one of total, frames.',
    ],
    [
      '<Claim of="total/alba-25" atLeast="100 ms">x</Claim>',
      'content/reports/r.mdx:1:1  Claim of  there is no figure "total/alba-25". Did you mean total/alba-24?',
    ],
    [
      '<Claim of="alba-24" than="alba-25-audio" verdict="slwer">x</Claim>',
      'content/reports/r.mdx:1:1  Claim than  unknown session "alba-25-audio"; expected one of alba-24, alba-24-audio. Did you mean alba-24-audio?',
      'content/reports/r.mdx:1:1  Claim verdict  "slwer" is not a choice here; expected one of slower, faster, same, not-settled. Did you mean slower?',
    ],
    [
      '<Claim of="total/alba-24">x</Claim>',
      'content/reports/r.mdx:1:1  Claim  this part needs the property atLeast or atMost or exactly or sameWithin or noLowerBy or noHigherBy or verdict or lowestOf or highestOf. Add it.',
    ],
    [
      '<Claim of="total/alba-24" atLeast="100" atMost="a lot">x</Claim>',
      'content/reports/r.mdx:1:1  Claim atMost  expected a quantity, found "a lot"; write 100 ms, 0.5 frames, half a frame, 30 %, half, twice or 3.',
    ],
    [
      '<Claim of="total/alba-24" atLeast="100">x</Claim>',
      'content/reports/r.mdx:1:1  Claim atLeast  "100" cannot be set against total/alba-24 (304 ± 21 ms). State it in the unit of the figure.',
    ],
    [
      '<Claim of="total/alba-24" sameWithin="8 ms">x</Claim>',
      'content/reports/r.mdx:1:1  Claim sameWithin  total/alba-24 compares nothing, so this cannot be asked of it. Name two sessions, of and than, or a difference.',
    ],
    [
      '<Claim of="mean/alba-24" lowestOf={{ rig: "attic" }}>x</Claim>',
      'content/reports/r.mdx:1:1  Claim lowestOf  mean/alba-24 cannot be ranked with these. Only totals, or totals in frames, all of one kind, have an order.',
    ],
    [
      '<Claim of="total/alba-24" lowestOf="all">x</Claim>',
      'content/reports/r.mdx:1:1  Claim lowestOf  expected figures, such as {["total/a", "total/b"]}, or what their sessions have in common, such as {{ rig: "balcony", where: { rate: "25" } }}, found "all".',
    ],
    [
      '<Claim of="total/alba-24" highestOf={["total/alba-2"]}>x</Claim>',
      'content/reports/r.mdx:1:1  Claim highestOf  there is no figure "total/alba-2". Did you mean total/alba-24?',
    ],
    [
      '<Claim of="total/alba-24" atLeast={bound}>x</Claim>',
      'content/reports/r.mdx:1:1  Claim  atLeast is not written out, so it cannot be checked before the pages are drawn. Write plain values: text in quotes, numbers, lists and maps of them.',
    ],
    [
      '<Claim of="total/alba-24" atLeast="100 ms" />',
      'content/reports/r.mdx:1:1  Claim  there are no words between its tags. Write them: what is to be marked stands inside.',
    ],
    [
      '<Claim of="total/alba-24" atLeast="100 ms">it is <Figure id="total/alba-24" /></Claim>',
      'content/reports/r.mdx:1:1  Claim  holds <Figure> between its tags, and a link cannot stand in a link. Let it hold plain words only.',
    ],
    [
      'It is not true that <Claim of="total/alba-24" atLeast="100 ms">it takes 100 ms and more</Claim>.',
      'content/reports/r.mdx:1:21  Claim  the sentence around “it takes 100 ms and more” may turn it round: "not". The data support the words of a claim, not their opposite: say them straight, or let the claim assert the opposite; where this word is about something else, give it a sentence or a clause of its own.',
    ],
    [
      '<Claim of="count/sessions" exactly="2">three sessions</Claim>',
      'content/reports/r.mdx:1:1  Claim  the words of this claim say "three", and it asserts exactly 2. Let the words and the property say the same.',
    ],
    [
      '<Claim of="alba-24-audio" than="alba-24" verdict="same" margin="1 s">the same within 300 ms</Claim>',
      'content/reports/r.mdx:1:1  Claim  the words of this claim say "300 ms", and it asserts verdict: same. Let the words and the property say the same.',
    ],
    [
      '<Claim of="total/alba-24" atLeast="400 ms">over 400 ms</Claim>',
      'content/reports/r.mdx:1:1  Claim  the data do not support "over 400 ms" (at least 400 ms): total/alba-24 is 304 ± 21 ms, 95 % interval 284 to 325 ms; its interval begins 120 ms too low. Change the sentence to what the data say, or find out why they say it.',
    ],
    ['<Quoted>125 ms</Quoted>', 'content/reports/r.mdx:1:1  Quoted  this part needs the property from. Add it.'],
    [
      '<FigureTable ids={["total/alba-24"]} caption={3} />',
      'content/reports/r.mdx:1:1  FigureTable caption  expected "text", found 3.',
    ],
    [
      'See [it](/sessions/alba-42/).',
      'content/reports/r.mdx:1:5  there is no page "/sessions/alba-42/" on this site. Did you mean /sessions/alba-24/ or /sessions/alba-24-audio/?',
    ],
    [
      'See [it](../../sessions/alba-42/#total).',
      'content/reports/r.mdx:1:5  there is no page "/sessions/alba-42/" on this site. Did you mean /sessions/alba-24/ or /sessions/alba-24-audio/?',
    ],
    [
      'See [it](../../../sessions/alba-24/).',
      'content/reports/r.mdx:1:5  there is no page "/../sessions/alba-24/" on this site. Did you mean /sessions/alba-24/, /data/sessions/alba-24.md or /data/sessions/alba-24.csv?',
    ],
    [
      'See [it][1].\n\n[1]: ../rr/',
      'content/reports/r.mdx:3:1  there is no page "/reports/rr/" on this site. Did you mean /reports/r/ or /reports/?',
    ],
  ])('%s', (text, ...problems) => expect(check(text)).toEqual(problems));

  it.each([
    ['two frames and more', 'atLeast="0.1 frames"', 'two frames', 'at least 0.1 frames'],
    [
      'at least a hundred and twenty milliseconds',
      'atLeast="100 ms"',
      'a hundred and twenty milliseconds',
      'at least 100 ms',
    ],
    ['under 100 ms', 'atLeast="100 ms"', 'under 100 ms', 'at least 100 ms'],
    ['more than 1 s', 'atMost="1 s"', 'more than 1 s', 'at most 1 s'],
    ['at least 47 of them', 'atLeast="100 ms"', '47', 'at least 100 ms'],
    ['twice the other', 'atLeast="100 ms"', 'twice', 'at least 100 ms'],
  ])('the claim %s, %s', (words, asserts, says, asserted) =>
    expect(check(`<Claim of="total/alba-24" ${asserts}>${words}</Claim>`)).toEqual([
      `content/reports/r.mdx:1:1  Claim  the words of this claim say "${says}", and it asserts ${asserted}. Let the words and the property say the same.`,
    ]),
  );
});

it('lets a trusted write-up bring parts and elements of its own, and holds its claims all the same', () => {
  const text = "import Mine from './mine.astro'\n\n<Mine /> <video /> {1 + 1}\n\n<Claim of={x}>y</Claim>";
  const problems: Omit<Problem, 'file'>[] = [];
  const references = parseReferences(text, (problem) => problems.push(problem), true);
  expect(problems).toEqual([]);
  const whole = bench(sessions, { methods: [two], reports: [{ ...writeUp('r', ''), ...references }] });
  const site = compileBench({ ...whole, site: { ...whole.site, writeUpsRunCode: true } });
  const found = checkWriteUps(knownOf(site));
  for (const { code } of found) seen.add(code);
  expect(found).toEqual([
    { code: 'not-plain', file: 'content/reports/r.mdx', line: 5, column: 1, key: 'Claim', found: 'of' },
  ]);
});

it('every kind of mistake was seen above', () => expect(WRITE_UP_CODES.filter((code) => !seen.has(code))).toEqual([]));

it('checks against what a faulty bench would hold', () => {
  const text =
    '<Figure id="total/alba-24" /> <Figure id="total/alba-99" /> <Figure id="rate-law-frames/alba-one/attic/uhd-off" /> <Figure id="difference/alba-24/alba-99" /> <Advice body="alba-one" rig="attic" /> [raw](/data/sessions/alba-24.csv) [page](/sessions/alba-99/) <Figure id="display-difference/two-screens" /> <Figure id="display-difference/alba-24" /> <Figure id="family/report-r" /> <FigureTable kind="total" where={{ rate: "24" }} caption="x" />';
  const inventory = {
    bodies: ['alba-one'],
    rigs: ['attic'],
    displayPairs: ['two-screens'],
    sessions: ['alba-24'],
    methods: ['two-timers'],
    reports: ['r'],
    settings: [],
    writeUps: [writeUp('r', text)],
  };
  expect(checkWriteUps(expectedOf(inventory)).map(({ code, found }) => [code, found])).toEqual([
    ['unknown-figure', 'total/alba-99'],
    ['unknown-page', '/sessions/alba-99/'],
  ]);
});
