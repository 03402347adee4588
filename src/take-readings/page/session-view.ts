/** What is known of the session, as it is printed: settings in large type, figures, findings, and every reading. */
import type { Fact, ReadingState, SessionState } from '../session-state.ts';
import { button, byId, make } from './dom.ts';

export interface ReadingActs {
  edit(reading: ReadingState): void;
  exclude(reading: ReadingState): void;
  count(reading: ReadingState): void;
}

export function showSession(state: SessionState, acts: ReadingActs): void {
  byId('session-name', HTMLElement).textContent = state.id;
  byId('position', HTMLElement).textContent =
    state.position === undefined ? '' : `Number ${state.position.position} of ${state.position.of} in the drawn order`;
  byId('settings', HTMLElement).replaceChildren(...facts(state.settings));
  byId('context', HTMLElement).replaceChildren(
    ...facts([...(state.date === undefined ? [] : [{ term: 'Date', says: state.date }]), ...state.context]),
  );
  byId('details', HTMLElement).hidden = state.date !== undefined;
  for (const detail of ['firmware', 'room', 'warm-up'] as const) {
    const field = byId(detail, HTMLInputElement);
    (field.closest('label') ?? field).hidden = !state.asks.includes(detail);
  }
  byId('bench', HTMLElement).hidden = state.date === undefined;
  byId('results', HTMLElement).hidden = state.date === undefined;
  byId('total', HTMLElement).textContent = state.total?.text ?? state.refused ?? 'No reading counts yet.';
  byId('coverage', HTMLElement).textContent =
    state.total === undefined
      ? ''
      : `${state.total.frames}; ${state.total.coverage}. Half-width ${state.total.halfWidth}.`;
  byId('progress', HTMLElement).textContent = state.progress;
  byId('agreement', HTMLElement).textContent = state.agreement;
  byId('clips', HTMLElement).replaceChildren(
    ...state.clips.map(({ run, says }) => make('li', {}, `Clip ${run}: ${says}`)),
  );
  byId('findings', HTMLElement).replaceChildren(
    ...state.problems.map((says) => make('li', { class: 'warning' }, says)),
    ...state.findings.map(({ severity, message, hint }) => make('li', { class: severity }, `${message} ${hint}`)),
  );
  byId('nothing-found', HTMLElement).hidden = state.problems.length + state.findings.length > 0;
  showReadings(state, acts);
}

function showReadings(state: SessionState, acts: ReadingActs): void {
  const columns = state.columns.filter((name) => !['run', 'exclude', 'note'].includes(name));
  const nameOf = (column: string): string => state.names[column] ?? column;
  const result = nameOf('latency');
  byId('readings-head', HTMLElement).replaceChildren(
    ...['Clip', ...columns.map(nameOf), result, 'Remarks', 'Change'].map((name) => make('th', { scope: 'col' }, name)),
  );
  // the latest is at hand without scrolling
  byId('readings', HTMLElement).replaceChildren(
    ...state.readings.toReversed().map((reading) => {
      const { line, run, cells, latency = '', excluded, note, remarks, suits } = reading;
      const says = [
        ...(excluded === undefined ? [] : [`Does not count: ${excluded}.`]),
        ...(note === undefined ? [] : [note]),
        ...remarks,
        ...(suits.length === 0 ? [] : [`It would suit as ${suits.join(' or ')}.`]),
      ];
      const named = `the reading in line ${line}`;
      return make(
        'tr',
        { class: excluded === undefined ? (remarks.length > 0 ? 'doubtful' : '') : 'excluded' },
        make('td', { 'data-label': 'Clip' }, String(run)),
        ...columns.map((name) => make('td', { class: 'stamp', 'data-label': nameOf(name) }, cells[name] ?? '')),
        make('td', { class: 'stamp', 'data-label': result }, latency),
        make('td', { class: 'remarks', 'data-label': 'Remarks' }, says.join(' ')),
        make(
          'td',
          { class: 'acts' },
          button('Edit', () => acts.edit(reading), { 'aria-label': `Edit ${named}` }),
          excluded === undefined
            ? button('Exclude', () => acts.exclude(reading), { 'aria-label': `Exclude ${named}, with a reason` })
            : button('Count', () => acts.count(reading), { 'aria-label': `Count ${named} again` }),
        ),
      );
    }),
  );
}

function facts(list: readonly Fact[]): readonly HTMLElement[] {
  return list.map(({ term, says }) => make('div', {}, make('dt', {}, term), make('dd', {}, says)));
}
