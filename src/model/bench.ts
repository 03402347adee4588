/** The bench: everything an author wrote in `data/` and `content/`, read, checked and frozen. Times are in milliseconds. */
import type { Illustration } from './illustration.ts';
import type { Ledger } from './ledger.ts';
import type { Rate } from './rate.ts';
import type { SourceFile } from './source-file.ts';
import type { VariationStatement } from './variation-statement.ts';

export type { SourceFile } from './source-file.ts';

export type SettingKind = 'unordered' | 'ordered' | 'numeric' | 'rate';

export interface SettingLevel {
  /** The text authors write in a session: `uhd`, `10`, `4:2:2`, `23.976`. */
  readonly id: string;
  readonly label: string;
}

export interface Setting {
  /** The key authors write in a session: `bit-depth`. */
  readonly id: string;
  readonly label: string;
  readonly kind: SettingKind;
  /** In the order declared, which is their order where the kind has one. */
  readonly levels: readonly SettingLevel[];
}

interface Described {
  readonly id: string;
  readonly name: string;
  /** True for demonstration data: every page that shows it says so. */
  readonly invented: boolean;
  /** Markdown. */
  readonly description: string;
  /** What the description says in the author's own words. */
  readonly prose: readonly Prose[];
  /** What its front matter states besides words, as written: `14 ms`, `60`. */
  readonly stated?: readonly string[];
  readonly file: SourceFile;
}

export interface Body extends Described {
  readonly maker: string;
  readonly model: string;
  /** Time the sensor takes from its first row to its last; undefined where nobody measured it. */
  readonly readoutMs?: number;
}

/** A stated or measured latency of a display or link, from somewhere other than these sessions. */
export interface StatedLatency {
  readonly valueMs: number;
  readonly standardUncertaintyMs: number;
  readonly source: string;
}

export interface Display extends Described {
  readonly refresh: Rate;
  /** `input`: starts a refresh when a frame arrives; `free`: refreshes on its own clock. */
  readonly sync: 'input' | 'free';
  /** Time it takes to draw from its first row to its last. */
  readonly scanOutMs?: number;
  readonly latency?: StatedLatency;
}

export interface Link extends Described {
  readonly latency?: StatedLatency;
}

export interface SourceTimer {
  readonly name: string;
  readonly refresh: Rate;
  /** Step of the last digit that counts; undefined: the number of decimals written says it. */
  readonly resolutionMs?: number;
  /** The timer starts again at zero after this long. */
  readonly wrapsAfterMs?: number;
  /** Half-width of what its clock rate may be off by, parts per million. */
  readonly clockTolerancePpm?: number;
}

export interface Observer {
  readonly name: string;
  readonly rate: Rate;
  readonly exposureMs?: number;
  /** First row to last row of its sensor. */
  readonly readoutMs?: number;
  /** Height in its picture at which the source timer's digits stand: 0 top edge, 1 bottom edge. */
  readonly sourceRow?: number;
  /** The same for the digits on the display. */
  readonly displayRow?: number;
  readonly clockTolerancePpm?: number;
}

export interface Rig extends Described {
  /** Absent on a rig used only with the `instrument` or `frame-count` method. */
  readonly sourceTimer?: SourceTimer;
  readonly observer?: Observer;
  /** Expanded uncertainty (k = 2) stated for the instrument, in ms. */
  readonly instrument?: { readonly name: string; readonly expandedUncertaintyMs: number };
  /** Ids, in the order of the signal. */
  readonly links: readonly string[];
  readonly display: string;
  /** Height on the display's own screen at which the digits stand: 0 top edge, 1 bottom edge. */
  readonly digitsRow?: number;
}

export const METHODS = ['two-timers', 'frame-count', 'instrument'] as const;
export type MethodId = (typeof METHODS)[number];

/** Ways to read two displays against each other, without any body. */
export const PAIR_METHODS = ['side-by-side', 'mirrored-screen'] as const;
export type PairMethodId = (typeof PAIR_METHODS)[number];

