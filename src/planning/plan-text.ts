import type { Ladder, Plan, Wanted } from '../analysis/plan.ts';
import type { Level } from '../analysis/variation.ts';
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

/** Of what the interval speaks: `, for the clips that are read`. */
const SPEAKS_OF: Readonly<Record<Level, string>> = {
  clips: ', for the clips that are read',
  day: ', for their day',
  condition: ', for the condition on any day',
};

/** What the plan gives, and whether that is what was wanted, in sentences. */
export function describePlan(plan: Plan, wanted: Wanted): readonly string[] {
  const width = `Expected half-width of the 95 % interval${SPEAKS_OF[plan.speaksOf]}: ${describeSignificant(plan.halfWidthMs, 2, 'ms')}${plan.twoDaysMs === undefined ? '' : `; of two such sessions on different days, ${describeSignificant(plan.twoDaysMs, 2, 'ms')}`}.`;
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

/** A line per rung, the one to take marked; then where more stops paying, and whether another day is worth more. */
export function describeLadder({ rungs, recommended, isEnough }: Ladder): readonly string[] {
  const rows = rungs.map((rung) => ({
    rung,
    readings: String(readingsOf(rung)),
    width: [rung.halfWidthMs, ...(rung.twoDaysMs === undefined ? [] : [rung.twoDaysMs])]
      .map((ms) => `± ${describeSignificant(ms, 2, 'ms')}`.padEnd(9))
      .join(' '),
  }));
  const across = Math.max(...rows.map(({ readings }) => readings.length));
  const after = rungs[rungs.indexOf(recommended) + 1];
  return [
    `Readings in all, and the half-width of the 95 % interval that they give${SPEAKS_OF[recommended.speaksOf]}${recommended.twoDaysMs === undefined ? ':' : '; then with as many on another day:'}`,
    ...rows.map(
      ({ rung, readings, width }) =>
        `${rung === recommended ? '→' : ' '} ${readings.padStart(across)}  ${width} ${describeDesign(rung)}`,
    ),
    after === undefined
      ? 'The arrow marks what is planned.'
      : isEnough
        ? `The arrow marks what is planned: the next step narrows the interval by less than a tenth. ${describeFloor(recommended)}`
        : 'The arrow marks what is planned, about an evening’s work; more narrows the interval further.',
    ...describeRepeat(rungs, recommended),
  ];
}

/** Set against what as many readings in all give on one day, or the most that were tried. */
function describeRepeat(rungs: readonly Plan[], recommended: Plan): readonly string[] {
  const { twoDaysMs } = recommended;
  if (twoDaysMs === undefined) return [];
  const asMany = rungs.find((rung) => readingsOf(rung) >= 2 * readingsOf(recommended)) ?? rungs.at(-1) ?? recommended;
  const [twice, once] = [twoDaysMs, asMany.halfWidthMs].map((ms) => `± ${describeSignificant(ms, 2, 'ms')}`);
  return twoDaysMs < asMany.halfWidthMs
    ? [
        `Another day is worth more than more clips: as many again then give ${twice}, ${readingsOf(asMany)} readings on one day ${once}. Plan the second session with --repeat.`,
      ]
    : [`More clips are worth more than another day: ${readingsOf(asMany)} readings on one day give ${once}.`];
}

function readingsOf({ runs, readings }: Plan): number {
  return runs * readings;
}

/** What no further reading takes away: the rig's own part where it is most of it, else days, else rates in step. */
function describeFloor({ floorMs, halfWidthMs, twoDaysMs }: Plan): string {
  if (2 * floorMs > halfWidthMs / 3)
    return `What the rig itself leaves open is a standard uncertainty of ${describeSignificant(floorMs, 2, 'ms')}; measure its rows, readout and scan-out to narrow it.`;
  return twoDaysMs === undefined
    ? 'Rates that stay locked leave nothing to gain within a clip; change the timer’s or the observer’s rate.'
    : 'What is left is mostly how days differ.';
}

function ms(value: number): string {
  return `${Number(value.toPrecision(6))} ms`;
}
