/**
 * Frame and refresh rates as exact rationals.
 *
 * 23.976 is a name, not a number: the rate is 24000/1001 Hz (ITU-R BT.709-6 part 2 gives the picture
 * rates 60, 50, 30, 25 and 24 Hz, and 60, 30 and 24 Hz divided by 1.001).
 */
export interface Rate {
  /** Frames, a positive safe integer; the fraction is in lowest terms. */
  readonly frames: number;
  /** Seconds, a positive safe integer. */
  readonly seconds: number;
}

const NTSC_BASES = [24, 30, 48, 60, 72, 90, 96, 120, 144, 240];
const FRACTION = /^(\d{1,9})\s*\/\s*(\d{1,9})$/;
const DECIMAL = /^\d{1,6}(?:\.\d{1,6})?$/;

/** A rate in lowest terms. Throws a RangeError unless both are positive safe integers. */
export function rate(frames: number, seconds = 1): Rate {
  if (!Number.isSafeInteger(frames) || !Number.isSafeInteger(seconds) || frames <= 0 || seconds <= 0) {
    throw new RangeError(`a rate is a ratio of positive integers, not ${frames}/${seconds}`);
  }
  const divisor = greatestCommonDivisor(frames, seconds);
  return { frames: frames / divisor, seconds: seconds / divisor };
}

/**
 * Reads `24`, `23.976`, `23.98`, `24000/1001`, `59.94p` or `60 Hz`; undefined when it is none of these.
 *
 * A decimal that is a base rate divided by 1.001, rounded or cut at its own number of decimals (two or
 * more), means that exact rate; any other decimal means itself (59.9 is 599/10, 60.02 is 3001/50).
 */
export function parseRate(text: string): Rate | undefined {
  const bare = text.trim().replace(/\s*(?:p|fps|hz)$/i, '');
  const fraction = FRACTION.exec(bare);
  if (fraction) {
    const [frames, seconds] = [Number(fraction[1]), Number(fraction[2])];
    return frames > 0 && seconds > 0 ? rate(frames, seconds) : undefined;
  }
  if (!DECIMAL.test(bare) || Number(bare) === 0) return undefined;
  const decimals = bare.split('.')[1]?.length ?? 0;
  if (decimals >= 2) {
    for (const base of NTSC_BASES) {
      const exact = (base * 1000) / 1001;
      const scale = 10 ** decimals;
      const rounded = (Math.round(exact * scale) / scale).toFixed(decimals);
      const cut = (Math.floor(exact * scale) / scale).toFixed(decimals);
      if (bare === rounded || bare === cut) return rate(base * 1000, 1001);
    }
  }
  return rate(Number(bare.replace('.', '')), 10 ** decimals);
}

/** Frames per second. */
export function rateHz({ frames, seconds }: Rate): number {
  return frames / seconds;
}

/** Length of one frame or refresh, in milliseconds. */
export function intervalMs({ frames, seconds }: Rate): number {
  return (1000 * seconds) / frames;
}

/** The exact fraction, for machines: `24000/1001`, `25`. Equal rates give equal text. */
export function rateKey({ frames, seconds }: Rate): string {
  return seconds === 1 ? String(frames) : `${frames}/${seconds}`;
}

/** The name people use: `23.976`, `59.94`, `25`, `60.02`. */
export function rateLabel(value: Rate): string {
  if (value.seconds === 1) return String(value.frames);
  const decimals = value.seconds === 1001 && value.frames < 25_000 ? 3 : 2;
  return String(Number(rateHz(value).toFixed(decimals)));
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
