import type { Compilation, Contribution } from '../compilation.ts';
import { effectFigures } from './effect-figures.ts';
import { settingsFindings } from './settings-findings.ts';
import { settingsModels } from './settings-models.ts';

/** Effects of settings, body by body and rig by rig, and what the sessions cannot tell about them. */
export function compileSettings(compilation: Compilation): Contribution {
  const models = settingsModels(compilation);
  return {
    figures: models.flatMap((model) => effectFigures(compilation, model)),
    findings: models.flatMap((model) => settingsFindings(compilation, model)),
  };
}
