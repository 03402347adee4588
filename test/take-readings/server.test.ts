/** The server part on files on disk: what it says of them, what it writes, and what it does not. */
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { renderNewSession } from '../../src/planning/render-session.ts';
import type { DescribedPair } from '../../src/ingest/render-display-pair.ts';
import { rate } from '../../src/model/rate.ts';
import { renderPlannedPair } from '../../src/planning/render-pair.ts';
import { compileRegister } from '../../src/site/compile.ts';
import { TOKEN_HEADER } from '../../src/take-readings/guard.ts';
import { readingsServer, type Server } from '../../src/take-readings/handle.ts';
import type { SessionState } from '../../src/take-readings/session-state.ts';
import { writeBenchFolder, type BenchFolder } from '../support/bench-folder.ts';
import { TWO_DISPLAYS } from '../support/two-displays.ts';

const TOKEN = 'a-token';
const HEADER = 'run,source,shown,exclude,note\n';
const CONDITION = {
  settings: { rate: '24', 'bit-depth': '10', chroma: '4:2:2', 'audio-out': 'on' },
  rate: rate(24),
};
const planned = (id: string, position: number) => {
  const { front, readings } = renderNewSession({
    id,
    body: 'vennick',
    rig: 'balcony',
    method: 'two-timers',
    condition: CONDITION,
    plan: { runs: 3, readings: 2, spacingMs: 2400 },
    position,
    of: 2,
  });
  return { [`data/sessions/${id}.md`]: front, [`data/sessions/${id}.csv`]: readings };
};

let folder: BenchFolder;
let server: Server;

beforeEach(() => {
  folder = writeBenchFolder({ ...planned('z-first', 1), ...planned('b-second', 2) });
  server = readingsServer(folder.root, TOKEN, '<p>page</p>');
});
afterEach(() => folder[Symbol.dispose]());

interface Got {
  readonly status: number;
  readonly kind?: string;
  readonly says?: readonly string[];
  readonly state: SessionState;
}

async function ask(
  method: string,
  path: string,
  query: Record<string, string> = {},
  body: unknown = {},
  by = server,
): Promise<Got> {
  const { status, body: text } = await by.answer({
    method,
    path,
    query: new URLSearchParams(query),
    from: '127.0.0.1',
    body: typeof body === 'string' ? body : JSON.stringify(body),
    headers: {
      host: 'localhost:4321',
      origin: 'http://localhost:4321',
      'content-type': 'application/json',
      [TOKEN_HEADER]: TOKEN,
    },
  });
  return { status, ...(JSON.parse(text) as Omit<Got, 'status'>) };
}

const read = (id: string) => ask('GET', '/session', { id });
const post = (path: string, body: unknown, by = server) => ask('POST', path, {}, body, by);
const csv = (id: string): string => readFileSync(join(folder.root, `data/sessions/${id}.csv`), 'utf8');
const front = (id: string): string => readFileSync(join(folder.root, `data/sessions/${id}.md`), 'utf8');
const write = (path: string, text: string): void => writeFileSync(join(folder.root, path), text);
const add = (id: string, base: string, run: number, source: string, shown: string, more = {}, by = server) =>
  post('/add', { id, base, run, cells: { source, shown, ...more } }, by);

/** Types readings one after the other, each based on what the one before has left. */
async function type(
  id: string,
  rows: readonly (readonly [run: number, source: string, shown: string])[],
): Promise<SessionState> {
  let { state } = await read(id);
  for (const [run, source, shown] of rows) {
    const got = await add(id, state.digest, run, source, shown);
    expect(got.says ?? []).toEqual([]);
    state = got.state;
  }
  return state;
}

const fillIn = async (id: string) => {
  const { state } = await read(id);
  return post('/fill-in', { id, base: state.digest, date: '2026-05-02', firmware: '1.40', room: '21 °C', warmUp: '' });
};

