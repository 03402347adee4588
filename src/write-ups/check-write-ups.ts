/**
 * Whether every write-up asks for parts, properties, figures and pages that exist. All mistakes, each with its place.
 */
import { posix } from 'node:path';
import type { Inventory } from '../ingest/inventory.ts';
import { ELEMENTS } from '../ingest/markup/elements.ts';
import { nearest } from '../ingest/nearest.ts';
import type { Part, WriteUp, WriteUpLink } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import { countIds } from '../register/bench-figures.ts';
import { KINDS } from '../register/kinds.ts';
import { methodPath, reportPath } from '../register/paths.ts';
import type { Published } from '../register/published.ts';
import { pagePaths, sitePaths } from '../register/site-paths.ts';
import { answeringAll } from './answering.ts';
import { partNamed, PARTS } from './parts.ts';
import { readProps, valuesOf, type Answering, type PartDefinition } from './parts/definition.ts';
import { checkValue, choice, type Known } from './parts/property.ts';

/** What write-ups may refer to; and what answers them, where the bench is sound. */
export interface KnownOfAll extends Known {
  readonly writeUps: readonly WriteUp[];
  readonly pages: ReadonlySet<string>;
  readonly answering: ReadonlyMap<WriteUp, Answering>;
  /** Whether write-ups may hold code; where they may not, ingest has refused it. */
  readonly allowsCode: boolean;
}

/** Of a sound bench and its register. */
export function knownOf(site: Published): KnownOfAll {
  const { bench, register } = site;
  const idsOf = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  const ids = new Set(idsOf(register.figures));
  return {
    bodies: idsOf(bench.bodies),
    rigs: idsOf(bench.rigs),
    sessions: idsOf(bench.sessions),
    methods: idsOf(bench.methods),
    settings: bench.settings,
    writeUps: [...bench.methods, ...bench.reports],
    figures: ids,
    isFigure: (id) => ids.has(id),
    pages: new Set(sitePaths(bench)),
    answering: new Map(answeringAll(site).map(({ writeUp, answering }) => [writeUp, answering])),
    allowsCode: bench.site.writeUpsRunCode,
  };
}

/** Of a bench with mistakes: the figures and pages that it would have without them. Nothing can be answered from it. */
export function expectedOf(inventory: Inventory): KnownOfAll {
  const { sessions, displayPairs, bodies } = inventory;
  const ofEach = (ids: readonly string[], kinds: readonly string[]): readonly string[] =>
    ids.flatMap((id) => kinds.map((kind) => `${kind}/${id}`));
  const kinds = Object.keys(KINDS);
  const figures = new Set([
    ...ofEach(sessions, kinds),
    ...ofEach(
      displayPairs,
      kinds.filter((kind) => kind.startsWith('display-')),
    ),
    ...countIds(bodies),
  ]);
  return {
    ...inventory,
    figures,
    // Figures of several sessions come from their values, which a faulty bench does not have.
    isFigure: (id) => figures.has(id) || isOfSeveral(id),
    pages: new Set(pagePaths(inventory)),
    answering: new Map(),
    allowsCode: false,
  };
}

/** Whether a figure with this id would be of several sessions: `difference/a/b`, `family/report-a`. */
function isOfSeveral(id: string): boolean {
  return id.startsWith('family/') || (id.split('/').length > 2 && !id.startsWith('count/'));
}

export function checkWriteUps(known: KnownOfAll): readonly Problem[] {
  return known.writeUps.flatMap((writeUp) => [
    ...writeUp.parts.flatMap((part) => {
      const at = { file: writeUp.file.path, line: part.line, column: part.column };
      return checkPart(writeUp, part, known).map((problem): Problem => ({ ...problem, ...at }));
    }),
    ...writeUp.links.flatMap((link) => checkLink(writeUp, link, known)),
  ]);
}

/** A problem in a part, whose place is the part's. */
type InPart = Omit<Problem, 'file' | 'line' | 'column'>;

