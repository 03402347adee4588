/** The script of the page that searches. It asks nobody for anything: what can be found came with it. */
import { element, found } from '../../scripts/dom.ts';
import { loadedFacts } from '../../scripts/facts.ts';
import type { SearchFacts } from '../facts.ts';
import { finderOf, type Found, type FoundSection } from '../find.ts';

/** Of each section; the others when they are asked for. */
const SHOWN_FIRST = 8;
const ROOT = new URL('../', document.baseURI);
const find = finderOf(loadedFacts<SearchFacts>());
const input = found('question') as HTMLInputElement;

function start(): void {
  found('ask').hidden = false;
  input.value = new URLSearchParams(location.search).get('q') ?? '';
  input.addEventListener('input', () => {
    const asked = input.value.trim();
    history.replaceState(null, '', asked === '' ? location.pathname : `?${new URLSearchParams({ q: asked })}`);
    answer();
  });
  answer();
  input.focus();
}

function answer(): void {
  const asked = input.value.trim();
  const sections = asked === '' ? [] : find(asked);
  const count = sections.reduce((sum, section) => sum + section.found.length, 0);
  found('status').textContent =
    asked === '' ? '' : count === 0 ? `Nothing found for “${asked}”.` : `${count} found for “${asked}”.`;
  found('results').replaceChildren(...sections.map(showSection));
}

function showSection({ title, found: all }: FoundSection): HTMLElement {
  const list = element('ul', { class: 'found' }, all.slice(0, SHOWN_FIRST).map(showFound));
  const rest = all.slice(SHOWN_FIRST);
  const more = element(
    'button',
    {
      type: 'button',
      click: () => {
        list.append(...rest.map(showFound));
        list.querySelectorAll('a')[SHOWN_FIRST]?.focus();
        more.remove();
      },
    },
    `${rest.length} more`,
  );
  return element('section', {}, element('h2', {}, title), list, rest.length === 0 ? undefined : more);
}

function showFound({ title, path, says }: Found): HTMLElement {
  const href = new URL(path.slice(1).replace(/\/(?=#|$)/, location.protocol === 'file:' ? '/index.html' : '/'), ROOT);
  return element(
    'li',
    {},
    element('a', { href: href.href }, title),
    says === '' ? undefined : element('span', { class: 'words' }, says),
  );
}

start();