describe('a planned session', () => {
  it('comes before those that are measured, in its drawn order', async () => {
    const { sessions } = (await ask('GET', '/sessions')) as unknown as { sessions: readonly { id: string }[] };
    expect(sessions.map(({ id }) => id)).toEqual(['z-first', 'b-second', 'a']);
  });

  it('reads back what was set, and what was planned', async () => {
    const { state } = await read('z-first');
    expect(state.settings).toEqual([
      { term: 'Body', says: 'Vennick Q4' },
      { term: 'Frame rate', says: '24' },
      { term: 'Bit depth', says: '10' },
      { term: 'Chroma subsampling', says: '4:2:2' },
      { term: 'Audio embedding', says: 'On' },
    ]);
    expect(state).toMatchObject({ position: { position: 1, of: 2 }, plan: { runs: 3, readings: 2, spacingMs: 2400 } });
    expect(state.date).toBeUndefined();
    // as the timer of this rig was written in the session that there is
    expect(state.example).toBe('00:12.044');
  });

  it('takes no reading before its date is known', async () => {
    const { state } = await read('z-first');
    expect(await add('z-first', state.digest, 1, '00:12.217', '00:11.900')).toMatchObject({
      status: 422,
      kind: 'refused',
    });
    expect(csv('z-first')).toBe(HEADER);
  });

  it('is planned no longer with its first reading, and keeps what else stands in its file', async () => {
    expect((await fillIn('z-first')).status).toBe(200);
    expect(front('z-first')).toContain('planned: true\n');
    expect(front('z-first')).toContain('date: 2026-05-02\nfirmware: "1.40"\nroom: 21 °C\nsettings:\n');
    await folder.read();
    const state = await type('z-first', [[1, '00:12.217', '00:11.900']]);
    expect(front('z-first')).not.toContain('planned');
    expect(front('z-first')).toContain('# Session 1 of 2,');
    expect(csv('z-first')).toBe(`${HEADER}1,00:12.217,00:11.900,,\n`);
    // 12.217 − 11.900 = 0.317 s
    expect(state.readings).toMatchObject([{ line: 2, run: 1, latency: '317 ms', remarks: [] }]);
    expect((await folder.read()).sessions.map(({ id }) => id)).toContain('z-first');
  });

  it('says what of its plan is still to be done', async () => {
    await fillIn('z-first');
    expect((await type('z-first', [[1, '00:12.217', '00:11.900']])).progress).toMatch(/In this clip 1 reading more\.$/);
    expect((await type('z-first', [[1, '00:14.900', '00:14.600']])).progress).toMatch(/2 clips more\.$/);
    const state = await type('z-first', [
      [2, '00:02.217', '00:01.900'],
      [2, '00:04.900', '00:04.600'],
      [3, '00:06.217', '00:05.900'],
      [3, '00:09.900', '00:09.600'],
    ]);
    expect(state.progress).toMatch(/^6 readings in 3 clips: all that was planned/);
  });
});

describe('a reading', () => {
  it('changes the total as a build computes it', async () => {
    const state = await type('a', [
      [2, '00:14.100', '00:13.800'],
      [3, '00:02.200', '00:01.890'],
    ]);
    const figures = compileRegister(await folder.read()).figures;
    expect(state.total?.text).toBe(figures.find(({ id }) => id === 'total/a')?.text);
    expect(state.total?.text).toMatch(/ms$/);
    expect(state.agreement).not.toBe('');
  });

  it.each([
    ['shown later than the source', '00:35.100', '00:35.400', /later than the source/],
    ['earlier than the one before', '00:30.100', '00:29.800', /earlier than the reading before it/],
    ['read twice', '00:33.905', '00:33.590', /was read in this run already, in line 3/],
    ['of fewer decimals', '00:35.10', '00:34.80', /decimals|digits/],
    ['that is no time', '00:3x.100', '00:34.800', /time/],
    ['longer than any chain takes', '00:55.100', '00:34.800', /longer than any chain takes/],
  ])('%s is refused, and nothing is written', async (_what, source, shown, words) => {
    const before = csv('a');
    const { state } = await read('a');
    const got = await add('a', state.digest, 1, source, shown);
    expect(got).toMatchObject({ status: 422, kind: 'refused' });
    expect(got.says?.join(' ')).toMatch(words);
    expect(csv('a')).toBe(before);
  });

  it('that cannot be read is kept with its reason', async () => {
    const { state } = await read('a');
    const got = await add('a', state.digest, 1, '', '', { exclude: 'digits overlap' });
    expect(got.state.readings.find(({ line }) => line === 4)).toMatchObject({ excluded: 'digits overlap', run: 1 });
    expect(csv('a')).toContain('1,00:33.905,00:33.590,,\n1,,,digits overlap,\n2,');
    await folder.read();
  });

  it('far from the one before it is named at once, with the digit that would suit', async () => {
    const state = await type('a', [[1, '00:36.482', '00:35.181']]);
    // one digit: 36.181 gives 301 ms, as the first reading has
    expect(state.readings.at(2)).toMatchObject({ line: 4, latency: '1301 ms' });
    expect(state.readings.at(2)?.remarks.join(' ')).toMatch(
      /from (?:the middle of its clip|the reading before it)|misread/,
    );
    expect(state.readings.at(2)?.suits.join(' ')).toMatch(/shown 00:36\.181/);
  });

  it('is changed, excluded with a reason, and counted again', async () => {
    let { state } = await read('a');
    const edit = async (cells: Record<string, string>) => {
      const got = await post('/edit', { id: 'a', base: state.digest, line: 3, cells });
      state = got.state ?? state;
      return got;
    };
    await edit({ shown: '00:33.580' });
    expect(csv('a')).toContain('\n1,00:33.905,00:33.580,,\n');
    expect(await edit({ exclude: 'x' })).toMatchObject({ status: 422 });
    await edit({ exclude: 'glare on the display' });
    expect(csv('a')).toContain('\n1,00:33.905,00:33.580,glare on the display,\n');
    await edit({ exclude: '' });
    expect(csv('a')).toContain('\n1,00:33.905,00:33.580,,\n');
    expect(await post('/edit', { id: 'a', base: state.digest, line: 9, cells: {} })).toMatchObject({ status: 422 });
  });

  it('is undone, step by step, with all that came with it', async () => {
    const before = [front('z-first'), csv('z-first')];
    await fillIn('z-first');
    let state = await type('z-first', [
      [1, '00:12.217', '00:11.900'],
      [1, '00:15.217', '00:14.900'],
    ]);
    for (const left of [1, 0, 0]) {
      expect(state.undo).toBeDefined();
      const got = await post('/undo', { id: 'z-first', base: state.digest });
      state = got.state;
      expect(state.readings).toHaveLength(left);
    }
    expect([front('z-first'), csv('z-first')]).toEqual(before);
    expect(state.undo).toBeUndefined();
    expect(await post('/undo', { id: 'z-first', base: state.digest })).toMatchObject({ status: 422 });
  });
});

