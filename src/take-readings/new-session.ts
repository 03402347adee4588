/** Begins a session: its two files, empty, as `npm run plan` writes them. */
import { whileWriting } from '../commands/write-all.ts';
import { CLIPS_ENOUGH } from '../analysis/plan.ts';
import { advisedSpacingMs } from '../analysis/precision.ts';
import { parseSessions, readSessions } from '../ingest/read-session.ts';
import type { Bench } from '../model/bench.ts';
import { parseRate } from '../model/rate.ts';
import { newSessionId } from '../planning/planned-session.ts';
import { renderNewSession } from '../planning/render-session.ts';
import { methodOfRig, setupOfRig } from '../planning/setup-of-rig.ts';
import { lookup } from '../register/lookup.ts';

export interface NewSessionWish {
  readonly body: string;
  readonly rig: string;
  /** Level by setting. */
  readonly settings: Readonly<Record<string, string>>;
}

/** A good first session where nothing was planned; common practice, no source. */
const READINGS = 8;

/** The id of the session that was written; or why none was. */
export async function beginSession(
  root: string,
  wish: NewSessionWish,
): Promise<{ readonly id: string } | { readonly refused: string }> {
  return whileWriting(root, async (write) => {
    const read = await readSessions(root);
    const bench = read && parseSessions(read).bench;
    if (read === undefined || bench === undefined)
      return { refused: 'data/settings.yaml cannot be read; npm run build says why.' };
    const wrong = whatIsWrong(wish, bench);
    if (wrong !== undefined) return { refused: wrong };
    const { body, settings } = wish;
    const rate = parseRate(settings['rate'] ?? '');
    const rig = lookup(bench).rig(wish.rig);
    if (rate === undefined) return { refused: 'A session needs the frame rate that is set on the body.' };
    const method = methodOfRig(rig);
    const spacingMs = advisedSpacingMs(setupOfRig(rig, rate, method, bench, lookup(bench)), READINGS);
    const id = newSessionId(body, { settings, rate }, bench, new Set(read.ids));
    const { front, readings } = renderNewSession({
      id,
      body,
      rig: rig.id,
      method,
      condition: { settings, rate },
      plan: { runs: CLIPS_ENOUGH, readings: READINGS, spacingMs },
      position: 1,
      of: 1,
    });
    await write([
      { path: `data/sessions/${id}.md`, text: front },
      { path: `data/sessions/${id}.csv`, text: readings },
    ]);
    return { id };
  });
}

function whatIsWrong({ body, rig, settings }: NewSessionWish, bench: Bench): string | undefined {
  if (!bench.bodies.some(({ id }) => id === body)) return `There is no body “${body}”.`;
  if (!bench.rigs.some(({ id }) => id === rig)) return `There is no rig “${rig}”.`;
  const unknown = Object.entries(settings).find(
    ([name, level]) => !bench.settings.find(({ id }) => id === name)?.levels.some(({ id }) => id === level),
  );
  return unknown === undefined ? undefined : `There is no level “${unknown[1]}” of “${unknown[0]}”.`;
}
