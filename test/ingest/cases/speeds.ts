import type { ProblemCase } from './case.ts';

const FILE = 'data/speeds.yaml';
const SOUND = 'cart:\n  name: the camera cart\n  speed: 0.9 m/s\n';

/** Speeds of the publication's own. */
export const SPEED_CASES: readonly ProblemCase[] = [
  {
    name: 'nothing, when they are sound',
    changes: { [FILE]: `${SOUND}lunge:\n  name: a lunge\n  speed: 9 km/h\n` },
    lines: [],
  },
  {
    name: 'speeds that are none: another unit, none at all, faster than light',
    changes: {
      [FILE]: ['2 knots', '0 m/s', '400000000 m/s']
        .map((speed, index) => `a${index}:\n  name: it\n  speed: ${speed}\n`)
        .join(''),
    },
    lines: [
      `${FILE}:3:10  a0.speed  expected a speed, found "2 knots"; write 1.2 m/s or 5 km/h.`,
      `${FILE}:6:10  a1.speed  expected a speed, found "0 m/s"; write 1.2 m/s or 5 km/h.`,
      `${FILE}:9:10  a2.speed  expected a speed, found "400000000 m/s"; write 1.2 m/s or 5 km/h.`,
    ],
  },
  {
    name: 'a name that a published speed has, and a key that is missing',
    changes: { [FILE]: SOUND.replace('cart', 'walking') },
    lines: [
      `${FILE}:2:3  walking  a speed of your own is called by lower-case letters, digits and hyphens, and not walking, sprinting, falling or sound. Call it otherwise, such as camera-cart.`,
    ],
  },
  {
    name: 'a speed without a name',
    changes: { [FILE]: 'cart:\n  speed: 0.9 m/s\n' },
    lines: [`${FILE}:1:1  cart.name  this key is missing. Add it.`],
  },
];
