/** The script of the page that recomputes: the only one of the site. It asks nobody but the site itself. */
import './buffer.ts';
import { describeCoverageLevel, plural } from '../../register/provenance.ts';
import { assumptionsOf } from '../assumptions.ts';
import { familiesOf, type Question } from '../answer.ts';
import { describeChange, type Change } from '../changes.ts';
import { compareFigures } from '../compare-figures.ts';
import { describeComparison } from '../describe-comparison.ts';
import type { CheckedFile } from '../gather.ts';
import type { PageFacts } from '../page-facts.ts';
import type { Figure } from '../../register/register.ts';
import { assumptionInputs } from './assumption-inputs.ts';
import { Desk, PUBLISHED_LEVEL, withChange } from './desk.ts';
import { element, found } from '../../scripts/dom.ts';
import { loadedFacts } from '../../scripts/facts.ts';
import { figureTable } from './figure-table.ts';
import { keepForLater } from './keep.ts';
import { chosenFiles, fetchedFiles } from './raw-files.ts';
import { readingInputs } from './reading-inputs.ts';

const WHOLE = '*';
const ROOT = new URL('../', document.baseURI);
const facts = loadedFacts<PageFacts>();
const isSaved = location.protocol === 'file:';

/** What the reader asked last; an answer to anything else is out of date. */
let asked = 0;
let desk = new Desk(facts, fetchedFiles(ROOT));

interface Work {
  readonly question: Question;
  readonly files: readonly CheckedFile[];
  readonly published: readonly Figure[];
  readonly recomputed: readonly Figure[];
  changes: ReadonlyMap<string, Change>;
  level: number;
}

function start(): void {
  found('without-script').hidden = true;
  found('ask').hidden = false;
  const [session, than] = [select('session'), select('than')];
  for (const { id, title } of facts.sessions) {
    session.append(element('option', { value: id }, `${title} (${id})`));
    than.append(element('option', { value: id }, `${title} (${id})`));
  }
  const query = new URLSearchParams(location.search);
  const whole = query.has('figure') || query.has('all');
  session.value = whole ? WHOLE : (query.get('session') ?? '');
  than.value = query.get('than') ?? '';
  for (const one of [session, than]) one.addEventListener('change', () => void run());
  if (isSaved) offerFolder();
  else void run();
}

function select(id: string): HTMLSelectElement {
  return found(id) as HTMLSelectElement;
}

/** Pages that were opened from a disk may ask for nothing: the reader hands the folder over. */
function offerFolder(): void {
  found('folder').hidden = false;
  const input = element('input', {
    type: 'file',
    webkitdirectory: true,
    id: 'site-folder',
    change: () => {
      desk = new Desk(facts, chosenFiles(input.files ?? []));
      void run();
    },
  });
  found('folder').append(element('label', { for: 'site-folder' }, 'Folder of the saved site'), input);
}

function questionAsked(): Question | undefined {
  const [session, than] = [select('session').value, select('than').value];
  if (session === '') return undefined;
  if (session === WHOLE) return { sessions: [], level: PUBLISHED_LEVEL };
  return { sessions: than === '' || than === session ? [session] : [session, than], level: PUBLISHED_LEVEL };
}

async function run(): Promise<void> {
  const question = questionAsked();
  asked += 1;
  const mine = asked;
  for (const id of ['files-checked', 'results', 'changing', 'changed']) found(id).replaceChildren();
  if (question === undefined) return tell('Choose a session.');
  try {
    tell('Fetching the raw files …');
    const [files, all] = [await desk.gather(question), await desk.published()];
    const recomputed = await desk.figures(desk.bench(files, new Map()), question, progressOf(mine));
    if (mine !== asked) return;
    const ids = new Set(recomputed.map(({ id }) => id));
    const published = question.sessions.length === 0 ? all : all.filter(({ id }) => ids.has(id));
    const work: Work = { question, files, published, recomputed, changes: new Map(), level: PUBLISHED_LEVEL };
    showFiles(files);
    showResults(work, undefined);
    showInputs(work);
    tell(verdictOf(work));
    // What a browser does not let us keep is fetched again the next time.
    if (!isSaved) keepForLater(ROOT, facts).catch(() => undefined);
  } catch (error) {
    if (mine === asked) tell(error instanceof Error ? error.message : String(error), true);
  }
}

function verdictOf({ files, published, recomputed, question }: Work): string {
  const off = files.filter(({ sha256, stated }) => sha256 !== stated);
  const checked =
    off.length === 0
      ? `${plural(files.length, 'raw file')} verified by SHA-256.`
      : `${plural(off.length, 'raw file')} of ${files.length} not as this page states: ${off.map(({ path }) => path).join(', ')}.`;
  const ids = new Set(published.map(({ id }) => id));
  const compared = compareFigures(
    published,
    recomputed.filter(({ id }) => ids.has(id)),
  );
  const own = recomputed.length - compared.length;
  const lost = published.length - compared.length;
  return [
    checked,
    describeComparison(compared),
    own > 0 ? `${plural(own, 'figure')} that the publication does not state, computed here.` : '',
    question.sessions.length === 0 && lost > 0 ? `${plural(lost, 'published figure')} could not be recomputed.` : '',
  ]
    .filter(Boolean)
    .join(' ');
}

