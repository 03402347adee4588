import { z } from 'zod';
import type { Cause } from '../../model/ledger.ts';
import { date, flag, parsed, text } from '../fields.ts';

const count = parsed('bad-count', (value) => (/^[1-9]\d{0,8}$/.test(value) ? Number(value) : undefined));
const digest = parsed('bad-digest', (value) => (/^[0-9a-f]{64}$/.test(value) ? value : undefined));

/** One of `changed`, `new`, `gone`: a file; `renamed` or `analysis`: from and to; `regrouped`; `code`: a version. */
const cause = z
  .strictObject({
    changed: text.optional(),
    new: text.optional(),
    gone: text.optional(),
    aside: flag,
    renamed: z.tuple([text, text]).optional(),
    analysis: z.tuple([text, text]).optional(),
    regrouped: flag,
    code: text.optional(),
  })
  .transform((written, context): Cause => {
    const causes = causesIn(written);
    if (causes[0] !== undefined && causes.length === 1) return causes[0];
    context.addIssue({ code: 'custom', params: { problem: 'bad-cause' } });
    return z.NEVER;
  });

function causesIn(written: {
  readonly changed?: string | undefined;
  readonly new?: string | undefined;
  readonly gone?: string | undefined;
  readonly aside?: boolean | undefined;
  readonly renamed?: readonly [string, string] | undefined;
  readonly analysis?: readonly [string, string] | undefined;
  readonly regrouped?: boolean | undefined;
  readonly code?: string | undefined;
}): readonly Cause[] {
  const { renamed, analysis, code } = written;
  return [
    ...(['changed', 'new', 'gone'] as const).flatMap((kind): readonly Cause[] => {
      const file = written[kind];
      return file === undefined ? [] : [{ kind, file, own: written.aside !== true }];
    }),
    ...(renamed === undefined ? [] : [{ kind: 'renamed', from: renamed[0], to: renamed[1] } as const]),
    ...(analysis === undefined ? [] : [{ kind: 'analysis', from: analysis[0], to: analysis[1] } as const]),
    ...(written.regrouped === true ? [{ kind: 'regrouped' } as const] : []),
    ...(code === undefined ? [] : [{ kind: 'code', analysis: code } as const]),
  ];
}

/** `content/ledger/entries/ID.yaml`, as `npm run record` writes it. */
export const ledgerEntrySchema = z
  .strictObject({
    date,
    reason: text,
    analysis: text,
    before: digest.optional(),
    says: digest,
    causes: z.array(z.array(cause)).optional(),
  })
  .transform(({ causes = [], before, ...rest }) => ({ ...rest, ...(before === undefined ? {} : { before }), causes }));

/** The same from before entries were chained: what moved is told in it. */
export const toldEntrySchema = z
  .strictObject({
    date,
    reason: text,
    analysis: text,
    causes: z.array(text).optional(),
    moved: z.array(z.strictObject({ id: text, from: text, to: text })).optional(),
    gone: z.array(z.strictObject({ id: text, from: text })).optional(),
    added: z.record(z.string(), count).optional(),
  })
  .transform(({ causes = [], moved = [], gone = [], added = {}, ...rest }) => ({
    ...rest,
    causes,
    moved,
    gone,
    added,
  }));
