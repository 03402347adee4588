/** The files of a session that was imported: what was set, the readings, and the workbook as it is. */
import { renderCsv } from '../model/csv-text.ts';
import { pairFront, type DescribedPair } from '../ingest/render-display-pair.ts';
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
  understood: Understood,
  { body, firmware, rig, date, settings, room, warmUp }: Described,
  workbook: KeptWorkbook,
): { readonly front: string; readonly readings: string } {
  const front = renderFrontMatter(
    Object.fromEntries(
      Object.entries({
        body,
        firmware,
        rig,
        method: understood.table.method,
        date,
        settings,
        room,
        'warm-up': warmUp,
        'imported-from': originOf(understood, workbook),
      }).filter(([, value]) => value !== undefined),
    ),
  );
  return { front: `---\n${front}---\n`, readings: renderReadings(understood) };
}

/** A comparison of two displays. */
export function renderImportedPair(
  understood: Understood,
  { pair, date, room }: { readonly pair: DescribedPair; readonly date: string; readonly room?: string | undefined },
  workbook: KeptWorkbook,
): { readonly front: string; readonly readings: string } {
  const front = pairFront(pair, { date, room, 'imported-from': originOf(understood, workbook) });
  return { front: `---\n${front}---\n`, readings: renderReadings(understood) };
}

function originOf({ table }: Understood, { name, sha256 }: KeptWorkbook): Readonly<Record<string, string>> {
  return { file: name, sha256, ...(table.sheet.name === '' ? {} : { sheet: table.sheet.name }) };
}

function renderReadings({ table, rows }: Understood): string {
  const columns = ['run', ...NEEDED[table.method], 'exclude', 'note'];
  const cells = rows.map(({ run, values, exclude, note }) => [
    String(run),
    ...values.map(({ taken }) => taken),
    exclude,
    note,
  ]);
  return renderCsv(columns, cells);
}