export interface Reading {
  /** 1-based line of the CSV file. */
  readonly line: number;
  /** 1-based. */
  readonly run: number;
  /** Source time; undefined for methods without one, or where an excluded reading has none. */
  readonly sourceMs?: number;
  readonly shownMs?: number;
  /** Observer frames, for `frame-count`. */
  readonly frames?: number;
  /**
   * source − shown (modulo the period of a timer that starts again at zero), frames × observer interval, or the
   * instrument's value; undefined only when excluded. Negative only where two displays are read against each other.
   */
  readonly latencyMs?: number;
  /** The cells as taken, by column name. */
  readonly cells: Readonly<Record<string, string>>;
  /** The reason, when the reading does not count. */
  readonly excluded?: string;
  readonly note?: string;
}

export interface Session {
  readonly id: string;
  readonly body: string;
  readonly firmware?: string;
  readonly rig: string;
  /** The chain between body and eye: the rig's, unless the session says otherwise. */
  readonly links: readonly string[];
  readonly display: string;
  readonly method: MethodId;
  /** ISO 8601 calendar date. */
  readonly date: string;
  /** Level id by setting id, in the order of `data/settings.yaml`. */
  readonly settings: Readonly<Record<string, string>>;
  /** The frame rate set on the body. */
  readonly rate: Rate;
  /** Quantities as written, unit included: `22.5 °C`. */
  readonly room?: string;
  readonly warmUp?: string;
  /** The workbook that its readings were imported from, and its checksum then. */
  readonly importedFrom?: { readonly path: string; readonly sha256: string; readonly sheet?: string };
  /** Why the session ended before it was complete. */
  readonly cutShort?: string;
  /** Markdown. */
  readonly notes: string;
  /** What the notes say in the author's own words. */
  readonly prose: readonly Prose[];
  /** What its front matter states besides words, as written: `14 ms`, `60`. */
  readonly stated?: readonly string[];
  /** Step of the last digit that counts, in the source timer's values. */
  readonly resolutionMs?: number;
  readonly readings: readonly Reading[];
  readonly file: SourceFile;
  readonly readingsFile: SourceFile;
}

/** A value written for a part's property: known when it is plain text, number, list or map; else the build finds out. */
export type PartValue = { readonly known: true; readonly value: unknown } | { readonly known: false };

/** Whether both displays of a pair get their picture at one moment: 0 for a splitter; undefined where nobody knows. */
export interface PairOutputs {
  readonly standardUncertaintyMs?: number;
}

/** Two displays that show one picture of a running timer, read against each other. */
export interface DisplayPair {
  readonly id: string;
  readonly method: PairMethodId;
  /** ISO 8601 calendar date. */
  readonly date: string;
  /** Whose value stands under `shown`. */
  readonly display: string;
  /** Whose value stands under `source`: on a mirrored screen the one that draws the timer. */
  readonly against: string;
  /** Ids, in the order of the signal, from the outputs to either display. */
  readonly links: readonly string[];
  readonly againstLinks: readonly string[];
  /** What draws the timer, at the rate of its picture. */
  readonly sourceTimer: SourceTimer;
  readonly outputs: PairOutputs;
  /** `sourceRow` is that of `against`, `displayRow` that of `display`. */
  readonly observer?: Observer;
  /** Heights of the digits on either screen: 0 top edge, 1 bottom edge. */
  readonly digitsRow?: number;
  readonly againstDigitsRow?: number;
  readonly room?: string;
  readonly importedFrom?: Session['importedFrom'];
  /** Markdown. */
  readonly notes: string;
  readonly prose: readonly Prose[];
  readonly stated?: readonly string[];
  readonly resolutionMs?: number;
  /** `latencyMs` is what `display` shows later than `against`. */
  readonly readings: readonly Reading[];
  readonly file: SourceFile;
  readonly readingsFile: SourceFile;
}

/** A component used in a write-up: `<Figure id="total/a" />`. */
export interface Part {
  readonly name: string;
  readonly line: number;
  readonly column: number;
  readonly attributes: Readonly<Record<string, PartValue>>;
  /** What stands between its tags, on one line; absent where nothing does. */
  readonly words?: string;
  /** Parts and links between its tags: `<Figure>`, `a link`. */
  readonly holds?: readonly string[];
  /** What of its sentence stands before and after it, each on one line; absent where it stands by itself. */
  readonly sentence?: { readonly before: string; readonly after: string };
}

/** A session that is planned and has no readings yet: not published, but counted, so that none is forgotten. */
export interface PlannedSession
  extends Pick<Session, 'id' | 'body' | 'rig' | 'links' | 'display' | 'method' | 'settings' | 'rate'> {
  readonly file: SourceFile;
}

