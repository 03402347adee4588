import type { ClipLikelihood } from '../../src/analysis/level-likelihood.ts';

/** What a clip's readings say of its delay where their error is normal. */
export function normalClip(meanMs: number, u: number): ClipLikelihood {
  const stepMs = u / 8;
  const logLikelihood = Array.from({ length: 97 }, (_, i) => -0.5 * ((i - 48) / 8) ** 2);
  return { lowMs: meanMs - 6 * u, stepMs, logLikelihood };
}
