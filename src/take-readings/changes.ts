/** What can be done to a session's readings, each as a change of its two files' text. */
import { editFrontMatter } from '../ingest/edit-front-matter.ts';
import { addRow, replaceRow } from '../ingest/edit-readings.ts';
import { isReason } from '../ingest/reasons.ts';
import { Refused, type Change } from './session-files.ts';
import type { SessionState, SessionTexts } from './session-state.ts';

/** Cells by column. */
export type Cells = Readonly<Record<string, string>>;

export interface Details {
  readonly date: string;
  readonly firmware: string;
  readonly room: string;
  readonly warmUp: string;
}

/** Far more than anybody types into one cell. */
const LONGEST_CELL = 300;

/** One row more. With the first the session is planned no longer. */
export function addReading(run: number, cells: Cells) {
  return (texts: SessionTexts, state: SessionState): Change => {
    if (state.date === undefined) throw new Refused('Fill in the date first: a session that has readings needs one.');
    const row = rowOf(state, { ...cells, run: String(run) });
    return { readings: addRow(texts.readings, row), ...notPlanned(texts.front) };
  };
}

/** Other cells in the row that starts on a line; a reading is excluded by its reason, and counts again without. */
export function editReading(line: number, cells: Cells) {
  return (texts: SessionTexts, state: SessionState): Change => {
    const old = state.readings.find((reading) => reading.line === line);
    const readings =
      old && replaceRow(texts.readings, line, rowOf(state, { ...old.cells, ...cells, run: String(old.run) }));
    if (readings === undefined) throw new Refused(`No reading stands in line ${line}.`);
    return { readings };
  };
}

/** What was still to be filled in; the session stays planned until it has a reading. */
export function fillIn({ date, firmware, room, warmUp }: Details) {
  return ({ front }: SessionTexts): Change => {
    const given = { date, firmware, room, 'warm-up': warmUp };
    const values = Object.entries(given).filter(([, value]) => value.trim() !== '');
    return { front: quoteFirmware(editFrontMatter(front, Object.fromEntries(values))) };
  };
}

function rowOf(state: SessionState, cells: Cells): readonly string[] {
  const row = state.columns.map((column) => (cells[column] ?? '').trim());
  if (row.some((cell) => cell.length > LONGEST_CELL))
    throw new Refused(`A cell holds ${LONGEST_CELL} characters at most.`);
  // a line break would be kept, and read badly everywhere
  if (row.some((cell) => /[\p{Cc}\p{Zl}\p{Zp}]/u.test(cell))) throw new Refused('A cell is one line of plain text.');
  const exclude = (cells['exclude'] ?? '').trim();
  if (exclude !== '' && !isReason(exclude))
    throw new Refused('Say in words why it does not count, such as: digits overlap.');
  return row;
}

function notPlanned(front: string): Pick<Change, 'front'> {
  if (!/^planned: *true/m.test(front)) return {};
  return { front: editFrontMatter(front, { planned: undefined }).replace(/^# Still to be filled in:.*\r?\n/m, '') };
}

/** 1.40 is not 1.4: YAML must not take it for a number. */
function quoteFirmware(front: string): string {
  return front.replace(
    /^firmware: (?!["'])([^\r\n]*\S)/m,
    (_line, value: string) => `firmware: ${JSON.stringify(value)}`,
  );
}
