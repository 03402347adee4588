/** What a model of settings cannot tell, and which session would. */
import type { Alias } from '../../analysis/aliases.ts';
import type { FactorLevels } from '../../analysis/design-matrix.ts';
import type { SettingsFit } from '../../analysis/settings-model.ts';
import type { Compilation } from '../compilation.ts';
import { listWords } from '../comparisons/pair-words.ts';
import type { Lookup } from '../lookup.ts';
import type { Finding } from '../register.ts';
import { roundTo } from '../text.ts';
import { lowerFirst } from '../traits.ts';
import { INTERVAL_FACTOR, OTHER_FACTORS, type SettingsModel } from './settings-models.ts';

export function settingsFindings({ find }: Compilation, model: SettingsModel): readonly Finding[] {
  const { fit, without, body, rig } = model;
  return [
    ...without.map(
      ({ session }): Finding => ({
        rule: 'session-without-scatter',
        severity: 'caution',
        where: { session: session.id },
        message:
          'All its readings are equal, so nothing says how far the session can be trusted, and it takes no part in the effects of settings.',
        hint: 'Take more readings, in more runs, with a finer timer.',
      }),
    ),
    ...(fit.kind === 'fit'
      ? [...fit.aliases.map((alias) => notSeparated(find, model, fit, alias)), ...notAdditive(find, { body, rig }, fit)]
      : []),
  ];
}

function notSeparated(
  find: Lookup,
  { body, rig }: SettingsModel,
  { design }: SettingsFit,
  { terms, separatedBy }: Alias,
): Finding {
  const names = [...new Set(terms.flat())].map((id) => nameOf(find, id));
  const varying = design.factors.filter(({ levels }) => levels.length > 1).map(({ id }) => id);
  const [nearest] = separatedBy;
  return {
    rule: 'settings-not-separated',
    severity: 'caution',
    where: { body, rig },
    message: `On ${find.rig(rig).name}, the sessions of ${find.body(body).name} cannot tell apart what ${listWords(names)} do: they were only changed together.`,
    hint:
      nearest === undefined
        ? 'Measure sessions in which one of them changes and the others stay.'
        : `A session with ${describe(find, nearest, varying)} would tell them apart.`,
  };
}

function notAdditive(
  find: Lookup,
  { body, rig }: Pick<SettingsModel, 'body' | 'rig'>,
  { consistency }: SettingsFit,
): readonly Finding[] {
  if (consistency === undefined || consistency.inflation === 1) return [];
  return [
    {
      rule: 'settings-do-not-add-up',
      severity: 'note',
      where: { body, rig },
      message: `On ${find.rig(rig).name}, the settings of ${find.body(body).name} do not simply add up: the sessions scatter about the model ${roundTo(consistency.ratio, 1)} times as far as their own uncertainties say, and its effects are widened by as much. A setting may cost more at one rate or output than at another: go by the matched pairs.`,
      hint: 'Measure the setting at each rate and output for which it matters, beside a session without it.',
    },
  ];
}

function describe(find: Lookup, condition: FactorLevels, varying: readonly string[]): string {
  return listWords(
    varying
      .filter((id) => id !== INTERVAL_FACTOR)
      .flatMap((id) => {
        const level = condition[id];
        return level === undefined
          ? []
          : [`${nameOf(find, id)} ${id in OTHER_FACTORS ? level : lowerFirst(find.level(id, level))}`];
      }),
  );
}

function nameOf(find: Lookup, id: string): string {
  return OTHER_FACTORS[id] ?? (id === INTERVAL_FACTOR ? 'frame interval' : lowerFirst(find.setting(id).label));
}
