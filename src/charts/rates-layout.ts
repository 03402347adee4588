import type { Figure } from '../register/register.ts';
import { axisFromZero, placeOnAxis } from './axis.ts';
import { CHART_WIDTH, type PlacedText, type Variant } from './chart.ts';
import type { Drawing } from './render.ts';
import { textWidth, wrapText } from './text-width.ts';
import { bodyLook, DESCENT, HALF_X_HEIGHT, LINE_HEIGHT, TEXT_SIZE } from './theme.ts';

export interface RatesInput {
  /** Unique on the page: letters, digits, `-`, `_`. */
  readonly id: string;
  readonly title: string;
  readonly bodies: readonly BodyAtRates[];
}

export interface BodyAtRates {
  readonly name: string;
  /** Among all bodies: gives it its colour and mark. */
  readonly place: number;
  /** Slowest rate first. */
  readonly points: readonly { readonly rate: string; readonly rateHz: number; readonly figure: Figure }[];
}

const HEIGHT: Readonly<Record<Variant, number>> = { wide: 300, narrow: 260 };
const GAP = 8;
/** Marks of several bodies at one rate stand so far from each other, in px. */
const APART = 7;
const WIDEST_NAME: Readonly<Record<Variant, number>> = { wide: 150, narrow: 78 };
const LINES_PER_TICK = 2;

/** Places every mark and every text, for one variant. */
export function layOutRates({ bodies }: RatesInput, variant: Variant): Omit<Drawing, 'spec'> {
  const height = HEIGHT[variant];
  const all = bodies.flatMap(({ points }) => points);
  const yAxis = axisFromZero(
    all.flatMap(({ figure: { value, interval } }) => [value, interval?.high ?? value]),
    height,
    LINES_PER_TICK * LINE_HEIGHT,
  );
  const names = bodies.map(({ name }) => wrapText(name, WIDEST_NAME[variant], TEXT_SIZE));
  const left = Math.ceil(yAxis.labelWidth) + GAP;
  const right = Math.ceil(Math.max(...names.flat().map((line) => textWidth(line, TEXT_SIZE)))) + 2 * GAP;
  const width = CHART_WIDTH[variant] - left - right;

  const spread = (APART * (bodies.length - 1)) / 2;
  const rates = [...new Map(all.map(({ rate, rateHz }) => [rate, rateHz]))].sort(([, a], [, b]) => a - b);
  const logs = rates.map(([, rateHz]) => Math.log(rateHz));
  const [low = 0, high = 1] = [logs[0], logs.at(-1)];
  const room = width - 2 * spread - 2 * GAP;
  const xOf = (rateHz: number): number =>
    spread + GAP + (high > low ? ((Math.log(rateHz) - low) / (high - low)) * room : room / 2);

  const placed = bodies.map(({ place, points }, index) => {
    const aside = (index - (bodies.length - 1) / 2) * APART;
    const look = bodyLook(place);
    return points.map(({ rateHz, figure: { value, interval } }) => ({
      x: xOf(rateHz) + aside,
      value,
      interval,
      ...look,
    }));
  });
  const ticks = placeNames(rates, xOf, height);
  const lowest = Math.max(...ticks.map(({ y }) => y), height + LINE_HEIGHT);
  const bottom = lowest + LINE_HEIGHT + DESCENT;
  const yOf = (value: number): number => height - placeOnAxis(yAxis, value, height);
  const texts: PlacedText[] = [
    ...ticks.map(({ text, x, y }): PlacedText => ({ text, x, y, align: 'center', weight: 400 })),
    { text: 'Total latency, ms', x: -left, y: -GAP - DESCENT, align: 'left', weight: 400 },
    { text: 'frames per second, logarithmic', x: width, y: bottom, align: 'right', weight: 400 },
    ...placeBodies(
      names.map((lines, index) => ({ lines, y: yOf(placed[index]?.at(-1)?.value ?? 0) })),
      height,
    ).map(({ text, y }): PlacedText => ({ text, x: width + GAP, y, align: 'left', weight: 400 })),
  ];
  return {
    width,
    height,
    padding: { left, right, top: GAP + DESCENT + TEXT_SIZE, bottom: bottom - height + DESCENT },
    params: { high: yAxis.domain[1], marks: yAxis.ticks, tickFormat: yAxis.format },
    data: {
      leaders: ticks.map(({ x, y }) => ({ x, top: 0, bottom: y - TEXT_SIZE })),
      segments: placed.flatMap((points) =>
        points.slice(1).flatMap(({ x, value, colour }, index) => {
          const before = points[index];
          return before === undefined ? [] : [{ x: before.x, x2: x, value: before.value, value2: value, colour }];
        }),
      ),
      intervals: placed
        .flat()
        .flatMap(({ x, interval, colour }) =>
          interval === undefined ? [] : [{ x, low: interval.low, high: interval.high, colour }],
        ),
      points: placed.flat().map(({ x, value, colour, shape }) => ({ x, value, colour, shape })),
      texts,
    },
  };
}

/** The name of each rate under it, one line lower where it would touch its neighbour. */
function placeNames(
  rates: readonly (readonly [name: string, rateHz: number])[],
  xOf: (rateHz: number) => number,
  height: number,
): readonly { readonly text: string; readonly x: number; readonly y: number }[] {
  const ends: number[] = [];
  return rates.map(([text, rateHz]) => {
    const half = textWidth(text, TEXT_SIZE) / 2;
    const x = xOf(rateHz);
    const free = ends.findIndex((end) => end <= x - half);
    const line = free === -1 ? ends.length : free;
    ends[line] = x + half + GAP;
    return { text, x, y: height + GAP + TEXT_SIZE + line * LINE_HEIGHT };
  });
}

/** Names beside the ends of their lines, pushed apart where they would touch; baselines. */
function placeBodies(
  names: readonly { readonly lines: readonly string[]; readonly y: number }[],
  height: number,
): readonly { readonly text: string; readonly y: number }[] {
  const sorted = names.toSorted((a, b) => a.y - b.y);
  const tops: number[] = [];
  let free = 0;
  for (const { lines, y } of sorted) {
    const top = Math.max(free, y - (lines.length * LINE_HEIGHT) / 2);
    tops.push(top);
    free = top + lines.length * LINE_HEIGHT;
  }
  // what ran out at the bottom moves up, and pushes the others before it
  let limit = height + LINE_HEIGHT / 2;
  for (let index = sorted.length - 1; index >= 0; index -= 1) {
    const tall = (sorted[index]?.lines.length ?? 1) * LINE_HEIGHT;
    tops[index] = Math.min(tops[index] ?? 0, limit - tall);
    limit = tops[index] ?? limit;
  }
  return sorted.flatMap(({ lines }, index) =>
    lines.map((text, line) => ({ text, y: (tops[index] ?? 0) + line * LINE_HEIGHT + LINE_HEIGHT / 2 + HALF_X_HEIGHT })),
  );
}
