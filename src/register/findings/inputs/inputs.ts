import type { Rule } from '../rule.ts';
import { acrossRestart } from './across-restart.ts';
import { beyondRange } from './beyond-range.ts';
import { fineInstrument } from './fine-instrument.ts';
import { formulaCells } from './formula-cells.ts';
import { noteExcludes } from './note-excludes.ts';
import { offGrid } from './off-grid.ts';
import { repeatedRows } from './repeated-rows.ts';
import { runEach } from './run-each.ts';
import { unevenClips } from './uneven-clips.ts';

/** Rules about what was typed, by name. */
export const INPUT_RULES: Readonly<Record<string, Rule>> = {
  'across-restart': acrossRestart,
  'beyond-range': beyondRange,
  'off-grid': offGrid,
  'repeated-rows': repeatedRows,
  'run-each': runEach,
  'uneven-clips': unevenClips,
  'fine-instrument': fineInstrument,
  'formula-cells': formulaCells,
  'note-excludes': noteExcludes,
};
