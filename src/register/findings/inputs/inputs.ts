import type { Rule } from '../rule.ts';
import { beyondRange } from './beyond-range.ts';
import { formulaCells } from './formula-cells.ts';
import { offGrid } from './off-grid.ts';
import { runEach } from './run-each.ts';

/** Rules about what was typed, by name. */
export const INPUT_RULES: Readonly<Record<string, Rule>> = {
  'beyond-range': beyondRange,
  'off-grid': offGrid,
  'run-each': runEach,
  'formula-cells': formulaCells,
};
