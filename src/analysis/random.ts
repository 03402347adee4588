/**
 * A seeded generator of uniform numbers, the same in every JavaScript engine: MT19937.
 *
 * Source: M. Matsumoto and T. Nishimura, "Mersenne Twister: a 623-dimensionally equidistributed uniform
 * pseudo-random number generator", ACM TOMACS 8(1), 1998, with the authors' 2002 initialisation. ISO C++
 * publishes a check value for it ([rand.predef]): seeded with 5489, its 10 000th word is 4123659995.
 */
export interface Random {
  /** A 32-bit word, 0 to 2³² − 1. */
  readonly word: () => number;
  /** Uniform on [0, 1), in steps of 2⁻³². */
  readonly uniform: () => number;
  /** Uniform on [low, high). */
  readonly between: (low: number, high: number) => number;
}

const SIZE = 624;
const MIDDLE = 397;

/**
 * A generator that starts from `seed`, an integer from 0 to 2³² − 1.
 *
 * @example seededRandom(1).uniform() // 0.417022004…
 */
export function seededRandom(seed: number): Random {
  if (!Number.isInteger(seed) || seed < 0 || seed > 0xffff_ffff) {
    throw new RangeError(`a seed is an integer from 0 to 4294967295, not ${seed}`);
  }
  const state = new Uint32Array(SIZE);
  state[0] = seed;
  for (let i = 1; i < SIZE; i += 1) {
    const previous = state[i - 1]! ^ (state[i - 1]! >>> 30);
    state[i] = Math.imul(1_812_433_253, previous) + i;
  }
  let next = SIZE;

  const word = (): number => {
    if (next === SIZE) {
      twist(state);
      next = 0;
    }
    let y = state[next]!;
    next += 1;
    y ^= y >>> 11;
    y ^= (y << 7) & 0x9d2c_5680;
    y ^= (y << 15) & 0xefc6_0000;
    y ^= y >>> 18;
    return y >>> 0;
  };
  const uniform = (): number => word() / 0x1_0000_0000;
  return { word, uniform, between: (low, high) => low + (high - low) * uniform() };
}

function twist(state: Uint32Array): void {
  for (let i = 0; i < SIZE; i += 1) {
    const y = (state[i]! & 0x8000_0000) | (state[(i + 1) % SIZE]! & 0x7fff_ffff);
    state[i] = state[(i + MIDDLE) % SIZE]! ^ (y >>> 1) ^ (y & 1 ? 0x9908_b0df : 0);
  }
}