describe('nothing is lost', () => {
  it('where two pages type into one session: the second is told, and types again', async () => {
    const other = readingsServer(folder.root, TOKEN, '');
    const { state } = await read('a');
    const [first, second] = await Promise.all([
      add('a', state.digest, 2, '00:14.100', '00:13.800'),
      add('a', state.digest, 2, '00:16.100', '00:15.800', {}, other),
    ]);
    const [won, lost] = first.status === 200 ? [first, second] : [second, first];
    expect([won.status, lost.status]).toEqual([200, 409]);
    expect(lost.state.digest).toBe(won.state.digest);
    expect(csv('a').trim().split('\n')).toHaveLength(5);
    const [source, shown] = lost === second ? ['00:16.100', '00:15.800'] : ['00:14.100', '00:13.800'];
    const again = await add('a', lost.state.digest, 3, source, shown);
    expect(again.status).toBe(200);
    for (const stamp of ['00:14.100', '00:16.100']) expect(csv('a')).toContain(stamp);
  });

  it('where an editor changed a file in between, the readings or what was measured', async () => {
    for (const [path, from, to] of [
      ['data/sessions/a.csv', '00:33.590', '00:33.580'],
      ['data/sessions/a.md', 'A quiet morning', 'A loud morning'],
    ] as const) {
      const { state } = await read('a');
      write(path, readFileSync(join(folder.root, path), 'utf8').replace(from, to));
      const before = csv('a');
      expect(await add('a', state.digest, 2, '00:14.100', '00:13.800')).toMatchObject({
        status: 409,
        kind: 'conflict',
      });
      expect(csv('a')).toBe(before);
    }
  });

  it('an undo takes back nothing that was written elsewhere since', async () => {
    await type('a', [[2, '00:14.100', '00:13.800']]);
    write('data/sessions/a.csv', `${csv('a')}3,00:01.500,00:01.200,,\n`);
    const { state } = await read('a');
    expect(state.undo).toBeUndefined();
    expect(await post('/undo', { id: 'a', base: state.digest })).toMatchObject({ status: 422 });
    expect(csv('a')).toContain('3,00:01.500');
  });

  it('many readings at once from one page, each based on the answer before, all stand in the file', async () => {
    const rows = Array.from({ length: 12 }, (_, index) => [3, `00:${20 + index}.500`, `00:${20 + index}.200`] as const);
    await type('a', rows);
    for (const [, source] of rows) expect(csv('a')).toContain(source);
  });
});

