import type { Bench, Body, SourceFile } from '../../model/bench.ts';
import { lowestOfBody } from '../comparisons/lowest-of-body.ts';
import type { Compilation, Contribution } from '../compilation.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS } from '../kinds.ts';
import type { Figure } from '../register.ts';
import { describeMeasured } from '../text.ts';
import { movementsOf, type Movement } from './movements.ts';
import { sourceOf } from '../joint-figure.ts';

/** Its id does not name the session: which one is the lowest may change with the next. */
export const movedId = (movement: Movement['id'], body: string): string => `moved/${movement}/${body}`;

/** How far things move in the lowest total of each body. */
export function compilePractice({ bench, session }: Compilation): Contribution {
  const movements = movementsOf(bench);
  const figures = bench.bodies.flatMap((body) => {
    const lowest = lowestOfBody(bench, body.id, (id) => session(id).total);
    return lowest === undefined
      ? []
      : movements.map((movement) => movedFigure(movement, body, lowest.total, statedIn(bench, movement)));
  });
  return { figures, findings: [] };
}

/** The file that a speed of the publication's own stands in. */
function statedIn({ speeds }: Bench, { id }: Movement): readonly SourceFile[] {
  return speeds?.list.some((own) => own.id === id) === true ? [speeds.file] : [];
}

/**
 * The distance is a rising function of the total, so the ends of its interval are those of the total put through it
 * (JCGM 101:2008, 5.4: quantiles of a monotonic function); its uncertainties go by the slope there (JCGM 100:2008,
 * 5.1).
 */
function movedFigure(
  movement: Movement,
  { id: body, name }: Body,
  total: Figure,
  stated: readonly SourceFile[],
): Figure {
  const {
    of,
    kind: _kind,
    own: _own,
    speaksOf: _level,
    corrections: _corrections,
    uncorrected: _before,
    ...rest
  } = total;
  const { interval, standardUncertainty, components } = rest;
  const id = movedId(movement.id, body);
  const slope = movement.metresPerSecond(total.value / 1000) / 1000;
  const metres = (ms: number): number => movement.metres(ms / 1000);
  const ends = interval && { low: metres(interval.low), high: metres(interval.high), level: interval.level };
  const half = ends === undefined ? 0 : (ends.high - ends.low) / 2;
  return {
    ...rest,
    sources: [...rest.sources, ...stated.map((file) => sourceOf({ file }))],
    id,
    kind: 'moved',
    of: { body, movement: movement.id },
    unit: KINDS.moved.unit,
    value: metres(total.value),
    ...(standardUncertainty === undefined ? {} : { standardUncertainty: standardUncertainty * slope }),
    ...(ends === undefined ? {} : { interval: ends }),
    ...(components === undefined
      ? {}
      : {
          components: components.map((component) => ({
            ...component,
            standardUncertainty: component.standardUncertainty * slope,
          })),
        }),
    text:
      metres(total.value) < 1
        ? describeMeasured(100 * metres(total.value), 100 * half, 'cm')
        : describeMeasured(metres(total.value), half, 'm'),
    label: `${movement.name}, in the lowest total of ${name}`,
    entry: groupEntry('in-practice', id),
    group: 'What the totals mean in practice',
    inWords: `${movement.inWords} The total is that of the session ${of['session']}, the lowest of this body. Source: ${movement.source}.`,
  };
}
