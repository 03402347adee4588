import { mkdirSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Reading, Session } from '../../src/model/bench.ts';
import { readBench } from '../../src/ingest/read-bench.ts';
import { problemsIn, readChanged, VALID_FILES, writeBenchFolder, type Files } from '../support/bench-folder.ts';
import { bytes, edit, readings, rows } from './cases/case.ts';

const CSV = VALID_FILES['data/sessions/a.csv'];
const session = (from: string, to: string): Files => edit('data/sessions/a.md', from, to);

async function onlySession(changes: Files): Promise<Session> {
  const [first, ...others] = (await readChanged(changes)).sessions;
  if (!first || others.length > 0) throw new Error('expected one session');
  return first;
}

async function latencies(changes: Files): Promise<readonly (number | undefined)[]> {
  return (await onlySession(changes)).readings.map(({ latencyMs }) => latencyMs);
}

it.each([
  ['a byte order mark', `\ufeff${CSV}`],
  ['CRLF', CSV.replaceAll('\n', '\r\n')],
  ['CR alone', CSV.replaceAll('\n', '\r')],
  ['trailing blank lines', `${CSV}\n\n\n`],
  ['trailing blank lines in CRLF', `${CSV.replaceAll('\n', '\r\n')}\r\n\r\n`],
  ['no line end after the last row', CSV.trimEnd()],
  ['every cell quoted', CSV.replace(/^(.*),(.*),(.*),,$/gm, '"$1","$2","$3","",""')],
])('readings with %s are read the same', async (_name, content) => {
  const plain = await onlySession({});
  const other = await onlySession(bytes(content));
  expect(other.readings).toEqual(plain.readings);
  expect(other.readings).toHaveLength(3);
});

it('front matter with a byte order mark and CRLF is read the same', async () => {
  const plain = await onlySession({});
  const other = await onlySession({
    'data/sessions/a.md': `\ufeff${VALID_FILES['data/sessions/a.md'].replaceAll('\n', '\r\n')}`,
  });
  expect({ ...other, file: undefined }).toEqual({ ...plain, file: undefined });
});

it('a note of several lines is kept, and the rows after it know their lines', async () => {
  const { readings: read } = await onlySession(
    rows('1,1.300,1.000,,"one\r\ntwo, ""three"""', '1,1.400,1.000,,', '2,1.500,1.000,,'),
  );
  expect(read.map(({ line, note }) => [line, note])).toEqual([
    [2, 'one\r\ntwo, "three"'],
    [4, undefined],
    [5, undefined],
  ]);
});

it('what editors, file managers and version control leave is ignored, and an empty sessions folder is fine', async () => {
  const bench = await readChanged({
    'data/bodies/.DS_Store': '\0',
    'data/bodies/vennick.md~': 'x',
    'data/.git/config': 'x',
    'data/sessions/.gitkeep': '',
    'data/sessions/a.md': null,
    'data/sessions/a.csv': null,
  });
  expect(bench.sessions).toEqual([]);
  expect(bench.bodies).toHaveLength(1);
});

it('links, methods and reports may be missing where nothing needs them', async () => {
  const bench = await readChanged({
    'data/links/air.md': null,
    'data/rigs/balcony.md': VALID_FILES['data/rigs/balcony.md'].replace('links: [air]\n', ''),
    'data/sessions/a.md': null,
    'data/sessions/a.csv': null,
    'data/sessions/.gitkeep': '',
    ...Object.fromEntries(
      Object.keys(VALID_FILES)
        .filter((path) => path.endsWith('.mdx'))
        .map((path) => [path, null]),
    ),
  });
  expect([bench.links, bench.methods, bench.reports]).toEqual([[], [], []]);
});

it('YAML stays text as written: 4:2:2, 1.40, on, a date, a number with zeros', async () => {
  const read = await onlySession({
    ...session('room: 22.5 °C', 'room: 1.50'),
    'data/settings.yaml': `${VALID_FILES['data/settings.yaml']}- { name: iso, label: 0x10, kind: numeric, levels: [1.40, 2] }\n`,
    'data/sessions/a.md': VALID_FILES['data/sessions/a.md']
      .replace('audio-out: on', 'audio-out: on, iso: 1.40')
      .replace('22.5 °C', '2026-04-11'),
  });
  expect(read.settings).toEqual({ rate: '23.976', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'on', iso: '1.40' });
  expect(read.firmware).toBe('1.40');
  expect(read.date).toBe('2026-04-11');
  expect(read.room).toBe('2026-04-11');
});

