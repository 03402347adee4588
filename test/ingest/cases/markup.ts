import type { ProblemCase } from './case.ts';

const FRONT = '---\ntitle: First\nsummary: The first report.\ndate: 2026-04-12\n---\n\n';
const REPORT = 'content/reports/first.mdx';
const TRUST =
  'A publisher who trusts every author can allow code and any markup: write-ups-run-code: true in content/site.md.';
const REMOVE = `Remove it: parts need no import, and numbers come from data. ${TRUST}`;
const AS_TEXT = `Write the text itself, or \\{ where the character is meant; a comment is {/* … */}. ${TRUST}`;
const PLAIN = 'Write plain values: text in quotes, numbers, lists and maps of them.';
const LINK = 'Lead to a page of this site (/sessions/a/), to https:, http: or mailto:.';

const report = (name: string, text: string, ...says: readonly string[]): ProblemCase => ({
  name,
  changes: { [REPORT]: FRONT + text },
  lines: says.map((line) => `${REPORT}:${line}`),
});

const unwritten = (key: string, found: string): string =>
  `7:1  ${key}  ${found} is not written out, so it cannot be checked before the pages are drawn. ${PLAIN}`;
const attribute = (key: string, found: string, choices: string): string =>
  `7:1  ${key}  this element takes no attribute "${found}"; expected one of ${choices}. ${TRUST}`;
const note = (file: string, text: string, ...says: readonly string[]): ProblemCase => ({
  name: `HTML or a link in a note: ${text}`,
  changes: { [file]: text },
  lines: says.map((line) => `${file}:${line}`),
});
const body = (text: string, ...says: readonly string[]): ProblemCase =>
  note('data/bodies/vennick.md', `---\nname: Vennick\nmaker: Vennick\nmodel: Q4\n---\n\n${text}\n`, ...says);
const HTML =
  'Write Markdown, or \\< where the character is meant; a number is marked with <Setting>…</Setting> or <Quoted from="…">…</Quoted>.';

/** What a write-up and a note may not do. */
export const MARKUP_CASES: readonly ProblemCase[] = [
  report(
    'an import, a re-export and a component defined in the text',
    "import { execSync } from 'node:child_process'\n\nexport const Figure = () => 'forged'\n\nText.\n",
    `7:1  "import { execSync } from 'node:child_process'" is code, and a write-up holds none. ${REMOVE}`,
    `9:1  "export const Figure = () => 'forged'" is code, and a write-up holds none. ${REMOVE}`,
  ),
  report(
    'expressions, alone and in a sentence, and a comment, which is none',
    '{process.env.HOME}\n\nIn {resolution} and {"text"}. {/* a comment */}\n',
    `7:1  "{process.env.HOME}" is code, and a write-up holds none. ${AS_TEXT}`,
    `9:4  "{resolution}" is code, and a write-up holds none. ${AS_TEXT}`,
    `9:21  "{\\"text\\"}" is code, and a write-up holds none. ${AS_TEXT}`,
  ),
  report('a property that is a name', '<FigureTable ids={mine} />\n', unwritten('FigureTable', 'ids')),
  report(
    'a name in a map',
    '<FigureTable where={{ resolution: process.env.HOME }} />\n',
    unwritten('FigureTable', 'where'),
  ),
  report('a computed key', '<FigureTable where={{ ["a" + 1]: "b" }} />\n', unwritten('FigureTable', 'where')),
  report('a call that closes the brackets', '<Figure id={"a") + alert("b"} />\n', unwritten('Figure', 'id')),
  report('a template that holds a name', '<Figure id={`total/${x}`} />\n', unwritten('Figure', 'id')),
  report('properties from elsewhere', '<Figure {...process.env} />\n', unwritten('Figure', '{...}')),
  report('a handler', '<p onclick="a()">x</p>\n', attribute('p', 'onclick', 'title, lang')),
  report('a style', '<p style="color: red">x</p>\n', attribute('p', 'style', 'title, lang')),
  report(
    'the marks of a figure',
    '<a class="figure" data-figure="total/a" href="/sessions/a/">1 s</a>\n',
    attribute('a', 'class', 'href, title, lang'),
    attribute('a', 'data-figure', 'href, title, lang'),
  ),
  report('an attribute of the framework', '<p set:html="<script>">x</p>\n', attribute('p', 'set:html', 'title, lang')),
  report(
    'links that run code or hide where they lead',
    '[a](javascript:alert%281%29) [b](java&#115;cript:a) [c](data:text/html,x) [d](//example.org)\n\n<a href="&#9;javascript:a()">e</a>\n\n[f][g]\n\n[g]: vbscript:x\n',
    `7:1  a link that begins with "javascript:" is refused. ${LINK}`,
    `7:30  a link that begins with "javascript:" is refused. ${LINK}`,
    `7:53  a link that begins with "data:" is refused. ${LINK}`,
    `7:75  a link that begins with "//" is refused. ${LINK}`,
    `9:1  a link that begins with "javascript:" is refused. ${LINK}`,
    `13:1  a link that begins with "vbscript:" is refused. ${LINK}`,
  ),
  body(
    'A <b>bold</b> word.',
    `7:3  "<b>" is HTML, which a note does not take. ${HTML}`,
    `7:10  "</b>" is HTML, which a note does not take. ${HTML}`,
  ),
  body('<script>\nalert(1)\n</script>', `7:1  "<script>" is HTML, which a note does not take. ${HTML}`),
  body('<!-- hidden -->', `7:1  "<!-- hidden -->" is HTML, which a note does not take. ${HTML}`),
  body('[a](javascript:x)', `7:1  a link that begins with "javascript:" is refused. ${LINK}`),
  body(
    'From <Setting>2 ms on.\n\nTo **3 ms</Quoted>** and <Quoted from="">4 ms</Quoted>.',
    '7:6  "<Setting>" has no counterpart in its paragraph. Write both tags around the words: <Setting>2 ms</Setting>.',
    '9:10  "</Quoted>" has no counterpart in its paragraph. Write both tags around the words: <Setting>2 ms</Setting>.',
    `9:26  "<Quoted from=\\"\\">" is HTML, which a note does not take. ${HTML}`,
    '9:46  "</Quoted>" has no counterpart in its paragraph. Write both tags around the words: <Setting>2 ms</Setting>.',
  ),
  note(
    'content/site.md',
    '---\ntitle: T\ntagline: t\npublisher: p\n---\n\n<iframe src="https://example.org"></iframe>\n',
    `7:1  "<iframe src=\\"https://example.org\\"></iframe>" is HTML, which a note does not take. ${HTML}`,
  ),
  note(
    'data/sessions/a.md',
    '---\nbody: vennick\nrig: balcony\nmethod: two-timers\ndate: 2026-04-11\nsettings: { rate: 24 }\n---\n\n<style>p { color: red }</style>\n',
    `9:1  "<style>p { color: red }</style>" is HTML, which a note does not take. ${HTML}`,
  ),
];
