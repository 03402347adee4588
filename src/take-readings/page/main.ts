/** The page on which readings are taken: session, clip, keys, and what the server part says after each reading. */
import type { ReadingState, SessionState } from '../session-state.ts';
import { api, type Answer } from './api.ts';
import { ClipView } from './clip-view.ts';
import { byId, make, memory } from './dom.ts';
import type { Placed } from './foretell.ts';
import { showSessions } from './session-choice.ts';
import { showSession } from './session-view.ts';
import { Typing } from './typing.ts';

/** Chosen with one key; another can be typed. Common practice, no source. */
const REASONS = [
  'digits overlap',
  'blurred',
  'glare or reflection',
  'display between two frames',
  'digits out of the picture',
];
/** Without a plan. */
const READINGS = 8;
/** Advice takes the server a moment: only when the typing pauses. */
const PAUSE_MS = 1500;

interface PlacedOnFile {
  readonly file: string;
  readonly readings: readonly Placed[];
}

const typing = new Typing();
const clip = new ClipView(() => placeTyping());
const reason = byId('reason', HTMLSelectElement);
const own = byId('own-reason', HTMLInputElement);
const news = byId('news', HTMLElement);
const alarm = byId('alarm', HTMLElement);
let state: SessionState | undefined;
let run = 1;
let editing: ReadingState | undefined;
let isBusy = false;
let advising: ReturnType<typeof setTimeout> | undefined;

reason.append(...REASONS.map((text) => make('option', {}, text)), make('option', { value: '' }, 'another …'));
reason.addEventListener('change', () => {
  own.hidden = reason.value !== '';
});

/** What was read of the open clip, with the frames on which it was. */
function placed(): readonly Placed[] {
  const known = state && memory.read<PlacedOnFile>(state.id, `placed ${run}`);
  return known?.file === clip.name && known !== undefined ? known.readings : [];
}

function placeTyping(): void {
  if (state !== undefined) typing.place(clip.here, placed());
}

async function choose(id: string): Promise<void> {
  const answer = await api.session(id);
  if (answer.kind === 'refused') return complain(answer.says);
  run = Math.max(1, answer.state.clips.at(-1)?.run ?? 1);
  history.replaceState(undefined, '', `#${id}`);
  byId('choosing', HTMLElement).hidden = true;
  byId('session', HTMLElement).hidden = false;
  clip.enter(id);
  adopt(answer.state);
  complain([]);
  tell(`Session ${id}. Check what is set on the body.`);
  if (answer.state.date === undefined) {
    byId('date', HTMLInputElement).value = today();
    byId('date', HTMLInputElement).focus();
  } else {
    if (typing.first.text === '' && typing.second.text === '') typing.next();
    typing.first.focus();
  }
}

/** The state as the files have it now. */
function adopt(found: SessionState): void {
  // as was said here, until a reading says it
  const format = found.readings.length === 0 ? memory.read<string>(found.id, 'format') : undefined;
  const next = format === undefined ? found : { ...found, example: format };
  state = next;
  showSession(next, acts);
  typing.enter(next, run);
  showPlace();
  placeTyping();
  byId('undo', HTMLButtonElement).disabled = next.undo === undefined;
  byId('format', HTMLInputElement).value = next.example ?? '';
  byId('format-part', HTMLElement).hidden = next.example === undefined;
  clearTimeout(advising);
  advising = setTimeout(() => void advise(next.id), PAUSE_MS);
}

async function advise(id: string): Promise<void> {
  const { says = '' } = await api.advice(id).catch(() => ({ says: '' }));
  if (state?.id === id) byId('advice', HTMLElement).textContent = says;
}

function showPlace(): void {
  const count = state?.readings.filter((reading) => reading.run === run).length ?? 0;
  byId('which', HTMLElement).textContent =
    editing === undefined ? `Clip ${run}, reading ${count + 1}` : `Change the reading in line ${editing.line}`;
  byId('run-back', HTMLButtonElement).disabled = run === 1;
  // a clip follows one that has readings
  byId('run-on', HTMLButtonElement).disabled = !(state?.clips.some((one) => one.run === run) ?? false);
  byId('cancel', HTMLElement).hidden = editing === undefined;
}

function toRun(next: number): void {
  const last = state?.clips.at(-1)?.run ?? 0;
  if (next < 1 || next > last + 1) return;
  run = next;
  if (state !== undefined) typing.enter(state, run);
  showPlace();
  placeTyping();
  tell(`Clip ${run}`);
  typing.first.focus();
}

/** Hands a change on, and says what came of it; true where it was written. */
async function change(send: (base: string, id: string) => Promise<Answer>): Promise<boolean> {
  if (state === undefined || isBusy) return false;
  isBusy = true;
  try {
    const answer = await send(state.digest, state.id);
    if (answer.kind === 'refused') complain(['Not saved.', ...answer.says]);
    else {
      adopt(answer.state);
      complain(
        answer.kind === 'conflict'
          ? [
              'The files of this session were changed elsewhere meanwhile. They are read anew; nothing was saved and nothing is lost. Look, and press Enter to save what is typed.',
            ]
          : [],
      );
    }
    return answer.kind === 'done';
  } finally {
    isBusy = false;
  }
}

