/**
 * Whether all clips of a session were read at one and the same step: then the readings of a clip may all show one phase of
 * the picture, if its interval goes into the step. Clips are too short to tell by themselves.
 */

/** Steps beyond which even ones are no chance. */
const FEWEST = 5;
/** Values count whole frames of the picture, and an observer’s: this far off, in ms, steps may still be even (50 a second). */
const OFF_MS = 21;

/** Stamps of each run, in ms. */
export function evenSteps(runsMs: readonly (readonly number[])[]): boolean {
  const steps = runsMs
    .flatMap((stamps) => stamps.slice(1).map((stamp, i) => Math.abs(stamp - stamps[i]!)))
    .sort((a, b) => a - b);
  const usual = steps[Math.floor(steps.length / 2)];
  if (usual === undefined || steps.length < FEWEST || usual < 4 * OFF_MS) return false;
  return steps.every((step) => Math.abs(step - usual) <= OFF_MS);
}
