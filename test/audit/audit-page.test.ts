/** That the audit sees what a reader sees: pages written out here, on a bench of two sessions. */
import { describe, expect, it } from 'vitest';
import { auditPage, auditProblems } from '../../src/audit/audit-page.ts';
import { siteFacts } from '../../src/audit/site-facts.ts';
import { describeProblem } from '../../src/model/problem-text.ts';
import { AUDIT_CODES } from '../../src/model/problem.ts';
import { compileBench } from '../../src/site/compile.ts';
import { bench, reading, session } from '../support/small-bench.ts';

const [rig] = bench([]).rigs;
const whole = bench(
  [
    session(
      'a',
      { rate: '24', resolution: 'uhd', 'audio-out': 'off' },
      {
        stated: ['20.5 °C', '20 min'],
        readings: [300, 310, 305].map((ms, at) => reading(2 + at, ms, { cells: { shown: `00:0${at}.500` } })),
      },
    ),
    session(
      'b',
      { rate: '24', resolution: 'hd', 'audio-out': 'off' },
      { body: 'brae', readings: [200, 211, 205].map((ms, at) => reading(2 + at, ms)) },
    ),
  ],
  { rigs: [{ ...rig!, stated: ['1/240 s', '0.35', '60'] }] },
);
const published = compileBench(whole);
const precision = new Map([
  [
    'attic',
    {
      rate: '24 frames/s',
      lines: [{ way: '1 clip, every 0.3 s', points: [{ readings: 8, halfWidth: 8.8, text: '± 8.8 ms' }] }],
    },
  ],
]);
const site = siteFacts(published, precision);
const total = published.figure('total/a')!;
const finding = published.register.findings.find(({ message, hint }) => /\d\s(?:ms|s|Hz)\b/.test(message + hint));

const audit = (body: string, page = '/x/') =>
  auditPage(page, `<!doctype html><html><head><title>X</title></head><body>${body}</body></html>`, site);
const left = (body: string, page?: string): readonly string[] =>
  audit(body, page).unaccounted.map(({ number }) => number);

const FIGURE = `<a class="figure" href="../a/#total" data-figure="total/a">${total.text}</a>`;

describe('accounts for', () => {
  it.each([
    ['a figure', FIGURE],
    [
      'an entry, with what it says',
      `<td data-of-figure="total/a"><span data-entry="total/a">${total.text}</span></td>`,
    ],
    ['words of a claim', '<a data-claim="total/a">more than three hundred milliseconds</a>'],
    ['a setting and a quotation', '<span data-setting>2 ms</span>, <span data-quoted="a standard">125 ms</span>'],
    ['a rate of the bench', 'at 59.94 frames/s on a 60 Hz screen'],
    [
      'facts of a rig, to the digits printed',
      '<dd data-from="data/rigs/attic.md">exposure 4.17 ms; at 35 %; 60 Hz</dd>',
    ],
    ['facts of a session', '<dl data-from="data/sessions/a.md"><dd>20.5 °C</dd><dd>20 min</dd></dl>'],
    [
      'a drawing of figures',
      `<figure data-from="count/sessions\ntotal/a"><svg><desc>At ${total.text}.</desc><text>${total.text}</text></svg></figure>`,
    ],
    [
      'simulated precision',
      '<table data-from="data/rigs/attic.md"><tr><th>1 clip, every 0.3 s</th><td>± 8.8 ms</td></tr></table>',
    ],
    [
      'raw readings',
      '<table data-from="data/sessions/a.csv"><thead><tr><th>No.</th><th>Latency / ms</th></tr></thead><tbody><tr><td>1</td><td>305</td></tr></tbody></table>',
    ],
    ['a finding', `<li data-finding="${finding?.rule}">${finding?.message} ${finding?.hint}</li>`],
    ['the level of coverage', 'a 95 % interval'],
  ])('%s', (_what, body) => expect(left(body)).toEqual([]));

  it('has a finding to look at', () => expect(finding).toBeDefined());
});

