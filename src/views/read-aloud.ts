import type { Published } from '../register/published.ts';
import type { Figure } from '../register/register.ts';
import { namesOfSessions } from '../register/labels.ts';
import { spokenFigure } from './spoken.ts';

export interface SpokenRow {
  readonly figure: Figure;
  /** Of what, in short: `Total latency of Vennick Q4, 25 frames/s`. */
  readonly subject: string;
  readonly spoken: string;
}

/** Each figure once, in the order in which it is first shown. Counts of readings and the like are no news to a speaker. */
export function readAloud(site: Pick<Published, 'bench'>, figures: readonly Figure[]): readonly SpokenRow[] {
  const labels = namesOfSessions(site.bench);
  const once = new Map(figures.map((figure) => [figure.id, figure]));
  return [...once.values()]
    .filter(({ unit, interval, limits }) => unit !== '1' || interval !== undefined || limits !== undefined)
    .map((figure) => ({ figure, subject: describe(labels, figure), spoken: spokenFigure(figure) }));
}

function describe(labels: ReadonlyMap<string, string>, { label, of }: Figure): string {
  const session = of['than'] === undefined ? labels.get(of['session'] ?? '') : undefined;
  return session === undefined ? label : `${label} of ${session}`;
}
