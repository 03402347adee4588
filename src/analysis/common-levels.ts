import type { FactorLevels, Factor, Term } from './design-matrix.ts';

/**
 * Over which levels of other factors the effect of a step may be averaged: of each factor that shares a term with the
 * step's, the levels at which both ends of the step occur (of a numeric setting, two of its numbers). An average over
 * other levels too would be a statement of conditions that nobody measured. Where both ends meet at no level, all of them.
 *
 * Only factors whose levels matter are named: without a term in common, an effect is the same at every level.
 */
export function commonLevels(
  conditions: readonly FactorLevels[],
  factors: readonly Factor[],
  terms: readonly Term[],
  { setting, from, to }: { readonly setting: string; readonly from: string; readonly to: string },
): Readonly<Record<string, readonly string[]>> {
  const numeric = factors.find(({ id }) => id === setting)?.kind === 'numeric';
  const partners = factors.filter(
    ({ id }) => id !== setting && terms.some((term) => term.includes(setting) && term.includes(id)),
  );
  return Object.fromEntries(
    partners.map(({ id, levels }) => {
      const common = levels.filter((level) => {
        const seen = new Set(conditions.filter((each) => each[id] === level).map((each) => each[setting]));
        return numeric ? seen.size > 1 : seen.has(from) && seen.has(to);
      });
      return [id, common.length === 0 ? levels : common];
    }),
  );
}
