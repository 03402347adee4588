/** What a careful editor would want to know about the sessions, each with what to do about it. */
import { plural } from './provenance.ts';
import type { Finding } from './register.ts';
import type { SessionFigures } from './session-figures.ts';
import { countedReadings } from './session-input.ts';

type Rule = (compiled: SessionFigures) => Finding | undefined;

/** Every finding, in the order of the sessions and of the rules. */
export function findingsOf(sessions: readonly SessionFigures[]): readonly Finding[] {
  return sessions.flatMap((compiled) => RULES.flatMap((rule) => rule(compiled) ?? []));
}

const oneRunOnly: Rule = ({ session }) => {
  const counted = countedReadings(session);
  if (new Set(counted.map(({ run }) => run)).size > 1) return undefined;
  return {
    rule: 'one-run-only',
    severity: 'note',
    where: { session: session.id },
    message: `All ${plural(counted.length, 'reading')} come from one clip, so they share whatever the clip’s start did to them.`,
    hint: 'Stop and start the recording two or three times: clips average, readings within one may not.',
  };
};

const cutShort: Rule = ({ session: { id, cutShort: reason } }) =>
  reason === undefined
    ? undefined
    : {
        rule: 'cut-short',
        severity: 'caution',
        where: { session: id },
        message: `The session ended before it was complete: ${reason}.`,
        hint: 'Let the body cool and repeat it before a conclusion rests on it.',
      };

const RULES: readonly Rule[] = [oneRunOnly, cutShort];
