/** What a write-up asks for of a body's settings, or an error that says what is missing. */
import { choicesOf } from '../register/comparisons/choices.ts';
import { RANKABLE, rankFigures, type RankedFigure } from '../register/comparisons/ranking.ts';
import { labelSessions } from '../register/labels.ts';
import type { Figure } from '../register/register.ts';
import { requireSelection, type Selection } from './require.ts';
import { loadSite } from 'lagfolio/site';
import type { Bench, Session } from '../model/bench.ts';
import { adviseOn, type Advice } from '../views/advice.ts';
import { effectRows, type EffectRow } from '../views/effect-rows.ts';

export async function requireEffects(
  body: string,
  rig: string,
): Promise<{ rows: readonly EffectRow[]; title: string }> {
  const site = await loadSite();
  const { effects, interactions } = effectRows(site, body, rig);
  if (effects.length === 0)
    throw new Error(
      `the sessions of '${body}' on '${rig}' say nothing of a setting: at least two that differ in one are needed`,
    );
  return {
    rows: [...effects, ...interactions],
    title: `${site.find.body(body).name} on ${site.find.rig(rig).name}: effects from all sessions`,
  };
}

/** Of the chain with the most sessions, where a rig has several. */
export async function requireAdvice(body: string, rig: string): Promise<{ advice: Advice; title: string }> {
  const site = await loadSite();
  const choice = choicesOf(site.bench).find((each) => each.body === body && each.rig === rig);
  const advice = choice && adviseOn(site, choice);
  if (advice === undefined)
    throw new Error(
      `there are not two sessions of '${body}' on '${rig}' through one chain: there is nothing to choose between`,
    );
  return { advice, title: `${site.find.body(body).name} on ${site.find.rig(rig).name}, lowest total first` };
}

export async function requireRanking(
  selection: Selection,
  from: 'lowest' | 'highest' = 'lowest',
): Promise<{ bench: Bench; sessions: readonly Session[]; ranked: readonly RankedFigure[] }> {
  const { bench, figures, sessions } = await requireSelection(selection);
  const wrong = figures.find(({ kind, unit }) => !RANKABLE.has(kind) || unit !== figures[0]?.unit);
  if (wrong !== undefined)
    throw new Error(`'${wrong.id}' cannot be ranked: only totals, or totals in frames, all of one kind`);
  return { bench, sessions, ranked: rankFigures(figures, from) };
}

export interface NamedFigure {
  readonly name: string;
  readonly figure: Figure;
}

/** The session at one end of the order of a selection, and all that these data cannot tell from it, named by what sets them apart. */
export async function requireExtreme(
  selection: Selection,
  end: 'lowest' | 'highest',
): Promise<{ named: readonly NamedFigure[] }> {
  const { bench, sessions, ranked } = await requireRanking(selection, end);
  const labels = labelSessions(bench, sessions).of;
  const named = ranked
    .filter(({ tiedWithBest }) => tiedWithBest)
    .map(({ figure }) => ({ figure, name: labels.get(figure.of['session'] ?? '') ?? figure.id }));
  return { named };
}
