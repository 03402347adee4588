/** The server part of the page on which readings are taken: a request → what is answered. Knows no HTTP server. */
import { ProblemsError } from '../model/problem.ts';
import { fileSystemProblem } from '../commands/file-system-faults.ts';
import { adviceOn, giveUpAdvice } from './advice.ts';
import { addReading, editReading, fillIn, type Cells } from './changes.ts';
import { refusalOf, type Asked } from './guard.ts';
import { beginSession } from './new-session.ts';
import { changeSession, readState, Refused, type Change, type Outcome } from './session-files.ts';
import { listSessions, stampExample } from './session-list.ts';
import type { SessionState, SessionTexts } from './session-state.ts';
import { UndoSteps } from './undo.ts';

export interface Answer {
  readonly status: number;
  readonly type: 'application/json' | 'text/html';
  readonly body: string;
}

export interface Server {
  answer(asked: Asked): Promise<Answer>;
}

/** @param page the page itself, which holds the token and is handed to nobody else */
export function readingsServer(root: string, token: string, page: string): Server {
  const steps = new UndoSteps();
  const examples = new Map<string, string>();

  /** With what the files alone do not say: what can be undone, and how a timer writes that was not read yet. */
  const complete = async (outcome: Outcome): Promise<Answer> => {
    if (outcome.kind === 'refused') return json(422, outcome);
    const { state } = outcome;
    const undo = steps.last(state.id, state.digest);
    return json(outcome.kind === 'conflict' ? 409 : 200, {
      ...outcome,
      state: { ...state, ...(await exampleOf(state)), ...(undo === undefined ? {} : { undo }) },
    });
  };
  const exampleOf = async (state: SessionState): Promise<Pick<SessionState, 'example'>> => {
    if (state.method !== 'two-timers') return {};
    const own = state.readings.findLast(({ cells }) => (cells['source'] ?? '') !== '')?.cells['source'];
    if (own !== undefined) return { example: own };
    const timer = state.rig ?? '';
    const known = examples.get(timer) ?? (await stampExample(root, state.rig));
    examples.set(timer, known);
    return { example: known };
  };
  const change = async (
    id: string,
    base: string,
    what: string,
    make: (texts: SessionTexts, state: SessionState) => Change,
  ): Promise<Answer> => {
    let before: SessionTexts | undefined;
    const outcome = await changeSession(root, id, base, (texts, state) => {
      before = texts;
      return make(texts, state);
    });
    if (outcome.kind === 'done' && before !== undefined) steps.add(id, before, outcome.state.digest, what);
    return complete(outcome);
  };

  const reads: Readonly<Record<string, (asked: Asked) => Promise<Answer>>> = {
    '/': async () => ({ status: 200, type: 'text/html', body: page }),
    '/sessions': async () => json(200, await listSessions(root)),
    '/session': async ({ query }) => complete(await readState(root, query.get('id') ?? '')),
    '/advice': async ({ query }) => json(200, { says: await adviceOn(root, query.get('id') ?? '') }),
  };
  const writes: Readonly<Record<string, (given: Given) => Promise<Answer>>> = {
    '/add': (given) => {
      const run = given.number('run');
      return change(given.text('id'), given.text('base'), 'the last reading', addReading(run, given.cells()));
    },
    '/edit': (given) =>
      change(given.text('id'), given.text('base'), 'the last change', editReading(given.number('line'), given.cells())),
    '/fill-in': (given) =>
      change(
        given.text('id'),
        given.text('base'),
        'what was filled in',
        fillIn({
          date: given.text('date'),
          firmware: given.text('firmware'),
          room: given.text('room'),
          warmUp: given.text('warmUp'),
        }),
      ),
    '/undo': async (given) => {
      const [id, base] = [given.text('id'), given.text('base')];
      const outcome = await changeSession(root, id, base, (texts) => {
        const back = steps.takeBack(id, texts.digest);
        if (back === undefined)
          throw new Refused('There is nothing to undo: the files were changed elsewhere since, or not from here.');
        return back;
      });
      if (outcome.kind === 'done') steps.forgetLast(id);
      return complete(outcome);
    },
    '/begin': async (given) => {
      const begun = await beginSession(root, {
        body: given.text('body'),
        rig: given.text('rig'),
        settings: given.cells('settings'),
      });
      return 'id' in begun ? json(200, begun) : json(422, { kind: 'refused', says: [begun.refused] });
    },
  };

  return {
    async answer(asked) {
      const refusal = refusalOf(asked, token);
      if (refusal !== undefined) return json(403, { kind: 'refused', says: [refusal] });
      const write = asked.method === 'POST' && Object.hasOwn(writes, asked.path) ? writes[asked.path] : undefined;
      const read = asked.method === 'GET' && Object.hasOwn(reads, asked.path) ? reads[asked.path] : undefined;
      try {
        if (write !== undefined) {
          giveUpAdvice();
          return await write(new Given(asked.body));
        }
        return read === undefined
          ? json(404, { kind: 'refused', says: ['There is nothing here.'] })
          : await read(asked);
      } catch (error) {
        const says = sayFault(error);
        if (says === undefined) throw error;
        return json(error instanceof Refused ? 400 : 503, { kind: 'refused', says: [says] });
      }
    },
  };
}

/** What an author can mend; undefined for faults of ours. */
function sayFault(error: unknown): string | undefined {
  if (error instanceof Refused || error instanceof ProblemsError) return error.message;
  return fileSystemProblem(error, 'data')?.message;
}

function json(status: number, body: unknown): Answer {
  return { status, type: 'application/json', body: JSON.stringify(body) };
}

/** The body of a request that writes, asked for by name; what is missing or of another type is refused. */
class Given {
  readonly #body: Readonly<Record<string, unknown>>;

  constructor(text: string) {
    this.#body = asObject(parse(text), 'The request');
  }

  text(name: string): string {
    const value = this.#body[name];
    if (typeof value !== 'string') throw new Refused(`The request needs “${name}” as text.`);
    return value;
  }

  number(name: string): number {
    const value = this.#body[name];
    if (!Number.isSafeInteger(value) || Number(value) < 1)
      throw new Refused(`The request needs “${name}” as a whole number from 1.`);
    return Number(value);
  }

  cells(name = 'cells'): Cells {
    const entries = Object.entries(asObject(this.#body[name], `“${name}”`));
    if (entries.some(([, value]) => typeof value !== 'string')) throw new Refused(`“${name}” holds text only.`);
    return Object.fromEntries(entries) as Cells;
  }
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Refused('The request is no JSON.');
  }
}

function asObject(value: unknown, what: string): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) throw new Refused(`${what} is no object.`);
  return value as Readonly<Record<string, unknown>>;
}
