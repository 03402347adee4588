/**
 * Characters that would steer a terminal or turn the direction of what is read after them: the controls of
 * ISO/IEC 6429 (C0 but for tab and line ends, DEL, C1), and the bidirectional embeddings, overrides and
 * isolates of Unicode (UAX #9). The marks that single words of some scripts need are none of these.
 */
const STEERING = /(?![\t\n\r])[\p{Cc}\u202A-\u202E\u2066-\u2069]/u;

export interface Steering {
  /** 1-based, in the text. */
  readonly line: number;
  readonly column: number;
  /** `U+001B`. */
  readonly name: string;
}

/** The first such character of a text, if it has one. */
export function findSteering(text: string): Steering | undefined {
  const match = STEERING.exec(text);
  if (match === null) return undefined;
  const before = text.slice(0, match.index).split(/\r\n|[\n\r]/);
  return {
    name: `U+${(match[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
    line: before.length,
    column: (before.at(-1) ?? '').length + 1,
  };
}
