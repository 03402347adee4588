import { renderFrontMatter } from '../ingest/render-front-matter.ts';
import type { MethodId } from '../model/bench.ts';
import type { NewSession } from './planned-session.ts';
import { describeDesign } from './plan-text.ts';

export const COLUMNS: Readonly<Record<MethodId, string>> = {
  'two-timers': 'run,source,shown,exclude,note',
  'frame-count': 'run,frames,exclude,note',
  instrument: 'run,latency,exclude,note',
};

const WARM_UP = '15 min';
const COOL_DOWN = '10 min';

export interface SessionFiles {
  readonly front: string;
  readonly readings: string;
}

/** Where in the drawn order a planned session stands, as `renderNewSession` wrote it; undefined where it did not. */
export function readPosition(front: string): { readonly position: number; readonly of: number } | undefined {
  const [, position, of] = /^# Session (\d+) of (\d+),/m.exec(front) ?? [];
  return position === undefined ? undefined : { position: Number(position), of: Number(of) };
}

/**
 * The two files of a session that is still to be measured: what is known is filled in, the rest is asked for. All of that
 * is said in comments, so that none of it is published as if the author had written it.
 */
export function renderNewSession({
  body,
  rig,
  method,
  condition,
  plan,
  position,
  of,
  unstated = [],
}: NewSession): SessionFiles {
  const front = renderFrontMatter({ planned: true, body, rig, method, settings: condition.settings });
  const pause =
    position === 1
      ? `Let the body warm up for ${WARM_UP} with these settings before the first reading.`
      : `Switch the body off for ${COOL_DOWN} after the session before this one, then let it warm up again.`;
  return {
    front: [
      '---',
      '# Still to be filled in: date (YYYY-MM-DD), firmware (in quotes), room, warm-up. Remove "planned" when the readings are typed.',
      ...(unstated.length === 0
        ? []
        : [`# Settings that are not stated cannot be compared later. Still to be filled in: ${unstated.join(', ')}.`]),
      `# Session ${position} of ${of}, in an order drawn at random. Plan: ${describeDesign(plan)}.`,
      `# ${pause}`,
      '# If it shows a temperature warning, stop, switch it off and let it cool. Notes for readers go below the second line of dashes.',
      `${front.trimEnd()}`,
      '---',
      '',
    ].join('\n'),
    readings: `${COLUMNS[method]}\n`,
  };
}