describe('in a table', () => {
  const other = published.figure('total/b')!;
  const cell = (id: string): string => `<td><a data-figure="${id}" href="../x/">${published.figure(id)!.text}</a></td>`;
  const row = (of: string, cells: string): string => `<tr><th><a href="../sessions/${of}/">${of}</a></th>${cells}</tr>`;
  const table = (head: string, ...rows: readonly string[]): string =>
    `<table data-from="total/a\ntotal/b"><thead><tr><th></th>${head}</tr></thead><tbody>${rows.join('')}</tbody></table>`;

  it('a figure is of the session to which the head of its row leads', () => {
    expect(total.text).not.toBe(other.text);
    expect(left(table('', row('a', cell('total/a')), row('b', cell('total/b'))))).toEqual([]);
    expect(left(table('', row('a', cell('total/b')), row('b', cell('total/a'))))).toEqual([other.text, total.text]);
  });

  it('a figure is of the body to which the head of its column leads, or of the rig', () => {
    const heads =
      '<th><a href="../../bodies/alba-one/">Alba One</a></th><th><a href="../../bodies/brae/">Brae</a></th>';
    const plain = (...ids: readonly string[]): string => `<tr><th>24</th>${ids.map(cell).join('')}</tr>`;
    expect(left(table(heads, plain('total/a', 'total/b')))).toEqual([]);
    expect(left(table(heads, plain('total/b', 'total/a')))).toEqual([other.text, total.text]);
    expect(left(table('', `<tr><th><a href="/rigs/attic/#x">Attic</a></th>${cell('total/a')}</tr>`))).toEqual([]);
    expect(left(table('', `<tr><th><a href="/rigs/loft/">Loft</a></th>${cell('total/a')}</tr>`))).toEqual([total.text]);
  });

  it('a number that the whole table accounts for is said by a figure of its own row', () => {
    const bare = (text: string): string => `<td>${text}</td>`;
    expect(left(table('', row('a', bare(total.text)), row('b', bare(other.text))))).toEqual([]);
    expect(left(table('', row('a', bare(other.text)), row('b', bare(total.text))))).toEqual([other.text, total.text]);
  });
});

describe('finds', () => {
  it.each([
    ['a number in the text', '<p>It takes 307 ms.</p>', ['307 ms']],
    [
      'a number in words',
      '<p>It takes three hundred milliseconds, half a frame.</p>',
      ['three hundred milliseconds', 'half a frame'],
    ],
    ['a figure with another value', FIGURE.replace(total.text, '299 ± 21 ms'), ['299 ± 21 ms']],
    ['a figure that there is not', FIGURE.replace('total/a', 'total/b'), [total.text]],
    ['another number of a figure’s entry', '<td data-of-figure="total/a">standard uncertainty 0.1 ms</td>', ['0.1 ms']],
    ['a fact that its file does not state', '<dd data-from="data/rigs/attic.md">exposure 4.27 ms</dd>', ['4.27 ms']],
    ['a mark that names no file of the site', '<dd data-from="data/rigs/loft.md">exposure 4.17 ms</dd>', ['4.17 ms']],
    ['a label of a drawing', '<figure data-from="total/a"><svg><text>12 ms</text></svg></figure>', ['12 ms']],
    ['a number of a finding', `<li data-finding="${finding?.rule}">It is 999 ms.</li>`, ['999 ms']],
    ['a quotation from nowhere', '<span data-quoted="">125 ms</span>', ['125 ms']],
    [
      'a reading that was not taken',
      '<table data-from="data/sessions/a.csv"><thead><tr><th>Latency / ms</th></tr></thead><tbody><tr><td>306</td></tr></tbody></table>',
      ['306'],
    ],
    [
      'a bare number under a head with a unit',
      '<table><thead><tr><th>Body</th><th>Lag (ms)</th></tr></thead><tbody><tr><th>1</th><td>17</td></tr></tbody></table>',
      ['17'],
    ],
    ['a unit that is marked where its number is not', '<p>300<span data-setting> ms</span></p>', ['300 ms']],
    ['a range of which one end is marked', '<p>300 to <span data-setting>310 ms</span></p>', ['300 to 310 ms']],
    ['a tooltip', '<abbr title="after 300 ms">soon</abbr>', ['300 ms']],
    ['an alternative text', '<img alt="300 ms">', ['300 ms']],
    ['a name for screen readers', '<div aria-label="300 ms"></div>', ['300 ms']],
    ['an example for authors on another page', '<code data-authored>300 ms</code>', ['300 ms']],
    ['full-width digits', '<p>３００ ms</p>', ['３００ ms']],
    ['a number and a unit in elements of their own', '<p><b>300</b>&nbsp;<i>ms</i></p>', ['300 ms']],
    ['a rate that the bench does not run at', '<p>at 47 frames/s</p>', ['47 frames/s']],
    ['a temperature', '<p>at 30 °C for 5 min</p>', ['30 °C', '5 min']],
  ])('%s', (_what, body, numbers) => expect(left(body)).toEqual(numbers));

  it('what the head of a page says', () => {
    const html = '<html><head><title>300 ms</title><meta name="description" content="310 ms"></head></html>';
    expect(auditPage('/x/', html, site).unaccounted.map(({ number }) => number)).toEqual(['300 ms', '310 ms']);
  });
});

it('tells a strict build of page and text', () => {
  const problems = auditProblems(audit('<p>It takes about 307 ms to arrive.</p>'));
  expect(problems.map(describeProblem)).toEqual([
    '/x/  this page says "307 ms" and nothing accounts for it, in “It takes about 307 ms to arrive.”. Every number with a unit is a figure, a raw reading, a marked setting or quotation, or a fact of the file that its mark names.',
  ]);
  expect(problems.map(({ code }) => code)).toEqual(AUDIT_CODES);
});

it('counts what it read', () => expect(audit(`${FIGURE} 2 ms <p>three frames</p>`).read).toBe(3));
