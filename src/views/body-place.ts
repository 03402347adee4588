import type { Bench } from '../model/bench.ts';

/** The place of a body among all bodies: what gives it one colour and one mark in every chart. */
export function placeOfBody({ bodies }: Bench, body: string): number {
  const place = bodies.findIndex(({ id }) => id === body);
  if (place < 0) throw new Error(`no body '${body}' on this bench`);
  return place;
}
