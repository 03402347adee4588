import type { Bench, Session } from '../../model/bench.ts';
import { lookup } from '../lookup.ts';
import { traitsOf } from '../traits.ts';

/** The settings of a session in words, all of them: `59.94 frames/s, output UHD 3840 × 2160, noise reduction 0`. */
export function describeCondition(bench: Bench, session: Session): string {
  // The first trait is the body; after it come the rate and the other settings, then links.
  const traits = traitsOf(session, bench).slice(1, 1 + bench.settings.length);
  const links = session.links.map((id) => lookup(bench).link(id).name).join(' and ');
  return [...traits.map(({ full }) => full), links && `through ${links}`].filter(Boolean).join(', ');
}
