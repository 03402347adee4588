/** What every page has, and what none may hold. */
import type { BuiltSite, Page } from './built-site.ts';
import type { Checked } from './checked.ts';
import { PATHS } from '../register/paths.ts';
import { attributeOf, nodesOf, textOf, type Element, type Node } from './html.ts';

/** What a computation that went wrong leaves behind. Case matters: infinity and ∞ are words. */
const LEFTOVER = /NaN|undefined|Infinity|\[object |\$\{/;
const WORDED = ['a', 'h1', 'h2', 'h3', 'caption', 'figcaption', 'summary', 'title', 'th', 'dt', 'dd'];
/** What a script element may hold and run nothing: schema.org for search engines. */
const DATA = 'application/ld+json';
const ACTIVE = ['script', 'style', 'iframe', 'object', 'embed', 'base'];
/** The pages that run something: their own script, held by their content policy, and the facts that it reads. */
const SCRIPTED: Readonly<Record<string, { readonly scripts: readonly string[]; readonly policy: string }>> = {
  [PATHS.recompute]: {
    scripts: ['<script defer src=recompute.js>', '<script defer src=facts.js>'],
    policy: "; script-src 'self'; connect-src 'self'; worker-src 'self'",
  },
  [PATHS.search]: {
    scripts: ['<script defer src=search.js>', '<script defer src=facts.js>'],
    policy: "; script-src 'self'",
  },
};
const REFERENCES = ['aria-labelledby', 'aria-describedby', 'aria-controls', 'for', 'headers'];
const GOVERNED = ['link', 'img', 'svg', 'body'];

type Check = (page: Page) => readonly string[];

const CHECKS: readonly Check[] = [
  leftovers,
  emptyWords,
  faultyIds,
  activeContent,
  policy,
  headings,
  ({ elements }) =>
    elements.some((element) => element.tagName === 'html' && attributeOf(element, 'lang')) ? [] : ['says no language'],
  ({ elements }) =>
    elements
      .filter((element) => element.tagName === 'img' && attributeOf(element, 'alt') === undefined)
      .map((image) => `the picture ${attributeOf(image, 'src') ?? ''} has no alternative text`),
];

/** @param mayRun whether write-ups may hold code and any markup, as the publication says */
export function checkPages({ pages }: BuiltSite, mayRun = false): Checked {
  const titles = Map.groupBy(pages, titleOf);
  const faults = pages.flatMap((page) => {
    const same = titles.get(titleOf(page)) ?? [];
    return [
      ...CHECKS.filter((check) => !mayRun || check !== activeContent).flatMap((check) => check(page)),
      ...(same.length > 1 ? [`has the title of ${same.find((one) => one !== page)?.path}: “${titleOf(page)}”`] : []),
    ].map((fault) => `${page.path}: ${fault}`);
  });
  return { looked: pages.length, faults };
}

function titleOf({ elements }: Page): string {
  const title = elements.find(({ tagName }) => tagName === 'title');
  return title === undefined ? '' : textOf(title);
}

/** What is shown as code holds braces by right. */
function leftovers({ root }: Page): readonly string[] {
  return nodesOf(root)
    .flatMap((node) => [
      ...('value' in node && !isCode(node) ? [node.value] : []),
      ...('attrs' in node ? node.attrs.map(({ name, value }) => `${name}="${value}"`) : []),
    ])
    .filter((words) => LEFTOVER.test(words))
    .map((words) => `holds what a failed computation leaves: ${words.trim().slice(0, 80)}`);
}

function isCode(node: Node): boolean {
  return 'parentNode' in node && node.parentNode?.nodeName === 'code';
}

function emptyWords({ elements }: Page): readonly string[] {
  const isPictured = (element: Element): boolean =>
    nodesOf(element).some((node) => 'tagName' in node && node.tagName === 'img' && attributeOf(node, 'alt') !== '');
  return [
    ...elements
      .filter((element) => WORDED.includes(element.tagName) && textOf(element).trim() === '' && !isPictured(element))
      .map(({ tagName }) => `has a <${tagName}> without words`),
    ...elements
      .filter((element) => element.tagName === 'a' && !attributeOf(element, 'href'))
      .map((link) => `has a link that leads nowhere: ${textOf(link)}`),
  ];
}

function faultyIds({ elements, byId }: Page): readonly string[] {
  const ids = elements.flatMap((element) => attributeOf(element, 'id') ?? []);
  const references = elements.flatMap((element) =>
    REFERENCES.flatMap((name) => attributeOf(element, name)?.split(/\s+/) ?? []),
  );
  return [
    ...ids.filter((id, index) => ids.indexOf(id) !== index).map((id) => `has the id ${id} twice`),
    ...references.filter((id) => !byId.has(id)).map((id) => `refers to the id ${id}, which it does not have`),
  ];
}

function activeContent({ path, elements }: Page): readonly string[] {
  return [
    ...elements
      .filter(({ tagName }) => ACTIVE.includes(tagName))
      .filter((element) => !isData(element) && !isOwnScript(path, element))
      .map(({ tagName }) => `holds a <${tagName}>`),
    ...elements
      .flatMap(({ attrs }) => attrs)
      .filter(({ name, value }) => name === 'style' || /^on/i.test(name) || /^\s*javascript:/i.test(value))
      .map(({ name }) => `holds the attribute ${name}`),
  ];
}

/** Of exactly that type and with nothing else said of it; a browser runs no script of a type that it does not know. */
function isData({ tagName, attrs }: Element): boolean {
  return tagName === 'script' && attrs.length === 1 && attrs[0]?.name === 'type' && attrs[0].value === DATA;
}

function isOwnScript(path: string, { tagName, attrs }: Element): boolean {
  const tag = `<${[tagName, ...attrs.map(({ name, value }) => (value === '' ? name : `${name}=${value}`))].join(' ')}>`;
  return SCRIPTED[path]?.scripts.includes(tag) ?? false;
}

/** A policy binds what comes after it. */
function policy({ path, elements }: Page): readonly string[] {
  const at = elements.findIndex((element) => attributeOf(element, 'http-equiv') === 'Content-Security-Policy');
  const content = at < 0 ? '' : (attributeOf(elements[at] as Element, 'content') ?? '');
  const governed = elements.findIndex(({ tagName }) => GOVERNED.includes(tagName));
  if (at < 0 || at > governed) return ['has no content policy before what it would govern'];
  const rest = content.replace(SCRIPTED[path]?.policy ?? '', '');
  return rest.includes("default-src 'none'") && !/unsafe|https?:|\*|script-src|connect-src|worker-src/.test(rest)
    ? []
    : [`has a content policy that lets through too much: ${content}`];
}

function headings({ elements }: Page): readonly string[] {
  const count = elements.filter(({ tagName }) => tagName === 'h1').length;
  return count === 1 ? [] : [`has ${count} main headings`];
}
