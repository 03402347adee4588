import type { Bench, Body, PlannedSession, Rig, Session, WriteUp } from '../model/bench.ts';
import { checkId, checkLinks } from './check-ids.ts';
import { checkReadingsAlone } from './check-readings.ts';
import { checkBody, checkDisplay, checkLatency, checkRig } from './check-relations.ts';
import { freezeDeep } from './freeze.ts';
import { statedValues } from './front-texts.ts';
import { Folder, type RecordFile } from './folder.ts';
import { parseFrontMatter } from './front-matter.ts';
import { checkTopFolder } from './list-folder.ts';
import { readNote } from './note.ts';
import { ProblemList } from './problem-list.ts';
import { readLedger } from './read-ledger.ts';
import { readVariation, VARIATION_FILE } from './read-variation.ts';
import { parseReferences } from './references.ts';
import { bodySchema } from './schemas/body.ts';
import { displaySchema } from './schemas/display.ts';
import { linkSchema } from './schemas/link.ts';
import { rigSchema } from './schemas/rig.ts';
import { siteSchema } from './schemas/site.ts';
import { writeUpSchema, type WriteUpFrontMatter } from './schemas/write-up.ts';
import { parseSession, type Known } from './sessions.ts';
import { parseSettings } from './settings.ts';
import type { Source } from './source.ts';

/** Sessions read at once: with hundreds of small files most of the time is spent waiting, and a process may not open them all. */
const READ_AHEAD = 50;

const CONTENT_FOLDERS = ['methods', 'reports', 'ledger'];
const DATA_FOLDERS = ['bodies', 'displays', 'links', 'rigs', 'sessions'];

export interface BenchFolders {
  /** Paths in problems and in the result are relative to it, for what lies inside it. */
  readonly root: string;
  readonly dataDir: string;
  readonly contentDir: string;
  /** Whether what was recorded last is left unread, because a merge has left it in pieces; its entries are read. */
  readonly ledgerEntriesAlone?: boolean;
}

/**
 * Reads a whole bench: every file of `data/`, and the front matter of `content/`. For each file:
 *
 *     bytes → text (encoding, checksum) → front matter, YAML, CSV → typed values → references between them → frozen
 *
 * Nothing is read but these files: no clock, no environment. Throws one ProblemsError with every mistake of
 * every file; a mistake in one file does not hide those of another. Once both folders are found it is an
 * UnsoundBenchError, which tells what the bench holds besides.
 */
export async function readBench(folders: BenchFolders): Promise<Bench> {
  const { root, dataDir, contentDir } = folders;
  const problems = new ProblemList();
  // 1. where everything is
  const data = await Folder.open(root, dataDir, problems);
  const content = await Folder.open(root, contentDir, problems);
  if (!data || !content) {
    problems.throwIfAny();
    throw new Error('a folder that is missing was not reported');
  }
  await checkTopFolder(
    data.area.realFolder,
    data.area.name,
    ['settings.yaml', VARIATION_FILE, 'README.md', ...DATA_FOLDERS],
    problems,
  );
  await checkTopFolder(
    content.area.realFolder,
    content.area.name,
    ['site.md', 'README.md', ...CONTENT_FOLDERS],
    problems,
  );

  // 2. what stands alone
  const site = await content.readOne('site.md', siteSchema);
  const settingsSource = await data.readSource('settings.yaml');
  const settings = settingsSource && parseSettings(settingsSource);
  const bodies = await data.readRecords('bodies', '.md', bodySchema);
  const displays = await data.readRecords('displays', '.md', displaySchema);
  const links = await data.readRecords('links', '.md', linkSchema, false);
  bodies.records.forEach(checkBody);
  displays.records.forEach(checkDisplay);
  for (const { value, front, source } of links.records) checkLatency(front, value.latency, source.report);
  const methods = await content.readRecords('methods', '.mdx', writeUpSchema, false);
  const reports = await content.readRecords('reports', '.mdx', writeUpSchema, false);
  const variation = await readVariation(data);
  const ledger = await readLedger(content, folders.ledgerEntriesAlone);

  // 3. what refers to something else
  const rigs = await data.readRecords('rigs', '.md', rigSchema);
  for (const { value, front, source } of rigs.records) {
    checkId(front, 'display', 'unknown-display', value.display, displays.ids, source.report);
    checkLinks(front, value.links, links.ids, source.report);
  }
  rigs.records.forEach(checkRig);
  const described = rigs.records.map((record): Rig => describe(record));
  const known: Known = {
    bodies: bodies.ids,
    displays: displays.ids,
    links: links.ids,
    rigs: rigs.ids,
    methods: methods.ids,
    settings,
    rigById: new Map(described.map((rig) => [rig.id, rig])),
  };
  const { ids: sessionIds, sessions, planned } = await readSessions(data, known, problems);
  const describedBodies = bodies.records.map((record) => describe(record));
  const describedDisplays = displays.records.map((record) => describe(record));
  const describedLinks = links.records.map((record) => describe(record));
  const introduction = site && readNote(site.source);
  const isTrusted = site?.value.writeUpsRunCode === true;
  const [methodNotes, writeUps] = [methods, reports].map(({ records }) =>
    records.map((record) => asWriteUp(record, isTrusted)),
  ) as [WriteUp[], WriteUp[]];

  // 4. all or nothing
  problems.throwIfUnsound({
    bodies: bodies.ids,
    rigs: rigs.ids,
    sessions: sessionIds,
    methods: methods.ids,
    reports: reports.ids,
    settings: settings ?? [],
    writeUps: [...methodNotes, ...writeUps],
  });
  if (!site || !introduction || !settings || !settingsSource)
    throw new Error('a file that was not read was not reported');
  return freezeDeep<Bench>({
    site: { ...site.value, introduction: site.front.body, prose: introduction, file: site.source.file },
    settings,
    settingsFile: settingsSource.file,
    bodies: describedBodies,
    displays: describedDisplays,
    links: describedLinks,
    rigs: described,
    sessions,
    planned,
    methods: methodNotes,
    reports: writeUps.sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1)),
    ...(variation === undefined ? {} : { variation }),
    ...(ledger === undefined ? {} : { ledger }),
  });
}

