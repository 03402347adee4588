import type { Compilation, Contribution } from '../compilation.ts';
import type { Figure } from '../register.ts';
import type { Family } from './family.ts';
import type { Bench } from '../../model/bench.ts';
import { bodyFamilies } from './body-families.ts';
import { comparisonFigures } from './comparison-figures.ts';
import { comparisonFindings } from './comparison-findings.ts';
import { costFigures } from './cost-figures.ts';
import { laterFigures } from './later-figures.ts';
import { settingFamilies } from './setting-families.ts';

/** The comparisons that every bench asks for by itself: matched pairs of each body, and bodies in each condition. */
export function standingFamilies(bench: Bench): readonly Family[] {
  return [...settingFamilies(bench), ...bodyFamilies(bench)];
}

/**
 * Differences, ratios and verdicts: matched pairs of each body on each rig; bodies against bodies in each condition;
 * what each write-up asks for; what every setting costs over the fastest, and how much later each body is than the
 * least.
 *
 * A pair that several families hold has one difference and one ratio, entered with the first of them; a verdict
 * belongs to its family, because it is adjusted with it.
 */
export function compileComparisons(
  compilation: Compilation,
  standing: readonly Family[],
  asked: readonly Family[],
): Contribution {
  const figures = new Map<string, Figure>();
  const families = [...standing, ...asked].map((family) => comparisonFigures(compilation, family));
  for (const figure of [...families.flat(), ...costFigures(compilation), ...laterFigures(compilation)])
    if (!figures.has(figure.id)) figures.set(figure.id, figure);
  const all = [...figures.values()];
  return { figures: all, findings: comparisonFindings(compilation, asked, all) };
}
