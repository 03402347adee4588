/** Rows of benches that do not behave as the model says, and of more readings, clips and devices than usual. */
import { rate, rateHz, type Rate } from '../../src/model/rate.ts';
import { rowOf, type Row, type Setup } from './rows.ts';

const [NTSC_24, NTSC_30, NTSC_60] = [rate(24000, 1001), rate(30000, 1001), rate(60000, 1001)];
const observing = (observer: Rate): NonNullable<Setup['observer']> => ({
  rate: observer,
  exposureMs: 500 / rateHz(observer),
});

interface Fault extends Omit<Setup, 'runs' | 'readings'> {
  /** Clips, and readings in each. */
  readonly takes: readonly (readonly [runs: number, readings: number])[];
  readonly spacingsMs?: readonly number[];
}

const FAULTY: readonly Fault[] = [
  ...[rate(25), NTSC_60].flatMap((body): Fault[] => [
    {
      name: `${rateHz(body).toFixed(2)}: buffer zero or one frame deep, drawn per clip`,
      body,
      world: { deeperRuns: 0.5 },
      takes: [
        [1, 10],
        [2, 10],
        [3, 10],
        [5, 3],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: delay changes per clip, T_d/4`,
      body,
      world: { betweenRunsFrames: 0.25 },
      takes: [
        [1, 10],
        [2, 10],
        [3, 10],
        [5, 10],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: delay changes per clip, T_d/2`,
      body,
      world: { betweenRunsFrames: 0.5 },
      takes: [
        [2, 10],
        [3, 10],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: frames jitter by T_d/4`,
      body,
      world: { jitterFrames: 0.25 },
      takes: [
        [1, 10],
        [3, 10],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: one frame in 20 repeated`,
      body,
      world: { repeated: 0.05 },
      takes: [[3, 10]],
    },
    {
      name: `${rateHz(body).toFixed(2)}: one frame in five repeated`,
      body,
      world: { repeated: 0.2 },
      takes: [
        [1, 20],
        [3, 10],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: readings at exactly regular steps`,
      body,
      world: { spacingScatter: 0 },
      takes: [
        [1, 10],
        [3, 8],
      ],
      spacingsMs: [500, 1000, 5000],
    },
    {
      name: `${rateHz(body).toFixed(2)}: one stamp misread by 300 ms`,
      body,
      world: { misreadMs: 300 },
      takes: [[1, 10]],
    },
    {
      name: `${rateHz(body).toFixed(2)}: one stamp misread by 1000 ms`,
      body,
      world: { misreadMs: 1000 },
      takes: [
        [1, 10],
        [3, 6],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: blended digits, older or newer read`,
      body,
      world: { blendedMs: 10 },
      takes: [[3, 10]],
    },
    {
      name: `${rateHz(body).toFixed(2)}: few readings`,
      body,
      takes: [
        [1, 2],
        [1, 3],
        [2, 2],
      ],
    },
    {
      name: `${rateHz(body).toFixed(2)}: three clips`,
      body,
      takes: [
        [3, 10],
        [3, 20],
      ],
    },
  ]),
  {
    name: '30000/1001, stated as 30',
    body: rate(30),
    world: { bodyHz: rateHz(NTSC_30) },
    takes: [[3, 10]],
  },
  {
    name: '60000/1001, stated as 60',
    body: rate(60),
    world: { bodyHz: rateHz(NTSC_60) },
    takes: [[3, 10]],
  },
  ...[rate(30), rate(60)].map(
    (observer): Fault => ({
      name: `60000/1001, observer ${rateHz(observer)}/s`,
      body: NTSC_60,
      observer: observing(observer),
      takes: [
        [3, 20],
        [1, 40],
      ],
    }),
  ),
  ...[rate(60), NTSC_60].map(
    (freeDisplay): Fault => ({
      name: `25, display on its own clock at ${rateHz(freeDisplay).toFixed(2)}`,
      body: rate(25),
      freeDisplay,
      takes: [[3, 20]],
    }),
  ),
  {
    name: '60000/1001, display on its own clock at 60',
    body: NTSC_60,
    freeDisplay: rate(60),
    takes: [[3, 20]],
  },
  {
    name: '60000/1001, observer 240/s',
    body: NTSC_60,
    observer: observing(rate(240)),
    takes: [[1, 60]],
  },
  { name: '24000/1001', body: NTSC_24, takes: [[1, 100]] },
  { name: '60000/1001', body: NTSC_60, takes: [[1, 300]], spacingsMs: [500] },
  { name: '25, clocks ± 100 ppm', body: rate(25), world: { clockPpm: 100 }, takes: [[1, 100]] },
  ...[
    { what: 'at exactly regular steps', world: { spacingScatter: 0 } },
    { what: 'frames jitter by T_d/4', world: { jitterFrames: 0.25 } },
  ].map(
    ({ what, world }): Fault => ({
      name: `25, frames counted at 240/s: ${what}`,
      body: rate(25),
      method: 'frame-count',
      observer: observing(rate(240)),
      world,
      takes: [
        [1, 10],
        [3, 8],
      ],
    }),
  ),
  {
    name: '25, frames counted at 240/s, display on its own clock at 60',
    body: rate(25),
    method: 'frame-count',
    observer: observing(rate(240)),
    freeDisplay: rate(60),
    takes: [[3, 8]],
  },
];

export const FAULTS: readonly Row[] = FAULTY.flatMap(({ takes, spacingsMs = [1300], ...setup }) =>
  takes.flatMap(([runs, readings]) =>
    spacingsMs.map((spacingMs): Row => ({ ...rowOf({ ...setup, runs, readings }, spacingMs), fault: true })),
  ),
);
