/** What rig and display are taken to be, to state otherwise. */
import type { Assumption } from '../assumptions.ts';
import type { StatedChange } from '../changes.ts';
import { element } from '../../scripts/dom.ts';

export function assumptionInputs(assumptions: readonly Assumption[], change: (one: StatedChange) => void): HTMLElement {
  return element(
    'div',
    {},
    [...Map.groupBy(assumptions, ({ file }) => file)].map(([file, own]) =>
      element(
        'fieldset',
        {},
        element('legend', {}, element('code', {}, file)),
        own.map((assumption) => input(assumption, change)),
      ),
    ),
  );
}

function input({ file, path, label, value }: Assumption, change: (one: StatedChange) => void): HTMLElement {
  const field = element('input', {
    type: 'text',
    value: value ?? '',
    placeholder: 'not stated',
    name: `${file}:${path.join('.')}`,
    change: () => change({ kind: 'stated', file, path, from: value, to: field.value.trim() || undefined }),
  });
  return element('label', {}, element('span', {}, label), field);
}
