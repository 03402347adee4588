/** What is said of a part, once: the check of write-ups, the authoring guide and README go by it. */

export interface PartProperty {
  readonly means: string;
  /** What may be written, as it is written. */
  readonly accepts: string;
  /** Readers see its text, so what holds for prose holds for it. */
  readonly isProse?: true;
}

export interface PartDefinition {
  /** What it puts on the page, to follow its name. */
  readonly shows: string;
  /** Properties it needs; a list in the list means one of these. */
  readonly needs: readonly (string | readonly string[])[];
  readonly properties: Readonly<Record<string, PartProperty>>;
  /** The kind of figure that its sessions must have, where it selects sessions without naming a kind. */
  readonly selects?: string;
  /** Whether words stand between its tags. */
  readonly marksWords?: true;
  /** On the demonstration, from which it builds. */
  readonly example: string;
  /** A mistake, and what the build says of it after the name of the file, had the file but this line. */
  readonly failure: { readonly written: string; readonly says: string };
}

export type PartDefinitions = Readonly<Record<string, PartDefinition>>;

/** Properties that several parts have, and mean the same by. */
export const COMMON = {
  caption: {
    means: 'what it shows, in a sentence; also its name for screen readers',
    accepts: '"text"',
    isProse: true,
  },
  title: { means: 'another caption than the computed one', accepts: '"text"', isProse: true },
  ids: { means: 'figures, in the order in which they are to stand', accepts: '{["total/a", "total/b"]}' },
  kind: {
    means: 'figures of this kind, by query: sessions that match join by themselves',
    accepts: '"total", "frames" or another kind of a session’s figures',
  },
  ranked: { means: 'figures of this kind, by query', accepts: '"total" or "frames"' },
  body: { means: 'only of this body', accepts: '"id of a body"' },
  rig: { means: 'only on this rig', accepts: '"id of a rig"' },
  method: { means: 'only read this way', accepts: '"two-timers", "frame-count" or "instrument"' },
  where: { means: 'only where this was set', accepts: '{{ setting: "level" }}' },
  of: { means: 'the session that is compared', accepts: '"id of a session"' },
  than: { means: 'the session it is compared with', accepts: '"id of a session"' },
  margin: {
    means: 'what counts as the same; half a frame of the faster rate where it is left out',
    accepts: '"8 ms", "1/120 s"',
  },
} as const satisfies Record<string, PartProperty>;

/** By list or by query. */
export const SELECTION = {
  ids: COMMON.ids,
  kind: COMMON.kind,
  body: COMMON.body,
  rig: COMMON.rig,
  method: COMMON.method,
  where: COMMON.where,
} as const;