/** Writes what is typed: as it is, or as one that cannot be read. */
async function save(exclude?: string): Promise<void> {
  if (state === undefined || state.date === undefined) return;
  if (exclude === undefined && typing.toMissing()) return;
  const cells = { ...typing.cells(), ...(exclude === undefined ? {} : { exclude }) };
  const [edited, here, inClip, before] = [editing, clip.here, run, state.readings];
  const isSaved = await change((base, id) =>
    edited === undefined ? api.add({ id, base, run: inClip, cells }) : api.edit({ id, base, line: edited.line, cells }),
  );
  if (!isSaved || state === undefined) return;
  editing = undefined;
  const written =
    edited === undefined ? newReading(state, before, inClip) : state.readings.find(({ line }) => line === edited.line);
  if (
    edited === undefined &&
    exclude === undefined &&
    here !== undefined &&
    clip.name !== undefined &&
    written?.sourceMs !== undefined
  ) {
    const readings = [...placed(), { ...here, sourceMs: written.sourceMs }];
    memory.write(state.id, `placed ${run}`, { file: clip.name, readings } satisfies PlacedOnFile);
  }
  showPlace();
  if (byId('go-on', HTMLInputElement).checked && edited === undefined) clip.moment(1);
  typing.next();
  placeTyping();
  tellSaved(written);
}

function newReading(now: SessionState, before: readonly ReadingState[], inClip: number): ReadingState | undefined {
  return now.readings.length > before.length ? now.readings.findLast((reading) => reading.run === inClip) : undefined;
}

function tellSaved(written: ReadingState | undefined): void {
  const total = state?.total === undefined ? '' : ` So far ${state.total.text}.`;
  const what = written?.excluded === undefined ? (written?.latency ?? '') : `kept, does not count: ${written.excluded}`;
  tell(`Saved: ${what}.${total}`);
  const { remarks = [], suits = [] } = written ?? {};
  complain([...remarks, ...(suits.length === 0 ? [] : [`It would suit as ${suits.join(' or ')}: look again.`])]);
}

async function undo(): Promise<void> {
  const last = state?.readings;
  if (!(await change((base, id) => api.undo({ id, base }))) || state === undefined) return;
  const now = new Set(state.readings.map(({ line, cells }) => `${line} ${JSON.stringify(cells)}`));
  const gone =
    (last?.length ?? 0) > state.readings.length
      ? last?.find(({ line, cells }) => !now.has(`${line} ${JSON.stringify(cells)}`))
      : undefined;
  tell('Undone.');
  // what was typed is there to be mended
  if (gone !== undefined) {
    run = gone.run;
    const known = memory.read<PlacedOnFile>(state.id, `placed ${run}`);
    if (known !== undefined)
      memory.write(state.id, `placed ${run}`, {
        ...known,
        readings: known.readings.filter(({ sourceMs }) => sourceMs !== gone.sourceMs),
      });
    showPlace();
    typing.load(gone.cells);
  }
}

const acts = {
  edit(reading: ReadingState): void {
    editing = reading;
    run = reading.run;
    showPlace();
    typing.load(reading.cells);
    tell(`Change the reading in line ${reading.line}, then press Enter; Escape leaves it.`);
  },
  exclude(reading: ReadingState): void {
    void change((base, id) => api.edit({ id, base, line: reading.line, cells: { exclude: reasonNow() } })).then(
      (done) => {
        if (done) tell(`Excluded: ${reasonNow()}.`);
      },
    );
  },
  count(reading: ReadingState): void {
    void change((base, id) => api.edit({ id, base, line: reading.line, cells: { exclude: '' } })).then((done) => {
      if (done) tell('It counts again.');
    });
  },
};

function reasonNow(): string {
  return reason.value === '' ? own.value.trim() : reason.value;
}

function nextReason(): void {
  reason.selectedIndex = (reason.selectedIndex + 1) % REASONS.length;
  own.hidden = true;
  tell(`Reason: ${reason.value}`);
}

function leaveEditing(): void {
  if (editing === undefined) return;
  editing = undefined;
  showPlace();
  typing.next();
  tell('Left as it was.');
}

function tell(text: string): void {
  news.textContent = text;
}

function complain(says: readonly string[]): void {
  alarm.textContent = says.join(' ');
}

/** The day here, as files write it. */
function today(): string {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((part) => String(part).padStart(2, '0')).join('-');
}