function checkPart(writeUp: WriteUp, part: Part, known: KnownOfAll): readonly InPart[] {
  const definition = partNamed(part.name);
  if (definition === undefined) {
    if (writeUp.ownNames.includes(part.name)) return [];
    const names = PARTS.map(({ name }) => name);
    return /^[A-Z]/.test(part.name)
      ? [{ code: 'unknown-part', ...choice(part.name, names) }]
      : [{ code: 'refused-element', found: part.name, nearest: nearest(part.name, [...names, ...ELEMENTS]) }];
  }
  const given = Object.keys(part.attributes);
  if (known.allowsCode && definition.isSettledBefore === true) {
    const open = given.filter((name) => part.attributes[name]?.known !== true || name === '...');
    if (open.length > 0) return open.map((name) => ({ code: 'not-plain', key: part.name, found: name }));
  }
  // What a spread of a trusted write-up holds is known only when the part is drawn, which checks again.
  if (given.includes('...')) return [];
  const wrong = [
    ...checkNames(definition, given),
    ...checkValues(definition, part, known),
    ...checkWords(definition, part),
  ];
  return wrong.length > 0 ? wrong : checkAnswer(definition, part, known.answering.get(writeUp));
}

/** A misspelt property is one mistake, not also a missing one. */
function checkNames({ name: part, properties, needs }: PartDefinition, given: readonly string[]): readonly InPart[] {
  const unknown = given
    .filter((name) => !(name in properties))
    .map((name): InPart => ({ code: 'unknown-property', key: part, ...choice(name, Object.keys(properties)) }));
  const meant = [...given, ...unknown.flatMap((problem) => problem.nearest ?? [])];
  const missing = needs
    .map((need) => (typeof need === 'string' ? [need] : need))
    .filter((need) => !need.some((name) => meant.includes(name)))
    .map((need): InPart => ({ code: 'missing-property', key: part, expected: need.join(' or ') }));
  return [...unknown, ...missing];
}

function checkValues(definition: PartDefinition, part: Part, known: Known): readonly InPart[] {
  const values = valuesOf(part);
  const inProperties = Object.entries(definition.properties).flatMap(([key, property]) =>
    checkValue(property, values[key], known).map((problem) => ({ ...problem, key })),
  );
  const together = definition.check?.(values, known) ?? [];
  return [...inProperties, ...together].map((problem) => ({ ...problem, key: `${part.name} ${problem.key}` }));
}

/** Words that a part marks must stand between its tags, by themselves. */
function checkWords({ marksWords }: PartDefinition, { name, words = '', holds = [] }: Part): readonly InPart[] {
  if (marksWords !== true) return [];
  if (words === '') return [{ code: 'no-words', key: name }];
  const [first] = holds;
  return first === undefined ? [] : [{ code: 'nested-words', key: name, found: first }];
}

function checkAnswer(definition: PartDefinition, part: Part, answering: Answering | undefined): readonly InPart[] {
  const props = readProps(definition, part);
  if (answering === undefined || props === undefined) return [];
  const code = definition.whyEmpty?.(props, answering);
  return code === undefined ? [] : [{ code, key: part.name }];
}

function checkLink(
  { id, file }: WriteUp,
  { to, line, column }: WriteUpLink,
  { pages }: KnownOfAll,
): readonly Problem[] {
  const isElsewhere = /^(?:[a-z][a-z0-9+.-]*:|\/\/)/i.test(to);
  const written = to.replace(/[?#].*$/, '');
  if (isElsewhere || written === '') return [];
  const from = file.path.split('/').at(-2) === 'methods' ? methodPath(id) : reportPath(id);
  // Joined without the leading slash, a link that climbs out of the site keeps its `../` and so finds no page.
  const path = written.startsWith('/') ? written : `/${posix.join(from.slice(1), written)}`;
  return pages.has(path) || (!pages.has('/data/settings.yaml') && path.startsWith('/data/'))
    ? []
    : [{ code: 'unknown-page', file: file.path, line, column, found: path, nearest: nearest(path, [...pages]) }];
}
