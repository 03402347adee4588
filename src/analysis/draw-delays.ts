/** Delays of simulated clips, as a statement of variation says that they vary. */
import { intervalMs } from '../model/rate.ts';
import type { Chain } from './chain.ts';
import { normalQuantile } from './distributions.ts';
import type { Random } from './random.ts';
import { LEVELS, type LevelVariation, type Sizes, type Variation } from './variation.ts';

export interface DrawnDelays {
  /** What each clip's delay is off the condition's, in ms. */
  readonly clipsMs: readonly number[];
  /** The same of what the total speaks of: these clips, their day, or the condition. */
  readonly meanMs: number;
}

/** Clips of one day, about the mean of their condition; all alike where nothing is known of how they vary. */
export function drawDelays(
  { chain, variation }: { readonly chain: Chain; readonly variation?: Variation },
  clips: number,
  random: Random,
): DrawnDelays {
  if (variation === undefined) return { clipsMs: Array.from({ length: clips }, () => 0), meanMs: 0 };
  const frameMs = intervalMs(chain.body.rate);
  const dayMs = drawsOf(variation.day, frameMs, random)();
  const ofClip = drawsOf(variation.clip, frameMs, random);
  const clipsMs = Array.from({ length: clips }, () => dayMs + ofClip());
  const means = [clipsMs.reduce((sum, ms) => sum + ms / clips, 0), dayMs, 0];
  return { clipsMs, meanMs: means[LEVELS.indexOf(variation.knows)]! };
}

/** Draws about the level's own mean; how large its changes are is drawn once. */
function drawsOf({ change, step }: LevelVariation, frameMs: number, random: Random): () => number {
  const [sd, deeper] = [drawSize(change, random), drawSize(step, random)];
  return () => {
    const isDeeper = random.uniform() < deeper;
    return frameMs * (sd * drawNormal(random) + Number(isDeeper) - deeper);
  };
}

function drawSize(sizes: Sizes, random: Random): number {
  let left = random.uniform();
  for (const { size, weight } of sizes) {
    if (left < weight) return size;
    left -= weight;
  }
  return sizes.at(-1)!.size;
}

function drawNormal(random: Random): number {
  return normalQuantile((random.word() + 0.5) / 2 ** 32);
}