it('HTML and script in any text come out as the same text', async () => {
  const html = '<script>alert(1)</script> & "quotes" <b>{1}</b>';
  const quoted = JSON.stringify(html);
  const bench = await readChanged({
    ...edit('data/bodies/vennick.md', 'name: Vennick Q4', `name: ${quoted}`),
    'content/site.md': `---\ntitle: ${quoted}\ntagline: ${quoted}\npublisher: ${quoted}\n---\n`,
    'data/sessions/a.md': VALID_FILES['data/sessions/a.md'].replace('22.5 °C', quoted),
    ...rows('1,1.300,1.000,,', `1,1.300,1.000,"${html.replaceAll('"', '""')}","${html.replaceAll('"', '""')}"`),
  });
  const read = bench.sessions[0];
  const texts = [
    bench.bodies[0]?.name,
    bench.site.title,
    bench.site.tagline,
    bench.site.publisher,
    read?.room,
    read?.readings[1]?.excluded,
    read?.readings[1]?.note,
  ];
  expect(texts).toEqual(texts.map(() => html));
});

it('a session may have links and a display of its own', async () => {
  const read = await onlySession({
    ...session('room:', 'links: []\ndisplay: wall\nroom:'),
    'data/displays/wall.md': VALID_FILES['data/displays/screen.md'],
  });
  expect([read.links, read.display]).toEqual([[], 'wall']);
});

it.each<[string, readonly string[], readonly (number | undefined)[]]>([
  ['31.482 − 31.181 is exactly 301', ['1,31.482,31.181,,'], [301]],
  ['1.1 − 1.0 at one decimal is exactly 100', ['1,1.1,1.0,,'], [100]],
  ['minutes and hours carry', ['1,01:00.100,00:59.900,,', '1,1:00:00.100,00:59:59.900,,'], [200, 200]],
  ['no decimals are whole seconds', ['1,00:32,00:31,,'], [1000]],
  ['six decimals are microseconds', ['1,31.482001,31.181000,,'], [301.001]],
  ['equal times are zero', ['1,31.482,31.482,,', '1,33.482,33.382,,'], [0, 100]],
  [
    'excluded readings may have no times, negative ones or a later shown one',
    ['1,1.300,1.000,,', '1,,,gone,', '1,-1.000,1.000,misread,', '1,1.000,1.300,swapped,'],
    [300, undefined, undefined, undefined],
  ],
])('%s', async (_name, lines, expected) => {
  expect(await latencies(rows(...lines))).toEqual(expected);
});

it('a timer that starts again at zero is read across it', async () => {
  expect(
    await latencies({
      ...session('rig: balcony', 'rig: pit'),
      ...rows('1,00:00.181,00:59.982,,', '1,00:30.200,00:30.000,,'),
    }),
  ).toEqual([199, 200]);
});

it('frames count in exact frame intervals of the observer', async () => {
  const changes = {
    ...session('two-timers', 'frame-count'),
    ...edit('data/rigs/balcony.md', 'rate: 120', 'rate: 119.88'),
    ...readings('run,frames,exclude,note', '1,24,,', '1,17.5,,', '1,,dark,', '1,-2,dark,'),
  };
  // 24 × 1001/120000 s = 200.2 ms; 17.5 × 1001/120000 s = 145.979 166… ms
  const read = await onlySession(changes);
  expect(read.readings.map(({ frames }: Reading) => frames)).toEqual([24, 17.5, undefined, undefined]);
  expect(read.readings.map(({ latencyMs }: Reading) => latencyMs)).toEqual([
    200.2,
    17517.5 / 120,
    undefined,
    undefined,
  ]);
  expect(read.resolutionMs).toBeUndefined();
});

it('an instrument gives milliseconds as written', async () => {
  const changes = {
    ...session('two-timers', 'instrument'),
    ...readings('run,latency,exclude,note', '1,301.25,,', '2,0,,'),
  };
  expect(await latencies(changes)).toEqual([301.25, 0]);
});

