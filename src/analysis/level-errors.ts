/**
 * What a session's own error is at each level that it may speak of: of its clips, of their day, of the condition. Errors are
 * truth − value, in ms.
 */
import type { BudgetLine } from './budget.ts';
import { changesOf } from './clip-mean.ts';
import type { DelayPosterior } from './delay-posterior.ts';
import { centred, meanOf, shifted, varianceOf, type Distribution } from './distribution.ts';
import { withLevel } from './level-change.ts';
import { LEVELS, LEVEL_COMPONENTS, type Level, type Variation } from './variation.ts';
import { lazy } from '../model/once.ts';

export type LevelErrors = Readonly<Record<Level, Distribution>>;

/** Truth less the mean of the clips that were read, in ms: of each level when it is asked for, for few are. */
export type OwnErrors = Readonly<Record<Level, () => Distribution>>;

export function ownErrors(
  { distribution, day, clipChanges }: DelayPosterior,
  variation: Variation,
  frameMs: number,
): OwnErrors {
  const mean = meanOf(distribution);
  const clips = centred(distribution);
  const ofDay = lazy(() => (day ? shifted(day, -mean) : withLevel(clips, clipChanges, frameMs, 1)));
  return {
    clips: () => clips,
    day: ofDay,
    condition: lazy(() => withLevel(ofDay(), changesOf(variation.day, frameMs), frameMs, 1)),
  };
}

/** The same about a value that lies `correctionMs` above the mean of the clips that were read. */
export function errorsByLevel(own: OwnErrors, correctionMs: number): LevelErrors {
  return {
    get clips() {
      return shifted(own.clips(), -correctionMs);
    },
    get day() {
      return shifted(own.day(), -correctionMs);
    },
    get condition() {
      return shifted(own.condition(), -correctionMs);
    },
  };
}

/** What each level above the clips adds to the variance, up to the one that is spoken of. */
export function levelLines(errors: LevelErrors, speaksOf: Level): readonly BudgetLine[] {
  let below = varianceOf(errors.clips);
  return LEVELS.slice(1, LEVELS.indexOf(speaksOf) + 1).map((level) => {
    const added = Math.max(0, varianceOf(errors[level]) - below);
    below += added;
    return {
      name: LEVEL_COMPONENTS[level],
      type: 'B',
      distribution: 'numerical',
      standardUncertainty: Math.sqrt(added),
      degreesOfFreedom: Infinity,
      sharedKey: null,
    };
  });
}

/** The value of a level, with its own error about 0. */
export interface LevelEstimate {
  readonly value: number;
  readonly error: Distribution;
}

/** The session as of a level that it need not speak of: the clips that were read need not lie where all of their day do. */
export function estimateAt(
  { value, errors, speaksOf }: { readonly value: number; readonly errors: LevelErrors; readonly speaksOf: Level },
  level: Level,
): LevelEstimate {
  if (level === speaksOf) return { value, error: errors[level] };
  const offMs = meanOf(errors[level]);
  return { value: value + offMs, error: centred(errors[level]) };
}
