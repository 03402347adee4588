import type { Ladder, Plan, Wanted } from '../analysis/plan.ts';
import type { Design } from '../analysis/precision.ts';
import { describeSignificant, roundTo } from '../register/text.ts';
import { plural } from '../register/provenance.ts';

/** `3 clips of 8 readings each, at least 2.4 s apart`. */
export function describeDesign({ runs, readings, spacingMs }: Design): string {
  const spacing = `at least ${roundTo(spacingMs / 1000, 1)} s apart`;
  return runs === 1
    ? `one clip of ${plural(readings, 'reading')}, ${spacing}`
    : `${plural(runs, 'clip')} of ${plural(readings, 'reading')} each, ${spacing}`;
}

const DESIGN = /(?:(\d+) clips|one clip) of (\d+) readings?(?: each)?, at least (\d+(?:\.\d+)?) s apart/;

/** What `describeDesign` has written somewhere in a text; undefined where it has not. */
export function readDesign(text: string): Design | undefined {
  const found = DESIGN.exec(text);
  if (found === null) return undefined;
  const [, runs = '1', readings, seconds] = found;
  return { runs: Number(runs), readings: Number(readings), spacingMs: Math.round(Number(seconds) * 1000) };
}

/** What the plan gives, and whether that is what was wanted, in sentences. */
export function describePlan(plan: Plan, wanted: Wanted): readonly string[] {
  const width = `Expected half-width of the 95 % interval: ${describeSignificant(plan.halfWidthMs, 2, 'ms')}.`;
  const goal =
    wanted.kind === 'half-width'
      ? plan.reached
        ? []
        : [`No plan tried gets to ${ms(wanted.halfWidthMs)}: this is the best of them. ${describeFloor(plan)}`]
      : [
          `A difference of ${ms(wanted.differenceMs)} between two such sessions is seen in ${roundTo((plan.power ?? 0) * 100, 0)} % of cases.`,
          ...(plan.reached
            ? []
            : [`No plan tried gets to ${roundTo(wanted.power * 100, 0)} %: this is the best of them.`]),
        ];
  return [width, ...goal];
}

/** A line per rung, the one to take marked; then where more stops paying. */
export function describeLadder({ rungs, recommended, isEnough }: Ladder): readonly string[] {
  const rows = rungs.map((rung) => ({
    rung,
    readings: String(rung.runs * rung.readings),
    width: `± ${describeSignificant(rung.halfWidthMs, 2, 'ms')}`,
  }));
  const across = Math.max(...rows.map(({ readings }) => readings.length));
  const after = rungs[rungs.indexOf(recommended) + 1];
  return [
    'Readings in all, and the half-width of the 95 % interval that they give:',
    ...rows.map(
      ({ rung, readings, width }) =>
        `${rung === recommended ? '→' : ' '} ${readings.padStart(across)}  ${width.padEnd(9)} ${describeDesign(rung)}`,
    ),
    after === undefined
      ? 'The arrow marks what is planned.'
      : isEnough
        ? `The arrow marks what is planned: the next step narrows the interval by less than a tenth. ${describeFloor(recommended)}`
        : 'The arrow marks what is planned, about an evening’s work; more narrows the interval further.',
  ];
}

function describeFloor({ floorMs }: Plan): string {
  return floorMs > 0
    ? `What the rig itself leaves open is a standard uncertainty of ${describeSignificant(floorMs, 2, 'ms')}; measure its rows, readout and scan-out to narrow it.`
    : 'Rates that stay locked leave nothing to gain within a clip; change the timer’s or the observer’s rate.';
}

function ms(value: number): string {
  return `${Number(value.toPrecision(6))} ms`;
}
