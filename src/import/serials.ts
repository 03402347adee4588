/** Days and times as spreadsheets store them: a number of days, of which the fraction is the time of day (ECMA-376-1, 18.17.4). */

const DAY_MS = 86_400_000;
/** The last day that does not exist, 1900-02-29, has the number 60; days before it are one off. */
const LAST_FALSE_DAY = 60;

/** `2011-07-05` of 40729, or of 39267 where days are counted from 1904; undefined before March 1900. */
export function serialDay(serial: number, date1904: boolean): string | undefined {
  const day = Math.floor(serial);
  if (!date1904 && day <= LAST_FALSE_DAY) return undefined;
  const first = date1904 ? Date.UTC(1904, 0, 1) : Date.UTC(1899, 11, 30);
  return new Date(first + day * DAY_MS).toISOString().slice(0, 10);
}

export interface TimeFormat {
  readonly hasDay: boolean;
  readonly hasSeconds: boolean;
  /** Decimals of a second that it shows. */
  readonly decimals: number;
}

/** What a number format says about times; undefined where it shows plain numbers. */
export function timeFormat(code: string): TimeFormat | undefined {
  const bare = (code.split(';')[0] ?? '')
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .replace(/\[(?![hms]+\])[^\]]*\]/gi, '')
    .toLowerCase();
  const [hasDay, hasSeconds, hasHours] = [/[yd]/.test(bare), bare.includes('s'), bare.includes('h')];
  if (!/^general$/.test(bare) && (hasDay || hasSeconds || hasHours || /\[m+\]/.test(bare)))
    return { hasDay, hasSeconds, decimals: /s\]?\.(0+)/.exec(bare)?.[1]?.length ?? 0 };
  return undefined;
}
