/** What a careful editor would want to know about the sessions, each with what to do about it. */
import type { Finding } from '../register.ts';
import type { SessionFigures } from '../session-figures.ts';
import { beatingRates } from './beating-rates.ts';
import { coarseDigits } from './coarse-digits.ts';
import { cutShort } from './cut-short.ts';
import { drift } from './drift.ts';
import { INPUT_RULES } from './inputs/inputs.ts';
import { manyExcluded } from './many-excluded.ts';
import { misread } from './misread.ts';
import { oneRunOnly } from './one-run-only.ts';
import type { Rule } from './rule.ts';
import { runsDisagree, scatterBeyondRig, scatterTooSmall, stampsAgainstRates } from './scatter.ts';

/** By name, in the order in which a session's findings are listed. */
export const RULES: Readonly<Record<string, Rule>> = {
  'stamps-against-rates': stampsAgainstRates,
  'beating-rates': beatingRates,
  'one-run-only': oneRunOnly,
  'scatter-beyond-rig': scatterBeyondRig,
  'scatter-too-small': scatterTooSmall,
  'runs-disagree': runsDisagree,
  drift,
  misread,
  'coarse-digits': coarseDigits,
  'many-excluded': manyExcluded,
  'cut-short': cutShort,
};

/** Every finding, in the order of the sessions and of the rules. */
export function findingsOf(sessions: readonly SessionFigures[]): readonly Finding[] {
  return sessions.flatMap((compiled) =>
    Object.entries({ ...RULES, ...INPUT_RULES }).flatMap(([rule, look]) => {
      const found = look(compiled);
      return found === undefined
        ? []
        : [
            {
              rule,
              severity: found.severity,
              where: { session: compiled.session.id },
              message: found.message,
              hint: found.hint,
            },
          ];
    }),
  );
}
