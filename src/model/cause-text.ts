import type { Cause } from './ledger.ts';

const CAUSES_SHOWN = 6;

/** One cause in words: `data/sessions/a.csv changed`. */
export function describeCause(cause: Cause): string {
  switch (cause.kind) {
    case 'analysis':
      return `the analysis went from version ${cause.from} to version ${cause.to}`;
    case 'changed':
      return `${cause.file} changed${aside(cause.own)}`;
    case 'new':
      return `${cause.file} is new${aside(cause.own)}`;
    case 'gone':
      return `${cause.file} is gone${aside(cause.own)}`;
    case 'renamed':
      return `${cause.from} was renamed to ${cause.to}`;
    case 'regrouped':
      return 'it is computed from other files than before';
    case 'code':
      return `no file changed and the analysis still calls itself version ${cause.analysis}: its code, or a library, changed without a new version in src/analysis/version.ts`;
  }
}

/** Several: `a.csv changed; b.csv is gone`. Of a long list the first, and how many more. */
export function describeCauses(causes: readonly Cause[]): string {
  const shown = causes.slice(0, CAUSES_SHOWN).map(describeCause).join('; ');
  return causes.length > CAUSES_SHOWN ? `${shown}; and ${causes.length - CAUSES_SHOWN} more` : shown;
}

function aside(own: boolean): string {
  return own ? '' : ' (not among its own files, which are as they were)';
}
