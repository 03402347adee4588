/** What files say besides the readings: names, labels, what rigs and displays are, excluded rows, and their words. */
import type {
  Bench,
  DisplayPair,
  Observer,
  Reading,
  Session,
  SettingLevel,
  SourceFile,
  SourceTimer,
  StatedLatency,
  WriteUp,
} from '../model/bench.ts';
import { filesShown } from '../model/illustration.ts';
import { rateLabel } from '../model/rate.ts';
import { digestOfText } from './digest.ts';

/** A statement of files, before it is one of the ledger's. */
export interface Said {
  readonly id: string;
  readonly text: string;
  readonly files: readonly SourceFile[];
}

type Part = string | false | undefined;

/** Everything that a reader relies on besides figures and findings. Ids and texts are kept: they stand in ledgers. */
export function benchStatements(bench: Bench): readonly Said[] {
  return [
    ...siteStatements(bench),
    ...settingStatements(bench),
    ...bench.bodies.flatMap(({ id, name, maker, model, readoutMs, invented, description, file }) => [
      said(`body/${id}`, `${name} (${maker}, ${model})`, file),
      ...facts(
        'bodies',
        id,
        [readoutMs !== undefined && `sensor readout ${ms(readoutMs)}`, inventedOrNot(invented)],
        file,
      ),
      ...words('bodies', id, description, file),
    ]),
    ...bench.displays.flatMap(({ id, name, refresh, sync, scanOutMs, latency, invented, description, file }) => [
      said(`display/${id}`, name, file),
      ...facts(
        'displays',
        id,
        [
          `refreshes at ${rateLabel(refresh)} Hz`,
          sync === 'input' ? 'in step with its input' : 'on its own clock',
          scanOutMs !== undefined && `scan-out ${ms(scanOutMs)}`,
          stated(latency),
          inventedOrNot(invented),
        ],
        file,
      ),
      ...words('displays', id, description, file),
    ]),
    ...bench.links.flatMap(({ id, name, latency, invented, description, file }) => [
      said(`link/${id}`, name, file),
      ...facts('links', id, [stated(latency), inventedOrNot(invented)], file),
      ...words('links', id, description, file),
    ]),
    ...rigStatements(bench),
    ...bench.sessions.flatMap(sessionStatements),
    ...bench.displayPairs.flatMap(pairStatements),
    ...bench.methods.flatMap((writeUp) => writeUpStatements('method', 'methods', writeUp)),
    ...bench.reports.flatMap((writeUp) => writeUpStatements('report', 'reports', writeUp)),
    ...(bench.variation === undefined ? [] : [variationStatement(bench.variation)]),
    ...speedStatements(bench),
    ...illustrationStatements(bench),
  ];
}

/** What each text shows, by name and digest: `balcony.jpg (0123456789)`. */
function illustrationStatements({ illustrations = [] }: Bench): readonly Said[] {
  return [...Map.groupBy(illustrations, ({ text }) => text)].map(([text, shown]) => {
    const [, folder = 'site', id = ''] = /([^/]+)\/([^/]+)\.\w+$/.exec(text) ?? [];
    const files = shown.flatMap(({ shows }) => filesShown(shows));
    const named = files.map(({ path, sha256 }) => `${path.replace(/^.*\//, '')} (${sha256.slice(0, 10)})`);
    return {
      id: text.endsWith('/site.md') ? 'pictures/site/introduction' : `pictures/${folder}/${id}`,
      text: list(named),
      files,
    };
  });
}

function speedStatements({ speeds }: Bench): readonly Said[] {
  if (speeds === undefined) return [];
  return speeds.list.map(({ id, name, stated: speed, source = 'the author’s own' }) =>
    said(`speed/${id}`, `${name} at ${speed}, by ${source}`, speeds.file),
  );
}

