import type { Bench, OwnSpeed } from '../../model/bench.ts';
import { capitalize } from '../text.ts';

/** What moves or falls while a picture is on its way: how far, and from whom that is known. No claim about safety. */
export interface Movement {
  /** In ids: `moved/walking/BODY`. */
  readonly id: string;
  /** What it is called by its entry: `Someone walking`. */
  readonly name: string;
  /** Metres after this many seconds, rising with them. */
  metres(seconds: number): number;
  /** Metres per second then: how far an uncertainty of the time moves it. */
  metresPerSecond(seconds: number): number;
  /** The formula, in words. */
  readonly inWords: string;
  /** What the source says, with its name. */
  readonly source: string;
}

const steady = (
  speed: number,
  { id, name, inWords, source }: Pick<Movement, 'id' | 'name' | 'inWords' | 'source'>,
): Movement => ({
  id,
  name,
  metres: (seconds) => speed * seconds,
  metresPerSecond: () => speed,
  inWords,
  source,
});

/** International foot of 1959, in metres, exact. */
const FOOT = 0.3048;
/** Standard acceleration of gravity, 3rd General Conference on Weights and Measures (1901), m/s², exact. */
const GRAVITY = 9.80665;

/** Those of the publication's own after the published ones. */
export function movementsOf({ speeds }: Bench): readonly Movement[] {
  return [...MOVEMENTS, ...(speeds?.list.map(ownMovement) ?? [])];
}

export function ownMovement({ id, name, stated, metresPerSecond, source = 'the author’s own' }: OwnSpeed): Movement {
  return steady(metresPerSecond, {
    id,
    name: capitalize(name),
    inWords: `The total latency times ${stated}.`,
    source: `${name} at ${stated} (${source})`,
  });
}

/** Walking, sprinting and sound: from memory of the sources named. */
export const MOVEMENTS: readonly Movement[] = [
  steady(3.5 * FOOT, {
    id: 'walking',
    name: 'Someone walking',
    inWords: 'The total latency times 3.5 ft/s.',
    source: 'walking at 3.5 ft/s, the pace that crossing signals are timed for (MUTCD 2009, 4E.06)',
  }),
  steady(100 / 9.58, {
    id: 'sprinting',
    name: 'A sprinter',
    inWords: 'The total latency times 100 m over 9.58 s.',
    source: 'sprinting 100 m in 9.58 s, the world record (World Athletics, 2009)',
  }),
  {
    id: 'falling',
    name: 'A ball let go',
    metres: (seconds) => (GRAVITY * seconds ** 2) / 2,
    metresPerSecond: (seconds) => GRAVITY * seconds,
    inWords: 'Half the standard acceleration of gravity, 9.80665 m/s², times the square of the total latency; no air.',
    source:
      'falling from rest at 9.80665 m/s², without air (standard gravity, 3rd General Conference on Weights and Measures, 1901)',
  },
  steady(343.2, {
    id: 'sound',
    name: 'Sound',
    inWords: 'The total latency times 343.2 m/s.',
    source: 'sound at 343.2 m/s, in air of 20 °C (ISO 9613-1:1993)',
  }),
];
