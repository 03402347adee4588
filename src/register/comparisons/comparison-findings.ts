/** What an editor would want to know of the comparisons that write-ups ask for. */
import type { Compilation } from '../compilation.ts';
import type { Figure, Finding } from '../register.ts';
import type { Family, SessionPair } from './family.ts';
import { describeDiffering, listWords } from './pair-words.ts';

export function comparisonFindings(
  compilation: Compilation,
  asked: readonly Family[],
  figures: readonly Figure[],
): readonly Finding[] {
  return [
    ...asked.flatMap((family) =>
      family.pairs.flatMap((pair) => [
        ...severalSettings(compilation, family, pair),
        ...differentRigs(compilation, family, pair),
      ]),
    ),
    ...figures.filter(({ kind, reason }) => kind === 'difference' && reason !== undefined).map(notJudged),
  ];
}

function severalSettings({ session, find }: Compilation, { of }: Family, pair: SessionPair): readonly Finding[] {
  const [a, b] = [session(pair.a).session, session(pair.b).session];
  const differing = describeDiffering(find, a, b);
  // Across rigs the chain is another one anyway, which is said by its own finding.
  const counted =
    a.rig === b.rig ? differing : differing.filter((one) => !/^(?:links|display|way of reading) /.test(one));
  if (counted.length < (a.body === b.body ? 2 : 1)) return [];
  return [
    {
      rule: 'settings-differ',
      severity: 'caution',
      where: { ...of, session: pair.a, than: pair.b },
      message: `${pair.a} is compared with ${pair.b}, and the two differ${a.body === b.body ? '' : ' not only in the body, but also'} in ${listWords(counted)}: the figure is of all of these together.`,
      hint: 'Say so beside the figure, or compare sessions that differ in one thing.',
    },
  ];
}

function differentRigs({ session, find }: Compilation, { of }: Family, pair: SessionPair): readonly Finding[] {
  const [a, b] = [session(pair.a).session, session(pair.b).session];
  if (a.rig === b.rig) return [];
  return [
    {
      rule: 'rigs-differ',
      severity: 'caution',
      where: { ...of, session: pair.a, than: pair.b },
      message: `${pair.a} is compared with ${pair.b}, and they were taken on different rigs (${find.rig(a.rig).name}, ${find.rig(b.rig).name}), so the rigs’ own terms and displays do not cancel.`,
      hint: 'Say so beside the figure, or compare sessions on one rig.',
    },
  ];
}

function notJudged({ of, text }: Figure): Finding {
  return {
    rule: 'difference-without-scatter',
    severity: 'caution',
    where: of,
    message: `The difference of ${of['session'] ?? ''} and ${of['than'] ?? ''} is ${text}, and nothing says how far it can be trusted: no reading differs from another.`,
    hint: 'Take more readings, in more runs, with a finer timer.',
  };
}
