import type { Rule } from './rule.ts';

/** The session's author says that it ended early. */
export const cutShort: Rule = ({ session: { cutShort: reason } }) =>
  reason === undefined
    ? undefined
    : {
        severity: 'caution',
        message: `The session ended before it was complete: ${reason.replace(/\.$/, '')}.`,
        hint: 'A body that overheats is a burn and battery hazard: let it cool, and repeat the session before a conclusion rests on it.',
      };
