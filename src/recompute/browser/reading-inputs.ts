/** Every reading of a session, to leave out, restore or correct. */
import type { Reading, Session } from '../../model/bench.ts';
import type { ReadingChange } from '../changes.ts';
import { element } from '../../scripts/dom.ts';

const LEFT_OUT = 'left out by a reader';
const VALUES = ['source', 'shown', 'frames', 'latency'];

export function readingInputs(session: Session, change: (one: ReadingChange) => void): HTMLElement {
  const [first] = session.readings;
  const columns = VALUES.filter((column) => first !== undefined && column in first.cells);
  const runs = [...new Set(session.readings.map(({ run }) => run))];
  const place = (reading: Reading, column: string, to: string): ReadingChange => ({
    kind: 'reading',
    file: session.readingsFile.path,
    line: reading.line,
    column,
    from: reading.cells[column] ?? '',
    to,
  });
  const boxes = new Map<Reading, HTMLInputElement>();
  const count = (reading: Reading, counts: boolean): void => {
    const box = boxes.get(reading);
    if (box !== undefined) box.checked = counts;
    change(place(reading, 'exclude', counts ? '' : (reading.excluded ?? LEFT_OUT)));
  };
  const row = (reading: Reading): HTMLElement => {
    const box = element('input', {
      type: 'checkbox',
      'aria-label': `line ${reading.line} counts`,
      change: () => count(reading, box.checked),
    });
    box.checked = reading.excluded === undefined;
    boxes.set(reading, box);
    return element(
      'tr',
      { 'data-line': String(reading.line) },
      element('td', {}, box),
      element('td', { class: 'number' }, String(reading.run)),
      columns.map((column) => {
        const input = element('input', {
          type: 'text',
          value: reading.cells[column] ?? '',
          'aria-label': `${column}, line ${reading.line}`,
          change: () => change(place(reading, column, input.value.trim())),
        });
        return element('td', {}, input);
      }),
      element('td', {}, reading.excluded ?? ''),
    );
  };
  const only = element(
    'select',
    {
      'aria-label': `runs of ${session.id}`,
      change: () => {
        for (const reading of session.readings)
          if (reading.excluded === undefined) count(reading, only.value === '' || String(reading.run) === only.value);
      },
    },
    element('option', { value: '' }, 'all runs'),
    runs.map((run) => element('option', { value: String(run) }, `run ${run} only`)),
  );
  return element(
    'details',
    {},
    element('summary', {}, `Readings of ${session.id}`),
    runs.length > 1 ? element('p', {}, only) : undefined,
    element(
      'table',
      { class: 'inputs' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          ['counts', 'run', ...columns, 'left out because'].map((head) => element('th', { scope: 'col' }, head)),
        ),
      ),
      element('tbody', {}, session.readings.map(row)),
    ),
  );
}