/** The same of two displays. */
export interface PlannedPair
  extends Omit<DisplayPair, 'date' | 'notes' | 'prose' | 'stated' | 'resolutionMs' | 'readings' | 'readingsFile'> {}

/** A stretch of prose and the line on which it begins. */
export interface ProsePiece {
  readonly text: string;
  readonly line: number;
}

/** What a paragraph, heading or cell says in the author's own words, piece by piece. */
export type Prose = readonly ProsePiece[];

export interface WriteUpLink {
  readonly to: string;
  readonly line: number;
  readonly column: number;
}

export interface WriteUp {
  readonly id: string;
  readonly title: string;
  readonly summary: string;
  /** ISO 8601 calendar date. */
  readonly date: string;
  readonly author?: string;
  /** Not to be published yet. */
  readonly draft?: boolean;
  readonly parts: readonly Part[];
  readonly links: readonly WriteUpLink[];
  readonly prose: readonly Prose[];
  /** Names that the file imports or defines itself, so that they are no mistake. */
  readonly ownNames: readonly string[];
  /** All that stands under its front matter, as written. */
  readonly text: string;
  readonly file: SourceFile;
}

/** What the whole site is called and who answers for it: front matter of `content/site.md`. */
export interface SiteInfo {
  readonly title: string;
  readonly tagline: string;
  readonly publisher: string;
  /** The version of the formats that its files were written for. */
  readonly format?: number;
  /** Whether write-ups may hold code and any markup: their publisher trusts every author. */
  readonly writeUpsRunCode: boolean;
  /** Whether the documentation of the tool is part of the site. */
  readonly documentation: boolean;
  /** Identifier of the SPDX licence list under which figures, readings and text may be used: `CC-BY-4.0`. */
  readonly licence?: string;
  /** Where the site stands on the web, with a slash at its end: `https://example.org/bench/`. */
  readonly address?: string;
  /** Tag of BCP 47 for the language that authors write in: `en-GB`. */
  readonly language?: string;
  /** Names the publication wherever it stands: a DOI without its prefix (`10.1234/abc`), a URN or an address. */
  readonly identifier?: string;
  /** Markdown. */
  readonly introduction: string;
  /** What the introduction says in the author's own words. */
  readonly prose: readonly Prose[];
  readonly file: SourceFile;
}

/** The statement of variation and the file it stands in. */
export interface RecordedVariation extends VariationStatement {
  readonly file: SourceFile;
}

/** A speed of the publication's own, for what a latency means in practice. */
export interface OwnSpeed {
  /** In ids: `moved/cart/BODY`. */
  readonly id: string;
  /** As it stands in a sentence: `the camera cart`. */
  readonly name: string;
  /** As its author wrote it: `0.9 m/s`. */
  readonly stated: string;
  readonly metresPerSecond: number;
  /** Where it is from; the author's own where nothing is said. */
  readonly source?: string;
}

/** `data/speeds.yaml`. */
export interface OwnSpeeds {
  readonly list: readonly OwnSpeed[];
  readonly file: SourceFile;
}

export interface Bench {
  readonly site: SiteInfo;
  readonly settings: readonly Setting[];
  readonly settingsFile: SourceFile;
  /** Each list is sorted by id; sessions too. */
  readonly bodies: readonly Body[];
  readonly displays: readonly Display[];
  readonly links: readonly Link[];
  readonly rigs: readonly Rig[];
  readonly sessions: readonly Session[];
  readonly displayPairs: readonly DisplayPair[];
  readonly planned: readonly PlannedSession[];
  readonly plannedPairs: readonly PlannedPair[];
  /** The workbooks that readings were imported from. */
  readonly workbooks?: readonly SourceFile[];
  /** What texts show besides words, text by text. */
  readonly illustrations?: readonly Illustration[];
  readonly methods: readonly WriteUp[];
  /** Newest first, then by id. */
  readonly reports: readonly WriteUp[];
  /** How delays vary on this bench; undefined where nobody has said so yet. */
  readonly variation?: RecordedVariation;
  readonly speeds?: OwnSpeeds;
  /** Ids of reports that are drafts, and so are not among the reports. */
  readonly drafts?: readonly string[];
  /** What was recorded as published; undefined where nothing was yet. */
  readonly ledger?: Ledger;
}
