/** The budget of a figure as published: text of every component, of the corrections, and of the whole. */
import { describeCoverageLevel } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { capitalize, describeSignificant, MINUS, placeOfUncertainty, roundTo } from '../register/text.ts';

export interface BudgetRow {
  readonly name: string;
  /** Whether other sessions have the same deviation, in words. */
  readonly shared: string;
  readonly type: string;
  readonly distribution: string;
  readonly uncertainty: string;
  readonly share: string;
}

export interface BudgetText {
  readonly rows: readonly BudgetRow[];
  readonly total: { readonly uncertainty: string; readonly expanded: string };
  /** One sentence per correction, and one with the value before and after; empty where nothing was corrected. */
  readonly corrections: readonly string[];
}

const SHARED_BY: Readonly<Record<string, string>> = {
  rig: 'the same in every session on this rig',
  instrument: 'the same in every session with this instrument',
  display: 'the same in every session with this display',
};

/** Largest component first. */
export function describeBudget({
  components = [],
  corrections = [],
  uncorrected,
  value,
  unit,
  standardUncertainty = 0,
  coverageFactor,
  interval,
}: Figure): BudgetText {
  const rows = components
    .toSorted((a, b) => b.share - a.share)
    .map(
      (component): BudgetRow => ({
        name: component.name,
        shared: component.shared === null ? '' : (SHARED_BY[component.shared.split(':')[0] ?? ''] ?? ''),
        type: component.type,
        distribution: component.distribution,
        uncertainty: describeSignificant(component.standardUncertainty, 2, unit),
        share: describeShare(component.share),
      }),
    );
  const half = interval === undefined ? 0 : (interval.high - interval.low) / 2;
  return {
    rows,
    total: {
      uncertainty: describeSignificant(standardUncertainty, 2, unit),
      expanded: `Expanded uncertainty U = ${describeSignificant(half, 2, unit)} at ${describeCoverageLevel(interval?.level ?? 0)} coverage${coverageFactor === undefined ? '' : `, coverage factor k = ${roundTo(coverageFactor, 2)}`}.`,
    },
    corrections: describeCorrections(corrections, uncorrected, value, half, unit),
  };
}

function describeCorrections(
  corrections: NonNullable<Figure['corrections']>,
  uncorrected: number | undefined,
  value: number,
  half: number,
  unit: string,
): readonly string[] {
  const applied = corrections.filter((correction) => correction.value !== 0);
  if (applied.length === 0 || uncorrected === undefined) return [];
  const place = placeOfUncertainty(half);
  const each = applied.map(
    ({ name, value: by }) =>
      `${capitalize(name)}: ${by < 0 ? MINUS : '+'}${roundTo(Math.abs(by), Math.max(place, 2))} ${unit}.`,
  );
  return [
    ...each,
    `Before these corrections the value is ${roundTo(uncorrected, place)} ${unit}, after them ${roundTo(value, place)} ${unit}.`,
  ];
}

/** `62 %`, `under 1 %`, `0 %`. */
function describeShare(share: number): string {
  if (share === 0) return '0 %';
  return share < 0.005 ? 'under 1 %' : `${roundTo(share * 100, 0)} %`;
}
