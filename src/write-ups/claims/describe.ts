import { QUANTITY_ASSERTIONS } from './assertions.ts';
import type { Claim } from './claim.ts';

/** What a claim asserts, in words: `at least 100 ms`, `the lowest of these`. Of one assertion, or of all. */
export function describeAssertions({ quantities, ranks, verdict }: Claim, only?: string): string {
  const all: readonly (readonly [name: string, words: string])[] = [
    ...quantities.map(
      ({ assertion, quantity }) => [assertion, QUANTITY_ASSERTIONS[assertion].words(quantity.text)] as const,
    ),
    ...ranks.map(
      ({ assertion }) =>
        [
          assertion,
          assertion === 'lowestOf' ? 'the lowest, told from every other' : 'the highest, told from every other',
        ] as const,
    ),
    ...(verdict === undefined ? [] : [['verdict', `verdict: ${verdict}`] as const]),
  ];
  return all
    .filter(([name]) => only === undefined || name === only)
    .map(([, words]) => words)
    .join(', ');
}
