import type { Family } from '../register/comparisons/family.ts';

/** Two sessions as the only comparison of their family. */
export function familyAlone(a: string, b: string): Family {
  return {
    id: 'alone',
    of: {},
    group: 'alone',
    groupTitle: 'Two sessions',
    inWords: 'these two sessions alone',
    pairs: [{ a, b }],
  };
}
