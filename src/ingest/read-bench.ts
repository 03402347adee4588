import type { Bench, Prose, WriteUp } from '../model/bench.ts';
import { checkWorkbooks } from './check-workbooks.ts';
import { FORMAT, neededChange } from './formats.ts';
import { freezeDeep } from './freeze.ts';
import { Folder, type Records } from './folder.ts';
import type { ImageReference } from './illustrations/image-references.ts';
import { readIllustrations } from './illustrations/read-illustrations.ts';
import { checkTopFolder } from './list-folder.ts';
import { readNote } from './note.ts';
import { parseData, type DataSources, type SessionPairSource } from './parse-data.ts';
import { SPEEDS_FILE } from './parse-speeds.ts';
import { VARIATION_FILE } from './parse-variation.ts';
import { ProblemList } from './problem-list.ts';
import { readLedger } from './read-ledger.ts';
import type { RecordFile } from './record.ts';
import { parseReferences } from './references.ts';
import { siteSchema } from './schemas/site.ts';
import type { Source } from './source.ts';
import { writeUpSchema, type WriteUpFrontMatter } from './schemas/write-up.ts';

/**
 * Sessions read at once: with hundreds of small files most of the time is spent waiting, and a process may not open
 * them all.
 */
const READ_AHEAD = 50;

const CONTENT_FOLDERS = ['methods', 'reports', 'ledger'];
const DATA_FOLDERS = ['bodies', 'displays', 'display-pairs', 'links', 'rigs', 'sessions', 'sources'];

export interface BenchFolders {
  /** Paths in problems and in the result are relative to it, for what lies inside it. */
  readonly root: string;
  readonly dataDir: string;
  readonly contentDir: string;
  /** Whether what was recorded last is left unread, because a merge has left it in pieces; its entries are read. */
  readonly ledgerEntriesAlone?: boolean;
  /** Whether drafts are read like other write-ups, as while they are written; else they are only counted. */
  readonly drafts?: boolean;
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
    ['settings.yaml', VARIATION_FILE, SPEEDS_FILE, 'README.md', ...DATA_FOLDERS],
    problems,
    true,
  );
  await checkTopFolder(
    content.area.realFolder,
    content.area.name,
    ['site.md', 'README.md', ...CONTENT_FOLDERS],
    problems,
    true,
  );

  // 2. what each file says
  const site = await content.readOne('site.md', siteSchema);
  const format = site?.value.format ?? FORMAT;
  if (format > FORMAT && site) {
    const found = { found: String(format), expected: String(FORMAT) };
    site.source.report({ code: 'newer-format', key: 'format', ...site.front.locate(['format']), ...found });
    problems.throwIfAny();
  }
  const [methods, reports] = [
    await content.readRecords('methods', '.mdx', writeUpSchema, false),
    await content.readRecords('reports', '.mdx', writeUpSchema, false),
  ].map((records) => (folders.drafts === true ? { ...records, drafts: [] } : withoutDrafts(records))) as [Out, Out];
  const sources: DataSources = {
    settings: await data.readSource('settings.yaml'),
    variation: (await data.holdsFile(VARIATION_FILE)) ? await data.readSource(VARIATION_FILE) : undefined,
    speeds: (await data.holdsFile(SPEEDS_FILE)) ? await data.readSource(SPEEDS_FILE) : undefined,
    bodies: await data.readSources('bodies', '.md'),
    displays: await data.readSources('displays', '.md'),
    links: await data.readSources('links', '.md', false),
    rigs: await data.readSources('rigs', '.md'),
    sessions: await readSessions(data, problems, 'sessions', true),
    displayPairs: await readSessions(data, problems, 'display-pairs', false),
  };
  for (const source of textsOf(sources)) checkFormat(source, format);
  const shown = new Map<string, readonly ImageReference[]>();
  const readProse = (source: Source): readonly Prose[] => {
    const { prose, images } = readNote(source);
    if (images.length > 0) shown.set(source.file.path, images);
    return prose;
  };
  const parsed = parseData(sources, { methods: methods.ids, readProse });
  const workbooks = await checkWorkbooks(data, [...parsed.sessions, ...parsed.displayPairs], problems);
  const ledger = await readLedger(content, folders.ledgerEntriesAlone);

  // 3. what authors write about it
  const introduction = site && readProse(site.source);
  const isTrusted = site?.value.writeUpsRunCode === true;
  const [methodNotes, writeUps] = [methods, reports].map(({ records }) =>
    records.map((record) => {
      const { writeUp, images } = asWriteUp(record, isTrusted);
      if (images.length > 0) shown.set(writeUp.file.path, images);
      return writeUp;
    }),
  ) as [WriteUp[], WriteUp[]];
  const illustrations = await readIllustrations([data, content], shown, problems);

  // 4. all or nothing
  problems.throwIfUnsound({
    bodies: sources.bodies.map(({ id }) => id),
    rigs: sources.rigs.map(({ id }) => id),
    sessions: sources.sessions.map(({ id }) => id).filter((id) => !parsed.planned.some((plan) => plan.id === id)),
    displayPairs: sources.displayPairs.map(({ id }) => id),
    methods: methods.ids,
    reports: reports.ids,
    settings: parsed.settings ?? [],
    writeUps: [...methodNotes, ...writeUps],
  });
  const { settings, variation, speeds, ...rest } = parsed;
  if (!site || !introduction || !settings || !sources.settings)
    throw new Error('a file that was not read was not reported');
  return freezeDeep<Bench>({
    site: { ...site.value, introduction: site.front.body, prose: introduction, file: site.source.file },
    ...rest,
    settings,
    settingsFile: sources.settings.file,
    methods: methodNotes,
    reports: writeUps.sort((a, b) => (a.date === b.date ? 0 : a.date < b.date ? 1 : -1)),
    ...(variation === undefined ? {} : { variation }),
    ...(speeds === undefined ? {} : { speeds }),
    ...(workbooks.length === 0 ? {} : { workbooks }),
    ...(illustrations.length === 0 ? {} : { illustrations }),
    ...(reports.drafts.length === 0 ? {} : { drafts: reports.drafts }),
    ...(ledger === undefined ? {} : { ledger }),
  });
}

