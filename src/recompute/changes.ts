/** What a reader changes of the files, to see what moves. Each change names its file, its place, and both texts. */
import { restateFrontMatter } from '../ingest/restate-front-matter.ts';
import { replaceCells } from '../ingest/edit-readings.ts';

export interface ReadingChange {
  readonly kind: 'reading';
  readonly file: string;
  /** 1-based, of the readings file. */
  readonly line: number;
  readonly column: string;
  readonly from: string;
  readonly to: string;
}

export interface StatedChange {
  readonly kind: 'stated';
  readonly file: string;
  readonly path: readonly string[];
  /** Undefined: not stated. */
  readonly from: string | undefined;
  readonly to: string | undefined;
}

export type Change = ReadingChange | StatedChange;

/** A latency cannot be stated without these (`data/displays`), so they come with it. */
const STATED_WITH: Readonly<Record<string, string>> = {
  value: '0 ms',
  uncertainty: '0 ms',
  source: 'assumed by a reader',
};

/** Tells one place from another: a second change of a place takes the place of the first. */
export function placeOf(change: Change): string {
  return change.kind === 'reading'
    ? `${change.file}:${change.line}:${change.column}`
    : `${change.file}:${change.path.join('.')}`;
}

/** The files with the changes made; files that no change names are the same objects. */
export function applyChanges(
  files: ReadonlyMap<string, Uint8Array>,
  changes: readonly Change[],
): ReadonlyMap<string, Uint8Array> {
  const changed = new Map(files);
  for (const [file, own] of Map.groupBy(changes, (change) => change.file)) {
    const bytes = files.get(file);
    if (bytes === undefined) continue;
    changed.set(file, applyStated(applyReadings(bytes, own), own));
  }
  return changed;
}

function applyReadings(bytes: Uint8Array, changes: readonly Change[]): Uint8Array {
  const edits = new Map<number, Record<string, string>>();
  for (const change of changes) {
    if (change.kind !== 'reading') continue;
    edits.set(change.line, { ...edits.get(change.line), [change.column]: change.to });
  }
  if (edits.size === 0) return bytes;
  return new TextEncoder().encode(replaceCells(new TextDecoder().decode(bytes), edits));
}

function applyStated(bytes: Uint8Array, changes: readonly Change[]): Uint8Array {
  const stated = changes.filter((change) => change.kind === 'stated');
  if (stated.length === 0) return bytes;
  const edits = stated.flatMap(({ path, from, to }) => [...companions(path, from, to), { path, to }]);
  return restateFrontMatter(bytes, edits);
}

function companions(path: readonly string[], from: string | undefined, to: string | undefined) {
  const [key, part] = path;
  if (key !== 'latency' || from !== undefined || to === undefined) return [];
  return Object.entries(STATED_WITH)
    .filter(([name]) => name !== part)
    .map(([name, value]) => ({ path: [key, name], to: value }));
}

/** `data/rigs/balcony.md, source-timer.refresh: 60 → 120` */
export function describeChange(change: Change): string {
  const where = change.kind === 'reading' ? `line ${change.line}, ${change.column}` : change.path.join('.');
  return `${change.file}, ${where}: ${say(change.from)} → ${say(change.to)}`;
}

function say(text: string | undefined): string {
  return text === undefined || text === '' ? 'nothing' : text;
}