function siteStatements({ site }: Bench): readonly Said[] {
  const { title, tagline, publisher, writeUpsRunCode, introduction, file } = site;
  return [
    said('site/title', title, file),
    ...(tagline.trim() === '' ? [] : [said('site/tagline', tagline, file)]),
    ...(publisher.trim() === '' ? [] : [said('site/publisher', publisher, file)]),
    ...(writeUpsRunCode ? [said('site/write-ups', 'may run code', file)] : []),
    ...words('site', 'introduction', introduction, file),
  ];
}

function settingStatements({ settings, settingsFile }: Bench): readonly Said[] {
  const labelOf = ({ id, label }: SettingLevel): string => (id === label ? id : `${id} (${label})`);
  return settings.flatMap(({ id, label, kind, levels }) => [
    said(`setting/${id}`, `${label}, ${kind}: ${levels.map(labelOf).join(', ')}`, settingsFile),
    ...levels.map((level) => said(`level/${id}/${level.id}`, level.label, settingsFile)),
  ]);
}

function rigStatements({ rigs }: Bench): readonly Said[] {
  return rigs.flatMap(({ id, name, sourceTimer, observer, instrument, links, display, digitsRow, ...rest }) => [
    said(`rig/${id}`, name, rest.file),
    ...facts(
      'rigs',
      id,
      [
        sourceTimer && timerText(sourceTimer),
        observer && observerText(observer),
        instrument &&
          `instrument ${instrument.name}, expanded uncertainty ${ms(instrument.expandedUncertaintyMs)} (k = 2)`,
        links.length > 0 && `links ${links.join(' → ')}`,
        `display ${display}`,
        digitsRow !== undefined && `digits at row ${digitsRow}`,
        inventedOrNot(rest.invented),
      ],
      rest.file,
    ),
    ...words('rigs', id, rest.description, rest.file),
  ]);
}

function timerText({ name, refresh, resolutionMs, wrapsAfterMs, clockTolerancePpm }: SourceTimer): string {
  return `source timer ${list([
    name,
    `refreshes at ${rateLabel(refresh)} Hz`,
    resolutionMs !== undefined && `steps of ${ms(resolutionMs)}`,
    wrapsAfterMs !== undefined && `starts again after ${ms(wrapsAfterMs)}`,
    clockTolerancePpm !== undefined && `clock within ${clockTolerancePpm} ppm`,
  ])}`;
}

function observerText(observer: Observer): string {
  return `observer ${list([
    observer.name,
    `${rateLabel(observer.rate)} frames/s`,
    observer.exposureMs !== undefined && `exposure ${ms(observer.exposureMs)}`,
    observer.readoutMs !== undefined && `readout ${ms(observer.readoutMs)}`,
    observer.sourceRow !== undefined && `timer at row ${observer.sourceRow}`,
    observer.displayRow !== undefined && `display at row ${observer.displayRow}`,
    observer.clockTolerancePpm !== undefined && `clock within ${observer.clockTolerancePpm} ppm`,
  ])}`;
}

function pairStatements(pair: DisplayPair): readonly Said[] {
  const { id, method, date, display, against, links, againstLinks, sourceTimer, outputs, observer, file } = pair;
  const u = outputs.standardUncertaintyMs;
  return [
    said(
      `display-pair/${id}`,
      list([[...links, display].join(' → '), `against ${[...againstLinks, against].join(' → ')}`, method, date]),
      file,
    ),
    ...facts(
      'display-pairs',
      id,
      [
        timerText(sourceTimer),
        u === undefined ? 'outputs not compared' : u === 0 ? 'one output, split' : `outputs alike, u ${ms(u)}`,
        observer && observerText(observer),
        pair.digitsRow !== undefined && `digits at row ${pair.digitsRow}`,
        pair.againstDigitsRow !== undefined && `digits of the other at row ${pair.againstDigitsRow}`,
        pair.room !== undefined && `room ${pair.room}`,
      ],
      file,
    ),
    ...words('display-pairs', id, pair.notes, file),
    ...rowStatements(pair),
  ];
}