describe('it writes nowhere but in the files of a session', () => {
  it.each(['../rigs/balcony', 'a/../a', '/etc/hosts', 'A', 'nothing', '', '..', 'a.csv', '__proto__'])(
    'not for %j',
    async (id) => {
      const before = readdirSync(folder.root, { recursive: true, encoding: 'utf8' });
      for (const path of ['/add', '/edit', '/undo', '/fill-in']) {
        const body = {
          id,
          base: '',
          run: 1,
          line: 2,
          cells: {},
          date: '2026-05-02',
          firmware: '',
          room: '',
          warmUp: '',
        };
        expect(await post(path, body)).toMatchObject({ kind: 'refused' });
      }
      const after = readdirSync(folder.root, { recursive: true, encoding: 'utf8' });
      expect(after.filter((name) => !name.startsWith('.writing'))).toEqual(before);
    },
  );

  it('not through a link that leads out of data', async () => {
    const outside = join(folder.root, 'outside.csv');
    writeFileSync(outside, HEADER);
    write('data/sessions/linked.md', front('a'));
    symlinkSync(outside, join(folder.root, 'data/sessions/linked.csv'));
    expect(await add('linked', '', 1, '00:14.100', '00:13.800')).toMatchObject({ kind: 'refused' });
    expect(readFileSync(outside, 'utf8')).toBe(HEADER);
  });

  it.each([
    ['no JSON', '{'],
    ['no object', '[]'],
    ['no text', '{"id":7}'],
    ['cells that hold more than text', '{"id":"a","base":"","run":1,"cells":{"source":7}}'],
    ['a run that is none', '{"id":"a","base":"","run":0,"cells":{}}'],
  ])('not for %s', async (_what, body) =>
    expect(await post('/add', body)).toMatchObject({ status: 400, kind: 'refused' }),
  );

  it('not a cell of several lines, nor one that steers', async () => {
    const { state } = await read('a');
    for (const note of ['two\nlines', 'a\u001b[2Jb', 'x'.repeat(400)])
      expect(await add('a', state.digest, 2, '00:14.100', '00:13.800', { note })).toMatchObject({ status: 422 });
  });

  it('not for an address it does not know, nor one that every object has', async () => {
    for (const path of ['/delete', '/constructor', '/__proto__'])
      expect(await post(path, {})).toMatchObject({ status: 404 });
  });
});

describe('where files are faulty', () => {
  it('it says what is wrong with the session, and changes nothing', async () => {
    write('data/sessions/a.md', front('a').replace('rig: balcony', 'rig: balcny'));
    expect((await read('a')).says?.join(' ')).toContain('Did you mean balcony?');
    expect(await add('a', '', 2, '00:14.100', '00:13.800')).toMatchObject({ kind: 'refused' });
  });

  it('mistakes of other sessions keep nobody from typing', async () => {
    write('data/sessions/broken.md', 'no front matter');
    write('data/sessions/broken.csv', 'nothing');
    const { state } = await read('a');
    expect((await add('a', state.digest, 2, '00:14.100', '00:13.800')).status).toBe(200);
    const { unreadable } = (await ask('GET', '/sessions')) as unknown as { unreadable: readonly string[] };
    expect(unreadable).toEqual(['broken']);
  });
});

describe('a new session', () => {
  it('is begun by its settings, as npm run plan writes it', async () => {
    const begun = await post('/begin', { body: 'vennick', rig: 'balcony', settings: CONDITION.settings });
    const { id } = begun as unknown as { id: string };
    expect((await folder.read()).planned.map((one) => one.id)).toContain(id);
    expect((await read(id)).state.plan).toMatchObject({ runs: 4, readings: 8 });
  });

  it.each([
    ['a body that there is not', { body: 'nobody', rig: 'balcony', settings: { rate: '24' } }],
    ['a rig that there is not', { body: 'vennick', rig: 'cellar', settings: { rate: '24' } }],
    ['a level that there is not', { body: 'vennick', rig: 'balcony', settings: { rate: '25' } }],
    ['a setting that there is not', { body: 'vennick', rig: 'balcony', settings: { rate: '24', mood: 'good' } }],
    ['no frame rate', { body: 'vennick', rig: 'balcony', settings: {} }],
  ])('not with %s', async (_what, wish) => {
    mkdirSync(join(folder.root, '.writing'), { recursive: true });
    const before = readdirSync(join(folder.root, 'data/sessions'));
    expect(await post('/begin', wish)).toMatchObject({ status: 422, kind: 'refused' });
    expect(readdirSync(join(folder.root, 'data/sessions'))).toEqual(before);
  });
});

