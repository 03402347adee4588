/** Where the readings stand in a sheet: the row of headings, and which column holds what. */
import type { MethodId } from '../model/bench.ts';
import { ImportError } from './mistakes.ts';
import { columnName, describeCell, type Sheet } from './sheet.ts';

export const ROLES = ['run', 'source', 'shown', 'frames', 'latency', 'exclude', 'note'] as const;
export type Role = (typeof ROLES)[number];

/** Headings that are taken for a role without being told; what was taken is always printed. */
const HEADINGS: Readonly<Record<Role, readonly string[]>> = {
  run: ['run', 'clip', 'take', 'run no', 'clip no', 'run number', 'clip number'],
  source: ['source', 'source time', 'timer', 'reference'],
  shown: ['shown', 'shown time', 'display', 'screen', 'on display', 'on screen'],
  frames: ['frames', 'frame count'],
  latency: ['latency', 'latency ms'],
  exclude: ['exclude', 'excluded', 'exclude because', 'excluded because'],
  note: ['note', 'notes', 'comment', 'comments', 'remark', 'remarks'],
};

/** The columns that a method cannot do without. */
export const NEEDED: Readonly<Record<MethodId, readonly Role[]>> = {
  'two-timers': ['source', 'shown'],
  'frame-count': ['frames'],
  instrument: ['latency'],
};

export interface Table {
  readonly sheet: Sheet;
  readonly method: MethodId;
  /** 0-based; -1 where there is none. */
  readonly headingRow: number;
  /** 0-based place of each role that has one. */
  readonly columns: ReadonlyMap<Role, number>;
  /** Headings of columns that are not read. */
  readonly unread: readonly string[];
}

export interface ColumnOptions {
  /** By role, a heading or the letter of a column. */
  readonly said: ReadonlyMap<Role, string>;
  /** 1-based; 0 where there is none. */
  readonly headingRow: number | undefined;
  readonly method: MethodId;
}

/** The table of a sheet; undefined where no row has the headings that the method needs. */
export function findTable(sheet: Sheet, { said, headingRow, method }: ColumnOptions): Table | undefined {
  const rows = headingRow === undefined ? sheet.rows.map((_, row) => row) : [headingRow - 1];
  for (const row of rows) {
    const headings = (sheet.rows[row] ?? []).map(describeCell);
    const columns = new Map<Role, number>();
    for (const role of ROLES) {
      const at = placeOf(role, headings, said.get(role), sheet.name);
      if (at !== undefined) columns.set(role, at);
    }
    const isNamed = headingRow !== undefined || NEEDED[method].some((role) => isHeading(columns.get(role), headings));
    if (!isNamed || NEEDED[method].some((role) => !columns.has(role))) continue;
    refuseShared(columns, sheet.name);
    const read = new Set(columns.values());
    const unread = headings.flatMap((heading, at) => (heading === '' || read.has(at) ? [] : [heading]));
    return { sheet, method, headingRow: row, columns, unread };
  }
  return undefined;
}

/** A heading that was said, else the letter of a column, else a heading that is known. */
function placeOf(role: Role, headings: readonly string[], said: string | undefined, sheet: string): number | undefined {
  const places = (fits: (heading: string) => boolean) => headings.flatMap((heading, at) => (fits(heading) ? [at] : []));
  if (said !== undefined) {
    const [exact, ...others] = places((heading) => heading.trim().toLowerCase() === said.trim().toLowerCase());
    if (others.length > 0) throw twice(sheet, role, said, [exact ?? 0, ...others]);
    return exact ?? (/^[A-Z]{1,2}$/.test(said) ? letters(said) : undefined);
  }
  const known = places((heading) => HEADINGS[role].includes(plain(heading)));
  if (known.length > 1) throw twice(sheet, role, role, known);
  return known[0];
}

function isHeading(at: number | undefined, headings: readonly string[]): boolean {
  return at !== undefined && /\p{L}/u.test(headings[at] ?? '');
}

/** Without what stands in brackets, marks and case: `Timer (s)` is `timer`. */
function plain(heading: string): string {
  return heading
    .toLowerCase()
    .replace(/\([^)]*\)|\[[^\]]*\]/g, '')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}

function letters(name: string): number {
  return [...name].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

function twice(sheet: string, role: Role, said: string, places: readonly number[]): ImportError {
  const choices = places.map((at) => `--column ${role}=${columnName(at)}`).join(' or ');
  return new ImportError([
    { where: placeIn(sheet), says: `'${said}' stands above several columns. Say which: ${choices}` },
  ]);
}

function refuseShared(columns: ReadonlyMap<Role, number>, sheet: string): void {
  for (const [role, at] of columns)
    for (const [other, there] of columns)
      if (role < other && at === there)
        throw new ImportError([
          {
            where: placeIn(sheet),
            says: `column ${columnName(at)} cannot be both ${role} and ${other}. Say another --column for one`,
          },
        ]);
}

/** `sheet 'Tuesday'`, and a cell of it. */
export function placeIn(sheet: string, cell?: string): string {
  return [...(sheet === '' ? [] : [`sheet '${sheet}'`]), ...(cell === undefined ? [] : [cell])].join(', ');
}
