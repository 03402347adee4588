import type { Finding } from '../register.ts';
import type { SessionFigures } from '../session-figures.ts';

/** A rule looks at one session; what it returns lacks only the rule's name and the session's. */
export type Rule = (compiled: SessionFigures) => Pick<Finding, 'severity' | 'message' | 'hint'> | undefined;

/** What shows only where sessions are set side by side, of one of them. */
export type FoundOfSession = Omit<Finding, 'where'> & { readonly session: string };
