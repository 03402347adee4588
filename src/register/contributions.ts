/** Everything that the register lists of a bench, kind by kind. Knows no write-up: what those ask for is handed in. */
import { benchFigures } from './bench-figures.ts';
import { compileCarried } from './carried/carried-figures.ts';
import { compileChain } from './chain/chain-figures.ts';
import { pairFindings } from './displays/pair-findings.ts';
import { compileComparisons, standingFamilies } from './comparisons/compile-comparisons.ts';
import type { Family } from './comparisons/family.ts';
import type { Compilation, Contribution } from './compilation.ts';
import { findingsOf } from './findings/findings.ts';
import { betweenSessions } from './findings/inputs/between-sessions.ts';
import { located } from './located.ts';
import { compilePractice } from './practice/practice-figures.ts';
import { compileRateLaws } from './rate-law/rate-law-figures.ts';
import { findRateLaws, type ConfigurationLaw } from './rate-law/rate-laws.ts';
import { compileRepeats } from './repeats/repeat-figures.ts';
import { compileSettings } from './settings/compile-settings.ts';
import { variationFindings } from './variation/variation-findings.ts';

/**
 * In the order in which the register lists what they add.
 *
 * @param asked the families of comparisons that write-ups ask for besides those that stand
 */
export function contributionsOf(
  compilation: Compilation,
  laws: readonly ConfigurationLaw[],
  asked: (standing: readonly Family[]) => readonly Family[],
): readonly Contribution[] {
  const compilers: readonly (readonly [what: string, compile: (of: Compilation) => Contribution])[] = [
    [
      'what a session says by itself',
      ({ sessions: own }) => ({ figures: own.flatMap(({ figures }) => figures), findings: findingsOf(own) }),
    ],
    ['rate laws', (of) => compileRateLaws(of, of === compilation ? laws : findRateLaws(of))],
    [
      'displays side by side',
      ({ pairs }) => ({ figures: pairs.map(({ figure }) => figure), findings: pairFindings(pairs) }),
    ],
    ['the chain', compileChain],
    ['totals carried to another display', compileCarried],
    ['repeats', compileRepeats],
    ['counts', ({ bench: of }) => ({ figures: benchFigures(of), findings: [] })],
    [
      'comparisons',
      (of) => {
        const standing = standingFamilies(of.bench);
        return compileComparisons(of, standing, asked(standing));
      },
    ],
    ['effects of settings', compileSettings],
    ['what totals mean in practice', compilePractice],
    ['findings between sessions', ({ bench: of }) => ({ figures: [], findings: betweenSessions(of) })],
    ['variation', (own) => ({ figures: [], findings: variationFindings(own) })],
  ];
  return compilers.map(([what, compile]) => located(what, compile, compilation));
}
