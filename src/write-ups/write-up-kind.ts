import type { Bench, WriteUp } from '../model/bench.ts';

/** A write-up and what it is: two of different kinds may have one id. */
export interface PlacedWriteUp {
  readonly kind: 'report' | 'method';
  readonly writeUp: WriteUp;
}

/** Method notes, then reports. */
export function placedWriteUps({ methods, reports }: Pick<Bench, 'methods' | 'reports'>): readonly PlacedWriteUp[] {
  return [
    ...methods.map((writeUp) => ({ kind: 'method', writeUp }) as const),
    ...reports.map((writeUp) => ({ kind: 'report', writeUp }) as const),
  ];
}

/** Id of the family of all that a write-up compares. */
export const writeUpFamilyId = (kind: PlacedWriteUp['kind'], id: string): string => `${kind}-${id}`;