function sessionStatements(session: Session): readonly Said[] {
  const { id, body, firmware, rig, links, display, method, date, rate, settings, file } = session;
  const levels = Object.entries(settings).map(
    ([setting, level]) => `${setting} ${setting === 'rate' ? rateLabel(rate) : level}`,
  );
  const chain = [rig, ...links, display].join(' → ');
  const condition = [body, firmware !== undefined && `firmware ${firmware}`, chain, method, date, ...levels];
  return [
    said(`session/${id}`, list(condition), file),
    ...facts(
      'sessions',
      id,
      [
        session.room !== undefined && `room ${session.room}`,
        session.warmUp !== undefined && `warm-up ${session.warmUp}`,
        session.cutShort !== undefined && `cut short: ${session.cutShort}`,
      ],
      file,
    ),
    ...words('sessions', id, session.notes, file),
    ...rowStatements(session),
  ];
}

function rowStatements({
  id,
  readings,
  readingsFile,
}: Pick<Session, 'id' | 'readings' | 'readingsFile'>): readonly Said[] {
  const rows = readings.map(rowOf);
  const excluded = readings.filter((reading) => reading.excluded !== undefined);
  return [
    said(`rows/${id}`, `${rows.length} rows (${digestOfText(JSON.stringify(rows))})`, readingsFile),
    ...(excluded.length === 0
      ? []
      : [said(`excluded-rows/${id}`, excluded.map((reading) => rowOf(reading).join(', ')).join('; '), readingsFile)]),
  ];
}

/** As it is published, whatever stands around it in the file. */
function rowOf({ run, cells, sourceMs, shownMs, frames, latencyMs, excluded, note }: Reading): readonly string[] {
  const written = Object.keys(cells).length > 0 ? Object.values(cells) : [run, sourceMs, shownMs, frames, latencyMs];
  const all = written.map((cell) => String(cell ?? ''));
  const reasons = [excluded, note].flatMap((reason) => (reason === undefined || all.includes(reason) ? [] : [reason]));
  return [...all, ...reasons].filter((cell) => cell !== '');
}

function writeUpStatements(kind: string, folder: string, writeUp: WriteUp): readonly Said[] {
  const { id, title, summary, date, author, text, file } = writeUp;
  return [
    said(`${kind}/${id}`, `${title}: ${summary}${author === undefined ? '' : ` (${author})`}`, file),
    said(`date/${folder}/${id}`, date, file),
    ...words(folder, id, text, file),
  ];
}

function variationStatement({ file, ...statement }: NonNullable<Bench['variation']>): Said {
  const { date, knows, stated: from } = statement;
  return said(
    'variation/delays',
    list([`of ${date}`, `knows ${knows}`, from, `sizes ${digestOfText(JSON.stringify(statement))}`]),
    file,
  );
}

/** What a text says is held by its digest: `18 words (1a2b3c4d)`. Blanks and line breaks are as good as any other. */
function words(folder: string, id: string, text: string, file: SourceFile): readonly Said[] {
  const all = text.trim().split(/\s+/);
  if (text.trim() === '') return [];
  return [
    said(
      `words/${folder}/${id}`,
      `${all.length} word${all.length === 1 ? '' : 's'} (${digestOfText(all.join(' '))})`,
      file,
    ),
  ];
}

function facts(folder: string, id: string, parts: readonly Part[], file: SourceFile): readonly Said[] {
  const text = list(parts);
  return text === '' ? [] : [said(`facts/${folder}/${id}`, text, file)];
}

function said(id: string, text: string, file: SourceFile): Said {
  return { id, text, files: [file] };
}

function list(parts: readonly Part[]): string {
  return parts.filter(Boolean).join(', ');
}

function stated(latency: StatedLatency | undefined): Part {
  return (
    latency && `stated latency ${ms(latency.valueMs)}, u ${ms(latency.standardUncertaintyMs)}, by ${latency.source}`
  );
}

function inventedOrNot(invented: boolean): Part {
  return invented && 'invented';
}

function ms(value: number): string {
  return `${Number(value.toPrecision(10))} ms`;
}
