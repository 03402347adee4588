import { readFileSync } from 'node:fs';

/**
 * Data sets of the NIST/ITL Statistical Reference Datasets (StRD), with the values NIST certifies.
 * Copied from the `.dat` files; NumAcc and SmLs01 follow the rules that generate them.
 */

/**
 * R's `datasets::morley$Speed` (km/s − 299000): 5 runs of 20. Michelso is the same data in the same order, in thousands
 * of km/s.
 */
export const MORLEY: readonly (readonly number[])[] = [
  [850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000, 960, 960],
  [960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800, 790, 760, 800],
  [880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840, 850, 840, 840, 840],
  [890, 810, 810, 820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880, 720, 840, 850, 850, 780],
  [890, 840, 780, 810, 760, 810, 790, 810, 820, 850, 870, 870, 810, 740, 810, 940, 950, 800, 810, 870],
];

export const MICHELSO: readonly number[] = MORLEY.flat().map((speed) => (speed + 299000) / 1000);

export const MAVRO: readonly number[] = [
  2.0018, 2.0017, 2.0018, 2.0019, 2.0018, 2.0017, 2.0015, 2.0014, 2.0015, 2.0015, 2.0017, 2.0018, 2.0018, 2.0019,
  2.0019, 2.0021, 2.002, 2.0016, 2.0014, 2.0013, 2.0013, 2.0015, 2.0015, 2.0016, 2.0015, 2.0014, 2.0013, 2.0014, 2.0015,
  2.0014, 2.0015, 2.0016, 2.0015, 2.0016, 2.0019, 2.002, 2.002, 2.0021, 2.0022, 2.0023, 2.0024, 2.0025, 2.0027, 2.0026,
  2.0026, 2.0026, 2.0027, 2.0026, 2.0025, 2.0024,
];

export const LEW: readonly number[] = [
  -213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21, -579, -52, 99,
  -543, -175, 162, -457, -346, 204, -300, -474, 164, -107, -572, -8, 83, -541, -224, 180, -420, -374, 201, -236, -531,
  83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90, 136, -472, -338, 202, -287, -477, 169,
  -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577, -13, 92, -534, -243, 194, -355, -465, 156, -81, -578,
  -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552, -164, 161, -460, -344, 205, -281, -504, 134, -28,
  -576, -118, 156, -437, -381, 200, -220, -540, 83, 11, -568, -160, 172, -414, -408, 188, -125, -572, -32, 139, -492,
  -321, 205, -262, -504, 142, -83, -574, 0, 48, -571, -106, 137, -501, -266, 190, -391, -406, 194, -186, -553, 83, -13,
  -577, -49, 103, -515, -280, 201, 300, -506, 131, -45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533, -235,
  187, -372, -442, 182, -147, -566, 25, 68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72, -550, -190, 172, -424,
  -385, 198, -218, -536, 96,
];

const pairs = (low: number, high: number, times: number): number[] =>
  Array.from({ length: times }, () => [low, high]).flat();

export const NUM_ACC_1: readonly number[] = [10000001, 10000003, 10000002];
export const NUM_ACC_2: readonly number[] = [1.2, ...pairs(1.1, 1.3, 500)];
export const NUM_ACC_3: readonly number[] = [1000000.2, ...pairs(1000000.1, 1000000.3, 500)];
export const NUM_ACC_4: readonly number[] = [10000000.2, ...pairs(10000000.1, 10000000.3, 500)];

/** Resistivity of silicon wafers, five instruments of five readings. */
export const SI_RSTV: readonly (readonly number[])[] = [
  [196.3052, 196.124, 196.189, 196.2569, 196.3403],
  [196.3042, 196.3825, 196.1669, 196.3257, 196.0422],
  [196.1303, 196.2005, 196.2889, 196.0343, 196.1811],
  [196.2795, 196.1748, 196.1494, 196.1485, 195.9885],
  [196.2119, 196.1051, 196.185, 196.0052, 196.209],
];

/** Nine groups of 21: the centre, then (centre − 0.1, centre + 0.1) ten times, each a decimal of one place. */
export const SM_LS_01: readonly (readonly number[])[] = [14, 13, 15, 13, 15, 13, 15, 13, 15].map((tenths) =>
  [tenths, ...pairs(tenths - 1, tenths + 1, 10)].map((value) => value / 10),
);

/** Norris: [x, y], calibration of ozone monitors. */
export const NORRIS: readonly (readonly [x: number, y: number])[] = readFileSync(
  new URL('../reference/data/norris.csv', import.meta.url),
  'utf8',
)
  .trimEnd()
  .split('\n')
  .slice(1)
  .map((line) => line.split(',').map(Number))
  .map(([x, y]) => [x ?? Number.NaN, y ?? Number.NaN] as const);

/** NoInt1: [x, y], a line through the origin. */
export const NO_INT_1: readonly (readonly [x: number, y: number])[] = Array.from(
  { length: 11 },
  (_, i) => [60 + i, 130 + i] as const,
);
