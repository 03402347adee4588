/** Elements of the page, by id, of the type that the page has them in. */
export function byId<T extends HTMLElement>(id: string, type: new () => T): T {
  const found = document.getElementById(id);
  if (!(found instanceof type)) throw new Error(`the page has no ${id}`);
  return found;
}

type Child = Node | string;

export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  element.append(...children);
  return element;
}

export function button(
  label: string,
  act: () => void,
  attributes: Readonly<Record<string, string>> = {},
): HTMLButtonElement {
  const element = make('button', { type: 'button', ...attributes }, label);
  element.addEventListener('click', act);
  return element;
}

/** What this browser remembers of a session on this page; nothing where it may not. */
export const memory = {
  read<T>(id: string, name: string): T | undefined {
    try {
      const text = localStorage.getItem(`take-readings ${id} ${name}`);
      return text === null ? undefined : (JSON.parse(text) as T);
    } catch {
      return undefined;
    }
  },
  write(id: string, name: string, value: unknown): void {
    try {
      localStorage.setItem(`take-readings ${id} ${name}`, JSON.stringify(value));
    } catch {
      // remembering is a convenience
    }
  },
};
