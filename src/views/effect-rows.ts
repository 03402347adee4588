import type { Figure } from '../register/register.ts';
import type { Published } from '../register/published.ts';
import { describeAt, describeLevels } from '../register/level-words.ts';

export interface EffectRow {
  readonly setting: string;
  readonly step: string;
  readonly effect: Figure;
  readonly verdict: Figure;
}

export interface EffectRows {
  readonly effects: readonly EffectRow[];
  /** How one setting's step depends on another. */
  readonly interactions: readonly EffectRow[];
}

/** The published effects of a body's settings on a rig; empty lists where there are none. */
export function effectRows(
  { register, find, figure }: Pick<Published, 'register' | 'find' | 'figure'>,
  body: string,
  rig: string,
): EffectRows {
  const rowsOf = (kind: 'effect' | 'interaction'): readonly EffectRow[] =>
    register.figures
      .filter((each) => each.kind === kind && each.of['body'] === body && each.of['rig'] === rig)
      .flatMap((effect) => {
        const verdict = figure(effect.id.replace(kind, `${kind}-verdict`));
        const { setting = '', from = '', to = '', with: other, withFrom = '', withTo = '', over = '' } = effect.of;
        const at = other === undefined ? over && `, ${over}` : `, ${describeAt(find, other, withTo, withFrom)}`;
        return verdict === undefined
          ? []
          : [
              {
                setting: find.setting(setting).label,
                step: `${describeLevels(find, setting, from, to)}${at}`,
                effect,
                verdict,
              },
            ];
      });
  return { effects: rowsOf('effect'), interactions: rowsOf('interaction') };
}
