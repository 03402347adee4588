/** What a write-up asks for, or an error that names the nearest it could have meant. */
import type { Bench, Session } from '../model/bench.ts';
import { nearest } from '../ingest/nearest.ts';
import type { Figure } from '../register/register.ts';
import { selectFigures, type Query } from '../register/select.ts';
import { loadSite } from 'lagfolio/site';

export type Selection = { readonly ids: readonly string[] } | Query;

export async function requireFigure(id: string): Promise<Figure> {
  const { figure, register } = await loadSite();
  const found = figure(id);
  if (found) return found;
  const near = nearest(
    id,
    register.figures.map((each) => each.id),
  );
  throw new Error(`no figure '${id}'${near.length > 0 ? `; did you mean ${near.join(', ')}?` : ''}`);
}

export async function requireSelection(
  selection: Selection,
): Promise<{ bench: Bench; figures: readonly Figure[]; sessions: readonly Session[] }> {
  const { bench, register, find } = await loadSite();
  const figures =
    'ids' in selection && selection.ids !== undefined
      ? await Promise.all(selection.ids.map(requireFigure))
      : selectFigures(bench, register.figures, selection as Query);
  if (figures.length === 0) throw new Error(`no figure matches ${JSON.stringify(selection)}`);
  const sessions = figures.flatMap(({ of }) => (of['session'] === undefined ? [] : [find.session(of['session'])]));
  return { bench, figures, sessions };
}
