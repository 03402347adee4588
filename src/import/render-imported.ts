/** The files of a session that was imported: what was set, the readings, and the workbook as it is. */
import { renderCsv } from '../model/csv-text.ts';
import { renderFrontMatter } from '../ingest/render-front-matter.ts';
import { NEEDED } from './columns.ts';
import type { Understood } from './understand.ts';

export interface Described {
  readonly body: string;
  readonly firmware?: string | undefined;
  readonly rig: string;
  readonly date: string;
  readonly settings: Readonly<Record<string, string>>;
  readonly room?: string | undefined;
  readonly warmUp?: string | undefined;
}

export interface KeptWorkbook {
  /** In `data/sources`. */
  readonly name: string;
  readonly sha256: string;
}

export function renderImported(
  { table, rows }: Understood,
  { body, firmware, rig, date, settings, room, warmUp }: Described,
  { name, sha256 }: KeptWorkbook,
): { readonly front: string; readonly readings: string } {
  const front = renderFrontMatter(
    Object.fromEntries(
      Object.entries({
        body,
        firmware,
        rig,
        method: table.method,
        date,
        settings,
        room,
        'warm-up': warmUp,
        'imported-from': { file: name, sha256, ...(table.sheet.name === '' ? {} : { sheet: table.sheet.name }) },
      }).filter(([, value]) => value !== undefined),
    ),
  );
  const columns = ['run', ...NEEDED[table.method], 'exclude', 'note'];
  const cells = rows.map(({ run, values, exclude, note }) => [
    String(run),
    ...values.map(({ taken }) => taken),
    exclude,
    note,
  ]);
  return { front: `---\n${front}---\n`, readings: renderCsv(columns, cells) };
}