it('says what the next reading buys', async () => {
  const { says } = await ask('GET', '/advice', { id: 'a' });
  expect(says).toMatch(
    /^(?:A new clip buys more|Readings of this clip buy more|Both buy alike|Neither buys much now)\. By simulation/,
  );
}, 60_000);

describe('two displays that are read against each other', () => {
  const ID = 'display-pairs/wall-beside-screen';
  const PAIR: DescribedPair = {
    method: 'side-by-side',
    display: 'wall',
    against: 'screen',
    sourceTimer: { name: 'Laptop', refresh: rate(60) },
    outputs: { standardUncertaintyMs: 0 },
    observer: { name: 'Pocket camera', rate: rate(240) },
  };
  let pairs: BenchFolder;
  let by: Server;
  beforeEach(() => {
    const { front: md, readings } = renderPlannedPair(PAIR, { runs: 2, readings: 3, spacingMs: 1300 });
    pairs = writeBenchFolder({ ...TWO_DISPLAYS, [`data/${ID}.md`]: md, [`data/${ID}.csv`]: readings });
    by = readingsServer(pairs.root, TOKEN, '');
  });
  afterEach(() => pairs[Symbol.dispose]());
  const open = () => ask('GET', '/session', { id: ID }, {}, by);
  const begin = async (): Promise<string> => {
    const { state } = await open();
    const body = { id: ID, base: state.digest, date: '2026-05-02', firmware: '', room: '21 °C', warmUp: '' };
    return (await post('/fill-in', body, by)).state.digest;
  };

  it('are listed with the sessions, planned ones before what is measured', async () => {
    const { sessions } = (await ask('GET', '/sessions', {}, {}, by)) as unknown as {
      sessions: readonly { id: string; title: string; planned: boolean }[];
    };
    expect(sessions.map(({ id, title, planned: isPlanned }) => [id, title, isPlanned])).toEqual([
      [ID, 'Wall against Stage screen', true],
      ['a', expect.stringContaining('Vennick Q4'), false],
    ]);
  });

  it('are said by name, and nothing is asked that a comparison has not', async () => {
    const { state } = await open();
    expect(state).toMatchObject({
      names: { source: 'Stage screen', shown: 'Wall', latency: 'Later by' },
      signed: true,
      asks: ['room'],
      plan: { runs: 2, readings: 3 },
      example: '00:00.000',
    });
    expect(state.settings).toContainEqual({ term: 'Picture', says: 'Laptop, 60 Hz' });
  });

  it('are written as typed, either of them later, with the figure that a build gives', async () => {
    let base = await begin();
    for (const [run, source, shown] of [
      [1, '00:31.482', '00:31.465'],
      [1, '00:33.149', '00:33.165'],
      [1, '00:35.815', '00:35.815'],
      [2, '00:04.482', '00:04.465'],
    ] as const) {
      const got = await add(ID, base, run, source, shown, {}, by);
      expect(got.says ?? []).toEqual([]);
      base = got.state.digest;
    }
    const { state } = await open();
    // 33.149 − 33.165 s
    expect(state.readings.map(({ latency }) => latency)).toEqual(['17 ms', '\u221216 ms', '0 ms', '17 ms']);
    expect(state.progress).toContain('In this clip 2 readings more');
    const bench = await pairs.read();
    expect(bench.displayPairs.map(({ id, date, room }) => [id, date, room])).toEqual([
      ['wall-beside-screen', '2026-05-02', '21 °C'],
    ]);
    const { figures } = compileRegister(bench);
    const built = figures.find(({ id }) => id === 'display-difference/wall-beside-screen');
    expect(state.total?.text).toBe(built?.text);
    expect(readFileSync(join(pairs.root, `data/${ID}.md`), 'utf8')).not.toContain('planned');
    expect(await post('/undo', { id: ID, base }, by)).toMatchObject({ status: 200 });
    expect(readFileSync(join(pairs.root, `data/${ID}.csv`), 'utf8')).not.toContain('00:04.482');
  });

  it('refuse what no comparison can have, and write nothing', async () => {
    const base = await begin();
    const { status, says } = await post(
      '/fill-in',
      { id: ID, base, date: '', firmware: '1.0', room: '', warmUp: '' },
      by,
    );
    expect([status, says?.join()]).toEqual([422, expect.stringContaining('firmware')]);
    expect((await ask('GET', '/session', { id: 'display-pairs/none' }, {}, by)).status).toBe(422);
  });
});
