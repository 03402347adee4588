import { z } from 'zod';
import { date, flag, identifier, text } from '../fields.ts';
import { present } from '../present.ts';

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
    /** The workbook that the readings were imported from: a file of `data/sources`, as it was then. */
    'imported-from': z.strictObject({ file: text, sha256: text, sheet: text.optional() }).optional(),
  })
  .transform(({ 'warm-up': warmUp, 'cut-short': cutShort, 'imported-from': importedFrom, ...rest }) =>
    present({ ...rest, warmUp, cutShort, importedFrom }),
  );

export type SessionFront = z.output<typeof sessionSchema>;
