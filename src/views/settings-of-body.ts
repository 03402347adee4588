/** What each setting of a body does, and what to set, rig by rig. */
import { choicesOf } from '../register/comparisons/choices.ts';
import { settingFamilies } from '../register/comparisons/setting-families.ts';
import type { Published } from '../register/published.ts';
import type { Finding } from '../register/register.ts';
import { adviseOn, type Advice } from './advice.ts';
import { comparedRows, type ComparedRows } from './compared-rows.ts';
import { effectRows, type EffectRow } from './effect-rows.ts';

export interface SettingsOfBody {
  readonly name: string;
  /** Matched pairs, a family for each rig. */
  readonly pairs: readonly { readonly rig: string; readonly compared: ComparedRows }[];
  readonly effects: readonly {
    readonly rig: string;
    readonly effects: readonly EffectRow[];
    readonly interactions: readonly EffectRow[];
  }[];
  readonly findings: readonly Finding[];
  /** The one with the most sessions first. */
  readonly choices: readonly {
    readonly advice: Advice;
    /** `Balcony, through Radio pair`. */
    readonly where: string;
  }[];
}

export function settingsOfBody(site: Published, body: string): SettingsOfBody {
  const { bench, find, findingsOf } = site;
  return {
    name: find.body(body).name,
    pairs: settingFamilies(bench)
      .filter(({ of }) => of['body'] === body)
      .map(({ id, of, pairs }) => ({ rig: find.rig(of['rig'] ?? '').name, compared: comparedRows(site, id, pairs) })),
    effects: bench.rigs
      .map((rig) => ({ rig: rig.name, ...effectRows(site, body, rig.id) }))
      .filter(({ effects }) => effects.length > 0),
    findings: findingsOf('body', body),
    choices: choicesOf(bench)
      .filter((choice) => choice.body === body)
      .sort((x, y) => y.sessions.length - x.sessions.length)
      .flatMap((choice) => {
        const advice = adviseOn(site, choice);
        const { links } = choice.sessions[0];
        const through = links.length === 0 ? '' : `, through ${links.map((id) => find.link(id).name).join(' and ')}`;
        return advice === undefined ? [] : [{ advice, where: `${find.rig(choice.rig).name}${through}` }];
      }),
  };
}