function tell(text: string, isFault = false): void {
  const status = found('status');
  status.textContent = text;
  status.classList.toggle('fault', isFault);
}

function progressOf(mine: number) {
  return async (done: number, of: number): Promise<void> => {
    if (of > 3) tell(`Recomputing session ${done + 1} of ${of} …`);
    if (done % 4 === 0) await new Promise((resolve) => setTimeout(resolve));
    if (mine !== asked) throw new Error('out of date');
  };
}

function showFiles(files: readonly CheckedFile[]): void {
  found('files-checked').append(
    element(
      'details',
      {},
      element('summary', {}, `The files: ${plural(files.length, 'file')}, with their SHA-256`),
      element(
        'ul',
        { class: 'small-list' },
        files.map(({ path, sha256, stated }) =>
          element(
            'li',
            { 'data-verified': String(sha256 === stated) },
            element('a', { href: new URL(path, ROOT).href }, path),
            sha256 === stated ? ', as stated' : `, not as stated: ${stated ?? 'no checksum is stated'}`,
            element('span', { class: 'words mono' }, sha256),
          ),
        ),
      ),
    ),
  );
}

function showResults({ question, published, recomputed }: Work, changed: readonly Figure[] | undefined): void {
  const isWhole = question.sessions.length === 0;
  const families = familiesOf(question, facts);
  found('results').replaceChildren(
    figureTable({
      caption: isWhole
        ? 'The figure asked for, and those of the whole publication that differ or move'
        : 'Published and recomputed',
      published,
      recomputed,
      changed,
      onlyMoved: isWhole,
      askedFor: new URLSearchParams(location.search).get('figure') ?? undefined,
    }),
    ...families.map(({ inWords, pairs, id }) =>
      element(
        'details',
        { 'data-family': id },
        element('summary', {}, `Adjusted together: ${plural(pairs.length, 'comparison')}, ${inWords}`),
        element(
          'ul',
          { class: 'small-list' },
          pairs.map(({ a, b }) => element('li', {}, `${a} less ${b}`)),
        ),
      ),
    ),
  );
}

function showInputs(work: Work): void {
  const { question, files } = work;
  const bench = desk.bench(files, new Map());
  const sessions =
    question.sessions.length === 0 ? bench.sessions : bench.sessions.filter(({ id }) => question.sessions.includes(id));
  const raw = new Map(files.map(({ path, bytes }) => [path, bytes]));
  const change = (one: Change): void => {
    work.changes = withChange(work.changes, one);
    schedule(work);
  };
  const level = element('input', {
    type: 'number',
    min: '50',
    max: '99.99',
    step: 'any',
    value: String(PUBLISHED_LEVEL * 100),
    id: 'level',
    change: () => {
      work.level = Number(level.value) / 100;
      schedule(work);
    },
  });
  found('changing').append(
    element('h2', {}, 'Change something'),
    element(
      'p',
      {},
      'Leave a reading out, correct one, or state rig and display otherwise; the table says what moves.',
    ),
    element('p', {}, element('label', { for: 'level' }, 'Coverage of the intervals, % '), level),
    ...(question.sessions.length === 0 ? [] : sessions.map((session) => readingInputs(session, change))),
    assumptionInputs(assumptionsOf(raw, sessions), change),
    element('p', {}, element('button', { type: 'button', click: () => void run() }, 'Undo all changes')),
  );
}

let waiting: ReturnType<typeof setTimeout> | undefined;

/** Several changes at once, such as all readings of a run, are one. */
function schedule(work: Work): void {
  clearTimeout(waiting);
  waiting = setTimeout(() => void recompute(work));
}

async function recompute(work: Work): Promise<void> {
  asked += 1;
  const mine = asked;
  const { changes, level, files } = work;
  const said = [
    ...[...changes.values()].map(describeChange),
    ...(level === PUBLISHED_LEVEL
      ? []
      : [`coverage of the intervals: ${describeCoverageLevel(PUBLISHED_LEVEL)} → ${describeCoverageLevel(level)}`]),
  ];
  found('changed').replaceChildren(
    ...(said.length === 0
      ? []
      : [
          element('h2', {}, 'What you changed'),
          element(
            'ul',
            { class: 'small-list' },
            said.map((line) => element('li', {}, line)),
          ),
          element(
            'p',
            { class: 'small' },
            'The same changes in copies of these files give the same figures with ',
            element('code', {}, 'npm run recompute'),
            '.',
          ),
        ]),
  );
  try {
    if (!(level >= 0.5 && level <= 0.9999)) throw new Error('The coverage lies between 50 and 99.99 %.');
    const question = { ...work.question, level };
    const figures =
      said.length === 0 ? undefined : await desk.figures(desk.bench(files, changes), question, progressOf(mine));
    if (mine !== asked) return;
    showResults(work, figures);
    tell(said.length === 0 ? verdictOf(work) : `Recomputed with ${plural(said.length, 'change')}.`);
  } catch (error) {
    if (mine !== asked) return;
    showResults(work, undefined);
    tell(error instanceof Error ? error.message : String(error), true);
  }
}

start();
