import type { Reading, Session } from '../model/bench.ts';
import { sessionTitle } from '../register/labels.ts';
import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';

/** Every reading of a session as it is drawn. */
export interface ReadingsPlate {
  readonly session: string;
  readonly caption: string;
  /** Path of the file that they stand in. */
  readonly file: string;
  readonly readings: readonly Pick<Reading, 'run' | 'latencyMs' | 'excluded'>[];
  /** Drawn through the readings, with its interval. */
  readonly total: Figure;
}

/** undefined for a session whose total is not published. */
export function readingsPlate(
  { bench, figure }: Published,
  { id, readings, readingsFile }: Session,
): ReadingsPlate | undefined {
  const total = figure(`total/${id}`);
  const session = bench.sessions.find((each) => each.id === id);
  return (
    total &&
    session && {
      session: id,
      caption: `Every reading of ${sessionTitle(bench, session)}, with the total and its interval`,
      file: readingsFile.path,
      readings: readings.map(({ run, latencyMs, excluded }) => ({
        run,
        ...(latencyMs === undefined ? {} : { latencyMs }),
        ...(excluded === undefined ? {} : { excluded }),
      })),
      total,
    }
  );
}
