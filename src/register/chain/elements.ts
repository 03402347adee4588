/** The parts of a chain by name: `body/vennick-q4/1.40/uhd-59.94-…`, `link/radio-pair`, `display/stage-screen`. */
import type { Bench, Session } from '../../model/bench.ts';
import { conditionId } from '../configuration.ts';

export type PartType = 'body' | 'link' | 'display';

/** A body in one condition: each condition has a latency of its own. */
export function bodyElement(session: Session, bench: Bench): string {
  return `body/${conditionId(session, bench)}`;
}

export const linkElement = (id: string): string => `link/${id}`;
export const displayElement = (id: string): string => `display/${id}`;

/** Every part that a session's picture went through. */
export function elementsOf(session: Session, bench: Bench): readonly string[] {
  return [bodyElement(session, bench), ...session.links.map(linkElement), displayElement(session.display)];
}

/** `display/stage-screen` → `display`, `stage-screen`. */
export function partOf(element: string): { readonly type: PartType; readonly id: string } {
  const at = element.indexOf('/');
  return { type: element.slice(0, at) as PartType, id: element.slice(at + 1) };
}

export function isBody(element: string): boolean {
  return element.startsWith('body/');
}

/** `body/vennick-q4/1.40/uhd-59.94-off` → `vennick-q4`. */
export function bodyOf(element: string): string {
  return partOf(element).id.split('/')[0] ?? '';
}