interface ReadSessions {
  /** Of every session that is no mere plan, faulty ones too. */
  readonly ids: readonly string[];
  readonly sessions: readonly Session[];
  readonly planned: readonly PlannedSession[];
}

async function readSessions(data: Folder, known: Known, problems: ProblemList): Promise<ReadSessions> {
  const sessions: Session[] = [];
  const planned: PlannedSession[] = [];
  const entries = await data.list('sessions', ['.md', '.csv'], true);
  let sources: (readonly (Source | undefined)[])[] = [];
  const read = (name: string | undefined) => (name === undefined ? undefined : data.readSource(`sessions/${name}`));
  for (const [index, { id, files }] of entries.entries()) {
    if (index % READ_AHEAD === 0) {
      const next = entries.slice(index, index + READ_AHEAD);
      sources = await Promise.all(
        next.map((entry) => Promise.all([read(entry.files.get('.md')), read(entry.files.get('.csv'))])),
      );
    }
    const [source, readingsSource] = sources[index % READ_AHEAD] ?? [];
    const [frontFile, readingsFile] = [files.get('.md'), files.get('.csv')];
    const published = `${data.area.name}/sessions/${id}`;
    if (frontFile === undefined)
      problems.add({ code: 'missing-front', file: `${published}.csv`, expected: `${id}.md` });
    if (readingsFile === undefined)
      problems.add({ code: 'missing-readings', file: `${published}.md`, expected: `${id}.csv` });
    const front = source && parseFrontMatter(source);
    if (front === undefined && readingsSource) checkReadingsAlone(readingsSource, undefined, known);
    const parsed = source && front && parseSession({ id, source, front, readingsSource }, known);
    if (parsed?.kind === 'session') sessions.push(parsed.session);
    if (parsed?.kind === 'planned') planned.push(parsed.planned);
  }
  const ids = entries.map(({ id }) => id).filter((id) => !planned.some((plan) => plan.id === id));
  return { ids, sessions, planned };
}

type Described = Pick<Body, 'id' | 'description' | 'prose' | 'stated' | 'file'>;

function describe<T>({ id, value, front, source }: RecordFile<T>): T & Described {
  const stated = statedValues(front.value);
  return { id, ...value, description: front.body, prose: readNote(source), stated, file: source.file };
}

/** With what its text asks for; nothing, where the text is not MDX, which is reported. */
function asWriteUp({ id, value, front, source }: RecordFile<WriteUpFrontMatter>, isTrusted: boolean): WriteUp {
  const references = parseReferences(new TextDecoder().decode(source.bytes), source.report, isTrusted);
  return { id, ...value, ...references, text: front.body, file: source.file };
}
