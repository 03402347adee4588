import type { Session } from '../model/bench.ts';

/** `data/sources/desk.xlsx, sheet “Tuesday”`. */
export function describeImport({ path, sheet }: NonNullable<Session['importedFrom']>): string {
  return sheet === undefined ? path : `${path}, sheet “${sheet}”`;
}