it.each([
  ['the decimals', 'refresh: 60', '1.30,1.00', 10],
  ['the rig, where it says so', 'refresh: 60, resolution: 1/60 s', '1.300,1.000', 1000 / 60],
])('the resolution comes from %s', async (_name, timer, times, expected) => {
  expect(
    (await onlySession({ ...edit('data/rigs/balcony.md', 'refresh: 60', timer), ...rows(`1,${times},,`) }))
      .resolutionMs,
  ).toBe(expected);
});

it.each(['23.976', '23.98', '24000/1001', '23.976p'])('the rate %s is the level 23.976', async (written) => {
  const read = await onlySession(session('23.98', written));
  expect([read.settings['rate'], read.rate]).toEqual(['23.976', { frames: 24000, seconds: 1001 }]);
});

it('reports are sorted newest first, then by id; everything else by id', async () => {
  const report = (date: string): string => VALID_FILES['content/reports/first.mdx'].replace('2026-04-12', date);
  const bench = await readChanged({
    'content/reports/b.mdx': report('2026-05-01'),
    'content/reports/a.mdx': report('2026-05-01'),
    'content/reports/z.mdx': report('2026-06-01'),
  });
  expect(bench.reports.map(({ id }) => id)).toEqual(['z', 'a', 'b', 'first']);
  expect(bench.methods.map(({ id }) => id)).toEqual(['frame-count', 'instrument', 'two-timers']);
});

it('a symbolic link that stays inside data/ is followed', async () => {
  using folder = writeBenchFolder({ 'data/bodies/dunmere.md': null });
  folder.link('data/bodies/dunmere.md', 'vennick.md');
  expect((await folder.read()).bodies.map(({ id }) => id)).toEqual(['dunmere', 'vennick']);
});

it('folders outside the root are named by their whole path', async () => {
  using folder = writeBenchFolder();
  mkdirSync(join(folder.root, 'site'));
  const bench = await readBench({
    root: join(folder.root, 'site'),
    dataDir: join(folder.root, 'data'),
    contentDir: '../content',
  });
  expect(bench.settingsFile.path).toBe(`${folder.root}/data/settings.yaml`);
});

it('folders with another name are named as they are', async () => {
  using folder = writeBenchFolder();
  renameSync(join(folder.root, 'data'), join(folder.root, 'bench'));
  expect(await problemsIn(folder)).toBe(
    '1 problem in 1 file:\n\ndata  this folder is missing. Create it, or check that the build was pointed at the right place.',
  );
  const bench = await readBench({ root: folder.root, dataDir: 'bench', contentDir: 'content' });
  expect(bench.sessions[0]?.file.path).toBe('bench/sessions/a.md');
});

it('a planned session needs neither readings nor a date yet, and is no session', async () => {
  const header = CSV.slice(0, CSV.indexOf('\n') + 1);
  const plannedFront = VALID_FILES['data/sessions/a.md']
    .replace(/^date: .*\n/m, '')
    .replace(/^---\n/, '---\nplanned: true\n');
  const bench = await readChanged({ 'data/sessions/a.md': plannedFront, 'data/sessions/a.csv': header });
  expect(bench.sessions).toEqual([]);
  expect(bench.planned.map(({ id, body }) => [id, body])).toEqual([['a', 'vennick']]);
});

it('a planned session that has readings is a session, and then needs its date', async () => {
  const front = VALID_FILES['data/sessions/a.md'].replace(/^---\n/, '---\nplanned: true\n');
  expect((await readChanged({ 'data/sessions/a.md': front })).sessions).toHaveLength(1);
  await expect(readChanged({ 'data/sessions/a.md': front.replace(/^date: .*\n/m, '') })).rejects.toThrow(
    'data/sessions/a.md:1  date  this key is missing. Add it.',
  );
});

it('what a publication is found and cited by is read in its own spelling', async () => {
  const keys =
    'licence: cc-by-4.0\naddress: HTTPS://Example.org/bench\nlanguage: EN-gb\nidentifier: https://doi.org/10.1234/abc';
  const { site } = await readChanged(edit('content/site.md', 'publisher: Nobody', `publisher: Nobody\n${keys}`));
  expect(site).toMatchObject({
    licence: 'CC-BY-4.0',
    address: 'https://example.org/bench/',
    language: 'en-GB',
    identifier: '10.1234/abc',
  });
});
