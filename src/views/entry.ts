import { describeCoverage } from '../register/provenance.ts';
import type { Figure } from '../register/register.ts';
import { describeSignificant, roundTo } from '../register/text.ts';

/** What stands under a figure's value in its entry, a line each: interval, standard uncertainty, degrees of freedom. */
export function describeEntry({ unit, standardUncertainty, degreesOfFreedom, interval }: Figure): readonly string[] {
  const uncertainty =
    standardUncertainty === undefined
      ? ''
      : `standard uncertainty ${describeSignificant(standardUncertainty, 2, unit)}`;
  const freedom = describeDegreesOfFreedom(degreesOfFreedom);
  return [
    interval === undefined ? '' : describeCoverage(interval, unit),
    uncertainty,
    freedom && `degrees of freedom ${freedom}`,
  ]
    .filter(Boolean)
    .map(keepUnits);
}

/** No line break between a number and its unit. */
function keepUnits(line: string): string {
  return line.replace(/(\d) (?=\p{L}|%)/gu, '$1\u00a0');
}

/** `61.3`, `∞`; one decimal below a hundred. */
export function describeDegreesOfFreedom(degreesOfFreedom: number | null | undefined): string {
  if (degreesOfFreedom === undefined) return '';
  if (degreesOfFreedom === null) return '∞';
  return roundTo(degreesOfFreedom, degreesOfFreedom < 100 && !Number.isInteger(degreesOfFreedom) ? 1 : 0);
}
