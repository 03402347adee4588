import { coverageFactor } from '../analysis/distributions.ts';
import type { Figure, Register } from '../register/register.ts';

export interface MethodExample {
  readonly session: string;
  readonly total: Figure;
  readonly mean: Figure;
  readonly standardError: Figure;
  readonly beat: string;
}

/** The session whose textbook interval is furthest too narrow because its rates beat; undefined where none beats. */
export function findMethodExample({ figures, findings }: Register): MethodExample | undefined {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  const examples = findings.flatMap(({ rule, where, message }) => {
    const session = where['session'];
    const [total, mean, standardError] = ['total', 'mean', 'standard-error'].map((kind) =>
      byId.get(`${kind}/${session}`),
    );
    if (rule !== 'beating-rates' || session === undefined || !total?.interval || !mean || !standardError) return [];
    const textbookHalfWidth = coverageFactor(total.interval.level, total.readings - 1) * standardError.value;
    const ratio = (total.interval.high - total.interval.low) / 2 / textbookHalfWidth;
    return [{ ratio, session, total, mean, standardError, beat: message }];
  });
  return examples.sort((a, b) => b.ratio - a.ratio)[0];
}
