/** The list of sessions, planned ones first in their drawn order, and the form that begins another. */
import { api } from './api.ts';
import { button, byId, make } from './dom.ts';

export async function showSessions(choose: (id: string) => void): Promise<void> {
  const { sessions, bodies, rigs, settings, unreadable } = await api.sessions();
  const items = sessions.map(({ id, title, says, planned }) =>
    make(
      'li',
      { class: planned ? 'planned' : '' },
      button(title, () => choose(id), { 'data-session': id }),
      make('p', {}, `${id}: ${says}`),
    ),
  );
  byId('sessions', HTMLElement).replaceChildren(...items);
  byId('unreadable', HTMLElement).textContent =
    unreadable.length === 0
      ? ''
      : `Not listed, since their files cannot be read: ${unreadable.join(', ')}. npm run build says why.`;
  const field = (
    name: string,
    label: string,
    choices: readonly { readonly id: string; readonly label: string }[],
    isOptional = false,
  ) =>
    make(
      'label',
      {},
      `${label} `,
      make(
        'select',
        { name },
        ...(isOptional ? [make('option', { value: '' }, 'not stated')] : []),
        ...choices.map(({ id, label: text }) => make('option', { value: id }, text)),
      ),
    );
  byId('new-fields', HTMLElement).replaceChildren(
    field('body', 'Body', bodies),
    field('rig', 'Rig', rigs),
    ...settings.map(({ id, label, levels }) => field(`setting ${id}`, label, levels, id !== 'rate')),
  );
  const form = byId('new-session', HTMLFormElement);
  form.onsubmit = (event) => {
    event.preventDefault();
    const given = [...new FormData(form)].map(([name, value]) => [name, String(value)] as const);
    const of = (name: string): string => given.find(([each]) => each === name)?.[1] ?? '';
    const levels = given.flatMap(([name, value]) =>
      name.startsWith('setting ') && value !== '' ? [[name.slice(8), value]] : [],
    );
    void api.begin({ body: of('body'), rig: of('rig'), settings: Object.fromEntries(levels) }).then((begun) => {
      if ('id' in begun) choose(begun.id);
      else byId('alarm', HTMLElement).textContent = begun.says.join(' ');
    });
  };
}
