import type { Figure, PrintedFigure } from './register.ts';
import { describeCount, describeInterval } from './text.ts';

/** One line that travels with a figure: `Total latency, 95 % interval 292.0 to 309.6 ms, 10 readings in 1 run`. */
export function describeProvenance({ label, interval, unit, readings, runs, excluded }: PrintedFigure): string {
  return [label, interval && describeCoverage(interval, unit), describeBasis({ readings, runs, excluded })]
    .filter(Boolean)
    .join(', ');
}

/** `95 % interval 292.0 to 309.6 ms`. */
export function describeCoverage({ low, high, level }: NonNullable<Figure['interval']>, unit: string): string {
  return `${describeCoverageLevel(level)} interval ${describeInterval(low, high, unit)}`;
}

/** `95 %`. */
export function describeCoverageLevel(level: number): string {
  return `${Number((level * 100).toFixed(2))} %`;
}

/** `10 readings in 1 run, 1 excluded`. */
export function describeBasis({ readings, runs, excluded }: Pick<Figure, 'readings' | 'runs' | 'excluded'>): string {
  const basis = `${plural(readings, 'reading')} in ${plural(runs, 'run')}`;
  return excluded > 0 ? `${basis}, ${describeCount(excluded)} excluded` : basis;
}

/** `1 reading`, `10 readings`. */
export function plural(count: number, noun: string): string {
  return `${describeCount(count)} ${noun}${count === 1 ? '' : 's'}`;
}