/** Every file of front matter and notes that could be read. */
function textsOf({ bodies, displays, links, rigs, sessions, displayPairs }: DataSources): readonly Source[] {
  const records = [bodies, displays, links, rigs].flat().map(({ source }) => source);
  const fronts = [...sessions, ...displayPairs].map(({ front }) => front);
  return [...records, ...fronts].filter((source) => source !== undefined);
}

/** Reports a file that a later format has changed. */
function checkFormat({ file, bytes, report }: Source, format: number): void {
  if (format === FORMAT) return;
  const needed = neededChange(format, file.path, new TextDecoder().decode(bytes));
  if (needed === undefined) return;
  report({ code: 'older-format', line: needed.line, found: needed.says, expected: String(needed.to) });
}

interface Out extends Records<WriteUpFrontMatter> {
  /** Ids of those that are left out. */
  readonly drafts: readonly string[];
}

function withoutDrafts({ ids, records }: Records<WriteUpFrontMatter>): Out {
  const drafts = records.filter(({ value }) => value.draft === true).map(({ id }) => id);
  return {
    ids: ids.filter((id) => !drafts.includes(id)),
    records: records.filter(({ id }) => !drafts.includes(id)),
    drafts,
  };
}

async function readSessions(
  data: Folder,
  problems: ProblemList,
  folder: string,
  needed: boolean,
): Promise<readonly SessionPairSource[]> {
  const entries = await data.list(folder, ['.md', '.csv'], needed);
  const read = (name: string | undefined) => (name === undefined ? undefined : data.readSource(`${folder}/${name}`));
  const sources: SessionPairSource[] = [];
  for (let start = 0; start < entries.length; start += READ_AHEAD) {
    const next = entries.slice(start, start + READ_AHEAD).map(async ({ id, files }): Promise<SessionPairSource> => {
      const [front, readings] = await Promise.all([read(files.get('.md')), read(files.get('.csv'))]);
      return { id, front, readings };
    });
    sources.push(...(await Promise.all(next)));
  }
  for (const { id, files } of entries) {
    const published = `${data.area.name}/${folder}/${id}`;
    if (!files.has('.md')) problems.add({ code: 'missing-front', file: `${published}.csv`, expected: `${id}.md` });
    if (!files.has('.csv')) problems.add({ code: 'missing-readings', file: `${published}.md`, expected: `${id}.csv` });
  }
  return sources;
}

/** With what its text asks for; nothing, where the text is not MDX, which is reported. */
function asWriteUp(
  { id, value, front, source }: RecordFile<WriteUpFrontMatter>,
  isTrusted: boolean,
): { readonly writeUp: WriteUp; readonly images: readonly ImageReference[] } {
  const text = new TextDecoder().decode(source.bytes);
  const { images, ...references } = parseReferences(text, source.report, isTrusted);
  return { writeUp: { id, ...value, ...references, text: front.body, file: source.file }, images };
}
