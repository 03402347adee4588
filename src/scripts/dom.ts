type Child = Node | string | undefined;
type Attributes = Readonly<Record<string, string | boolean | ((event: Event) => void)>>;

/** An element: attributes as HTML has them, and listeners by the event's name. Text is never read as markup. */
export function element<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Attributes,
  ...children: readonly (Child | readonly Child[])[]
): HTMLElementTagNameMap[K] {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === 'function') made.addEventListener(key, value);
    else if (value === true) made.setAttribute(key, '');
    else if (value !== false) made.setAttribute(key, value);
  }
  made.append(...children.flat().filter((child) => child !== undefined));
  return made;
}

/** An element of the page; its absence is a fault of ours. */
export function found(id: string): HTMLElement {
  const there = document.getElementById(id);
  if (there === null) throw new Error(`the page has no #${id}`);
  return there;
}
