/** Rows of the ledger's tables, cell by cell: read here, written by `render-ledger.ts`. */
import { isInputId, type Change, type Published, type Recorded } from '../model/ledger.ts';
import { parseCsv } from './csv.ts';
import { lineOfMergeMark } from './merge-marks.ts';
import type { Source } from './source.ts';

export const FIGURE_COLUMNS = ['id', 'text', 'value', 'low', 'high', 'also', 'files'] as const;
/** Before entries were chained. */
const EARLIER_COLUMNS = FIGURE_COLUMNS.filter((column) => column !== 'also');
export const CHANGE_COLUMNS = ['id', 'was', 'text', 'value', 'low', 'high', 'also', 'files', 'cause'] as const;

const NUMBER = /^-?(?:\d+(?:\.\d+)?(?:e[+-]\d+)?|Infinity)$/;
/** A kind, and what it is of: levels and files may be named with any character. */
const ID = /^[^\s/]+\/[^/]/;
const DIGEST = /^[0-9a-f]{8}$/;
const CAUSE = /^[1-9]\d{0,5}$/;

/** A row as its table has it, by column. */
type Cells = Readonly<Record<string, string>>;
type Check = (key: string, found: string, fits: boolean, expected: string) => void;

/** `figures.csv`, in the present form or the one before. */
export function parseFigures(source: Source): readonly Recorded[] | undefined {
  const columns = firstLine(source) === EARLIER_COLUMNS.join(',') ? EARLIER_COLUMNS : FIGURE_COLUMNS;
  const figures: Recorded[] = [];
  const isWhole = parseRows(source, columns, (line, cells, check) => {
    figures.push({ ...published(cells, check), line });
  });
  return isWhole ? figures : undefined;
}

/** `entries/ID.csv`. */
export function parseChanges(source: Source): readonly Change[] | undefined {
  const changes: Change[] = [];
  const isWhole = parseRows(source, CHANGE_COLUMNS, (line, cells, check) => {
    const { id = '', was = '', text = '', cause = '' } = cells;
    if (was !== '') check('was', was, ID.test(was), 'an id such as total/a');
    if (cause !== '') check('cause', cause, CAUSE.test(cause), 'a number of a cause');
    if (text === '') check('id', id, ID.test(id), 'an id such as total/a');
    changes.push({
      line,
      id,
      ...(was === '' ? {} : { was }),
      ...(text === '' ? {} : { now: published(cells, check) }),
      ...(cause === '' ? {} : { cause: Number(cause) }),
    });
  });
  return isWhole ? changes : undefined;
}

function published(cells: Cells, check: Check): Published {
  const { id = '', text = '', also = '', files = '' } = cells;
  check('id', id, ID.test(id), 'an id such as total/a');
  check('text', text, text.trim() !== '', 'the published text');
  const numbers = (['value', 'low', 'high'] as const).flatMap((key) => {
    const cell = cells[key] ?? '';
    if (cell === '') return [];
    check(key, cell, NUMBER.test(cell), 'a number');
    return [[key, Number(cell)] as const];
  });
  if (!isInputId(id)) check('files', files, DIGEST.test(files), 'eight hexadecimal digits');
  return { id, text, ...Object.fromEntries(numbers), ...(also === '' ? {} : { also }), files };
}

/**
 * False where the table is not one. Marks of a merge that is not finished are reported as that, not as rows with too
 * few cells.
 */
export function parseRows(
  { bytes, report }: Source,
  columns: readonly string[],
  onRow: (line: number, cells: Cells, check: Check) => void,
): boolean {
  const line = lineOfMergeMark(new TextDecoder().decode(bytes), { inTable: true });
  if (line !== undefined) {
    report({ code: 'merge-conflict', line });
    return false;
  }
  const [key = ''] = columns;
  const seen = new Set<string>();
  const rows = parseCsv(bytes, columns, report, ({ line, cells }) => {
    const byColumn = Object.fromEntries(columns.map((column, index) => [column, cells[index] ?? '']));
    onRow(line, byColumn, (at, found, fits, expected) => {
      if (!fits) report({ code: 'bad-record', line, key: at, found, expected });
    });
    const name = byColumn[key] ?? '';
    if (seen.has(name)) report({ code: 'repeated-record', line, key, found: name });
    seen.add(name);
  });
  return rows !== undefined;
}

function firstLine({ bytes }: Source): string {
  return new TextDecoder().decode(bytes.subarray(0, 200)).split(/[\r\n]/)[0] ?? '';
}
