/** All that one write-up says of the data, adjusted together: what its claims assert, and what it compares. */
import { adjustAmong } from '../register/comparisons/adjust-among.ts';
import { differenceId } from '../register/comparisons/family.ts';
import { partNamed } from './parts.ts';
import { readProps, type Adjust, type Answering } from './parts/definition.ts';
import type { PlacedWriteUp } from './write-up-kind.ts';

/** Holm's adjustment of some of a write-up's statements among all of them, worked out when it is first asked for. */
export function adjustedWith({ writeUp }: PlacedWriteUp, answering: Omit<Answering, 'adjust'>): Adjust {
  let known: readonly number[] | undefined;
  return (p) => {
    known ??= [...pOfClaims(writeUp, answering), ...pOfComparisons(answering)];
    return adjustAmong(known, p);
  };
}

function pOfComparisons({ site, family }: Omit<Answering, 'adjust'>): readonly number[] {
  return (family?.pairs ?? []).flatMap((pair) => site.figure(differenceId(pair))?.p ?? []);
}

function pOfClaims({ parts }: PlacedWriteUp['writeUp'], answering: Omit<Answering, 'adjust'>): readonly number[] {
  return parts.flatMap((part) => {
    const definition = partNamed(part.name);
    const props = definition && readProps(definition, part);
    return props === undefined ? [] : (definition?.claimed?.(props, answering) ?? []);
  });
}
