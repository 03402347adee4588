import type { Reading } from '../model/bench.ts';

export interface DigitVariant {
  /** The cell as it would be written: `source 00:12.217`. */
  readonly text: string;
  readonly reading: Reading;
}

/** Every way to change one digit of a cell: by so many units of its place, the latency changes by as much. */
export function digitVariants(row: Reading): readonly DigitVariant[] {
  const { latencyMs = 0 } = row;
  return ['source', 'shown', 'frames', 'latency'].flatMap((column) => {
    const cell = row.cells[column] ?? '';
    const unitMs = column === 'frames' && row.frames ? latencyMs / row.frames : column === 'latency' ? 1 : 1000;
    return [...cell].flatMap((char, at) => {
      if (!/\d/.test(char)) return [];
      const place = placeOf(cell, at) * unitMs;
      return [...'0123456789']
        .filter((digit) => digit !== char)
        .map((digit): DigitVariant => {
          const change = (Number(digit) - Number(char)) * place;
          const moved = latencyMs + (column === 'shown' ? -change : change);
          return {
            text: `${column} ${cell.slice(0, at)}${digit}${cell.slice(at + 1)}`,
            reading: {
              ...row,
              latencyMs: moved,
              ...(row.sourceMs === undefined || column !== 'source' ? {} : { sourceMs: row.sourceMs + change }),
              ...(row.shownMs === undefined || column !== 'shown' ? {} : { shownMs: row.shownMs + change }),
            },
          };
        })
        .filter(({ reading }) => (reading.latencyMs ?? -1) >= 0);
    });
  });
}

/** What one unit of the digit at this place is worth, in the unit of the last part of the cell: 10 for the tens. */
function placeOf(cell: string, at: number): number {
  const whole = cell.split('.')[0] ?? '';
  if (at > whole.length) return 10 ** (whole.length - at);
  const parts = whole.slice(at + 1).split(':');
  const [own = '', ...later] = parts;
  return 10 ** own.length * 60 ** later.length;
}
