import { z } from 'zod';
import { date, flag, identifier, text } from '../fields.ts';
import { present } from '../present.ts';
import { WORKBOOKS } from '../workbook-names.ts';

/** The workbook that readings were imported from: a file of `data/sources`, as it was then. */
export const importedFrom = z
  .strictObject({ file: text, sha256: text, sheet: text.optional() })
  .transform(({ file, sha256, sheet }) => present({ path: `${WORKBOOKS}/${file}`, sha256, sheet }));

/** Front matter of `data/sessions/<id>.md`; what its ids refer to is checked where the whole bench is known. */
export const sessionSchema = z
  .strictObject({
    body: text,
    firmware: identifier.optional(),
    rig: text,
    method: text,
    /** May be missing only while the session is planned. */
    date: date.optional(),
    settings: z.record(z.string(), identifier),
    room: text.optional(),
    'warm-up': text.optional(),
    'cut-short': text.optional(),
    links: z.array(text).optional(),
    display: text.optional(),
    /** Allows a readings file with nothing but its header. */
    planned: flag,
    'imported-from': importedFrom.optional(),
  })
  .transform(({ 'warm-up': warmUp, 'cut-short': cutShort, 'imported-from': from, ...rest }) =>
    present({ ...rest, warmUp, cutShort, importedFrom: from }),
  );

export type SessionFront = z.output<typeof sessionSchema>;