/** A new file is a new clip, unless the one before it has no reading yet. */
async function openClip(file: File): Promise<void> {
  if (state === undefined) return;
  const of = (which: number) => memory.read<PlacedOnFile>(state?.id ?? '', `placed ${which}`)?.file;
  const known = state.clips.find((one) => of(one.run) === file.name)?.run;
  const last = state.clips.at(-1)?.run ?? 0;
  const isNew = known === undefined && of(run) !== undefined;
  if (known !== undefined || isNew) toRun(known ?? last + 1);
  const readings = state.plan?.readings ?? READINGS;
  const seed = [...`${state.id} ${run}`].reduce((hash, char) => (Math.imul(hash, 31) + char.charCodeAt(0)) >>> 0, 7);
  const { observerFrameMs, plan } = state;
  await clip.open(file, readings, seed, (frames, fileMs) => {
    const realMs = observerFrameMs === undefined ? fileMs : frames * observerFrameMs;
    const needMs = plan === undefined ? 0 : (plan.readings - 1) * plan.spacingMs;
    const seconds = (ms: number): string => `${(ms / 1000).toFixed(1)} s`;
    return [
      `${file.name}: ${frames} frames, ${seconds(fileMs)} as it plays${Math.abs(realMs - fileMs) > 0.05 * fileMs ? `, ${seconds(realMs)} as it was filmed at the observer’s rate` : ''}.`,
      needMs > realMs
        ? `The plan spreads ${plan?.readings} readings over ${seconds(needMs)} at least: film longer clips.`
        : '',
    ].join(' ');
  });
  typing.first.focus();
}

const COMMANDS: Readonly<Record<string, () => void>> = {
  '+': () => clip.step(1),
  '-': () => clip.step(-1),
  '*': () => void save(reasonNow()),
  '/': nextReason,
  '.': () => clip.moment(1),
  ',': () => clip.moment(1),
  PageDown: () => clip.moment(1),
  PageUp: () => clip.moment(-1),
  ' ': () => clip.play(),
  u: () => void undo(),
  n: () => toRun((state?.clips.at(-1)?.run ?? 0) + 1),
  Escape: leaveEditing,
};

document.addEventListener('keydown', (event) => {
  if (state === undefined || event.ctrlKey || event.metaKey || event.altKey) {
    if (state !== undefined && (event.ctrlKey || event.metaKey) && event.key === 'z') {
      event.preventDefault();
      void undo();
    }
    return;
  }
  const at = event.target;
  const isStamp = at === typing.first.input || at === typing.second.input;
  if (!isStamp && at instanceof HTMLElement && at.matches('input, select, textarea')) return;
  // a plain number has a point of its own, and a button its space
  if (event.key === '.' && isStamp && !typing.isPair) return;
  if (event.key === ' ' && at instanceof HTMLElement && at.matches('button, summary, a')) return;
  const command = COMMANDS[event.key] ?? (at === byId('frame', HTMLElement) ? ARROWS[event.key] : undefined);
  if (command === undefined) return;
  event.preventDefault();
  command();
});

const ARROWS: Readonly<Record<string, () => void>> = { ArrowRight: () => clip.step(1), ArrowLeft: () => clip.step(-1) };

byId('typing-form', HTMLFormElement).addEventListener('submit', (event) => {
  event.preventDefault();
  void save();
});
byId('details', HTMLFormElement).addEventListener('submit', (event) => {
  event.preventDefault();
  const of = (name: string): string => byId(name, HTMLInputElement).value;
  void change((base, id) =>
    api.fillIn({ id, base, date: of('date'), firmware: of('firmware'), room: of('room'), warmUp: of('warm-up') }),
  ).then((done) => {
    if (!done) return;
    tell('Filled in.');
    typing.next();
  });
});
byId('clip-file', HTMLInputElement).addEventListener('change', ({ target }) => {
  const file = target instanceof HTMLInputElement ? target.files?.[0] : undefined;
  if (file !== undefined) void openClip(file);
});
byId('format', HTMLInputElement).addEventListener('change', ({ target }) => {
  if (!(target instanceof HTMLInputElement) || state === undefined) return;
  if (/^(?:\d+:){0,2}\d+(?:\.\d+)?$/.test(target.value)) {
    memory.write(state.id, 'format', target.value);
    adopt({ ...state, example: target.value });
    typing.next();
  } else complain(['Write a time as the timer shows it, such as 00:00.000.']);
});
byId('cannot', HTMLElement).addEventListener('click', () => void save(reasonNow()));
byId('undo', HTMLElement).addEventListener('click', () => void undo());
byId('cancel', HTMLElement).addEventListener('click', leaveEditing);
byId('run-back', HTMLElement).addEventListener('click', () => toRun(run - 1));
byId('run-on', HTMLElement).addEventListener('click', () => toRun(run + 1));
byId('choose', HTMLElement).addEventListener('click', () => {
  byId('session', HTMLElement).hidden = true;
  byId('choosing', HTMLElement).hidden = false;
  void showSessions((id) => void choose(id));
});
// changed in an editor or on another page meanwhile
window.addEventListener('focus', () => {
  const id = state?.id;
  if (id === undefined || isBusy) return;
  void api.session(id).then((answer) => {
    if (answer.kind === 'refused' || answer.state.id !== state?.id || answer.state.digest === state.digest) return;
    adopt(answer.state);
    tell('The files of this session were changed elsewhere, and are read anew.');
  });
});

void showSessions((id) => void choose(id)).then(() => {
  const asked = decodeURIComponent(location.hash.slice(1));
  if (asked !== '') void choose(asked);
});
