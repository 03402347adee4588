/** What can be renamed and removed with one command: where its files stand, and where its page. */
export const RECORD_KINDS = {
  session: { folder: 'data/sessions', endings: ['.md', '.csv'], pages: '/sessions/' },
  body: { folder: 'data/bodies', endings: ['.md'], pages: '/bodies/' },
  rig: { folder: 'data/rigs', endings: ['.md'], pages: '/rigs/' },
  report: { folder: 'content/reports', endings: ['.mdx'], pages: '/reports/' },
} as const;

export type RecordKind = keyof typeof RECORD_KINDS;

/** The paths of its files. */
export function filesOfRecord(kind: RecordKind, id: string): readonly string[] {
  const { folder, endings } = RECORD_KINDS[kind];
  return endings.map((ending) => `${folder}/${id}${ending}`);
}
