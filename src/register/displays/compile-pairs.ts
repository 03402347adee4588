/** Two displays read against each other → the figure of their difference. */
import { estimateDisplayPair, type PairEstimate } from '../../analysis/display-pair.ts';
import type { PairLine } from '../../analysis/pair-budget.ts';
import type { Bench, DisplayPair } from '../../model/bench.ts';
import { problemsError } from '../../model/problem-text.ts';
import { once } from '../../model/once.ts';
import { groupEntry } from '../entry-groups.ts';
import { KINDS } from '../kinds.ts';
import { lookup, type Lookup } from '../lookup.ts';
import { finiteOrNull, type Component, type Figure } from '../register.ts';
import { countedReadings, countedRuns } from '../session-input.ts';
import { describeMeasured } from '../text.ts';
import { pairInput } from './pair-input.ts';
import { sourceOf } from '../joint-figure.ts';

export interface CompiledPair {
  readonly pair: DisplayPair;
  readonly estimate: PairEstimate;
  readonly figure: Figure;
}

/** Throws one ProblemsError with every pair that the analysis refuses. */
export const compilePairs: (bench: Bench) => readonly CompiledPair[] = once((bench) => {
  const find = lookup(bench);
  const results = bench.displayPairs.map((pair) => {
    try {
      return compilePair(pair, find);
    } catch (error) {
      const found = error instanceof Error ? error.message : String(error);
      return { code: 'not-estimable', file: pair.readingsFile.path, found } as const;
    }
  });
  const problems = results.filter((one) => 'code' in one);
  if (problems.length > 0) throw problemsError(problems);
  return results.filter((one) => 'pair' in one);
});

/** Depends on the pair and on what its two displays are, so that it is remembered with the bench's own. */
function compilePair(pair: DisplayPair, find: Lookup): CompiledPair {
  const estimate = estimateDisplayPair(pairInput(pair, find));
  const { value, expandedUncertainty, interval, standardUncertainty, coverageFactor } = estimate;
  const counted = countedReadings(pair).length;
  const id = `display-difference/${pair.id}`;
  const { label, unit } = KINDS['display-difference'];
  const [display, against] = [find.display(pair.display), find.display(pair.against)];
  const links = [...pair.links, ...pair.againstLinks].map(find.link);
  return {
    pair,
    estimate,
    figure: {
      id,
      kind: 'display-difference',
      of: { 'display-pair': pair.id, display: pair.display, than: pair.against },
      unit,
      value,
      standardUncertainty,
      interval,
      coverageFactor,
      speaksOf: 'clips',
      own: { key: id, error: estimate.error },
      components: estimate.components.map(
        (component): Component => ({
          name: component.name,
          type: component.type,
          distribution: component.distribution,
          standardUncertainty: component.standardUncertainty,
          degreesOfFreedom: finiteOrNull(component.degreesOfFreedom),
          share: component.varianceShare,
          shared: sharedKeyOf(component, pair),
        }),
      ),
      readings: counted,
      runs: countedRuns(pair).length,
      excluded: pair.readings.length - counted,
      sources: [{ file: pair.readingsFile }, pair, display, against, ...links].map(sourceOf),
      text: describeMeasured(value, expandedUncertainty, unit),
      label: `${label}: ${display.name} less ${against.name} (${pair.id})`,
      entry: groupEntry('display-pairs', id),
      group: 'Displays side by side',
    },
  };
}

/** What a part is the same for, by the names that totals use. */
export function sharedKeyOf({ shared, anyPlace }: PairLine, pair: DisplayPair): string | null {
  if (shared === null) return null;
  if (shared === 'outputs') return `outputs:${pair.sourceTimer.name}`;
  const display = shared === 'shown' ? pair.display : pair.against;
  return anyPlace === true ? `display:${display}` : `display:${display}@${pair.id}`;
}
