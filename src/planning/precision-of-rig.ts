import { precisionTable, advisedSpacingMs, type Design, type Precision, type Setup } from '../analysis/precision.ts';
import type { Bench, Rig } from '../model/bench.ts';
import { rateKey, rateLabel, type Rate } from '../model/rate.ts';
import type { Lookup } from '../register/lookup.ts';
import { plural } from '../register/provenance.ts';
import { describeSignificant } from '../register/text.ts';
import { methodOfRig, setupOfRig } from './setup-of-rig.ts';

export interface PrecisionPoint {
  readonly readings: number;
  readonly halfWidth: number;
  readonly text: string;
}

export interface PrecisionOfRig {
  /** `59.94 frames/s`: the rate at which most sessions on the rig were taken. */
  readonly rate: string;
  /** One line per way of taking readings; a point per number of readings in all. */
  readonly lines: readonly { readonly way: string; readonly points: readonly PrecisionPoint[] }[];
}

/** In one go, as comes natural; spread over the beat of the rates; and restarted as well. Without a spacing: the advised one. */
const WAYS: readonly { readonly runs: number; readonly spacingMs?: number }[] = [
  { runs: 1, spacingMs: 300 },
  { runs: 1 },
  { runs: 4 },
];
const READINGS_IN_ALL = [8, 16, 32];
/** Enough for two digits; more would slow every build. */
const TRIALS = 6;

/** What is simulated for a line of the table; it depends on its input alone, so that it can be remembered. */
export type PrecisionTable = (input: {
  readonly setup: Setup;
  readonly designs: readonly Design[];
}) => readonly Precision[];

export const simulateTable: PrecisionTable = ({ setup, designs }) => precisionTable(setup, designs, TRIALS);

/**
 * How the half-width of a session's interval falls with readings and clips on this rig, by simulation with the
 * model that analyses real sessions. Undefined for a rig without a session yet.
 */
export function precisionOfRig(
  bench: Bench,
  rig: Rig,
  find: Lookup,
  table: PrecisionTable = simulateTable,
): PrecisionOfRig | undefined {
  const rate = commonestRate(bench, rig);
  if (rate === undefined) return undefined;
  const setup = setupOfRig(rig, rate, methodOfRig(rig), bench, find);
  const lines = WAYS.map(({ runs, spacingMs }) => {
    const designs = READINGS_IN_ALL.map(
      (all): Design => ({ runs, readings: all / runs, spacingMs: spacingMs ?? advisedSpacingMs(setup, all / runs) }),
    );
    const points = table({ setup, designs }).map(
      ({ readings, halfWidthMs }): PrecisionPoint => ({
        readings: readings * runs,
        halfWidth: halfWidthMs,
        text: `± ${describeSignificant(halfWidthMs, 2, 'ms')}`,
      }),
    );
    return {
      way: `${plural(runs, 'clip')}, ${spacingMs === undefined ? 'spread' : `every ${spacingMs / 1000} s`}`,
      points,
    };
  });
  return { rate: `${rateLabel(rate)} frames/s`, lines };
}

function commonestRate({ sessions }: Bench, rig: Rig): Rate | undefined {
  const groups = [
    ...Map.groupBy(
      sessions.filter((session) => session.rig === rig.id).map(({ rate }) => rate),
      rateKey,
    ).values(),
  ];
  return groups.sort((a, b) => b.length - a.length)[0]?.[0];
}
