/** Whether every write-up asks for parts, properties, figures and pages that exist. All mistakes, each with its place. */
import { posix } from 'node:path';
import type { Inventory } from '../ingest/inventory.ts';
import { nearest } from '../ingest/nearest.ts';
import type { Bench, Part, WriteUp, WriteUpLink } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import { countIds } from '../register/bench-figures.ts';
import { checkComparison } from './check-comparison.ts';
import { bodyFamilies } from '../register/comparisons/body-families.ts';
import { choicesOf } from '../register/comparisons/choices.ts';
import { selectPairs, type PairQuery } from '../register/comparisons/select-pairs.ts';
import { settingFamilies } from '../register/comparisons/setting-families.ts';
import { checkClaimShape, checkWords } from './claims/check-shape.ts';
import { isKind, KINDS } from '../register/kinds.ts';
import { RANKABLE } from '../register/comparisons/ranking.ts';
import type { Figure, Register } from '../register/register.ts';
import { methodPath, reportPath } from '../register/paths.ts';
import { selectFigures, type Query } from '../register/select.ts';
import { pagePaths, sitePaths } from '../register/site-paths.ts';
import { PARTS, propertiesOf } from './parts.ts';

/** What write-ups may refer to. */
export interface Known extends Pick<Inventory, 'bodies' | 'rigs' | 'sessions' | 'methods' | 'settings' | 'writeUps'> {
  readonly figures: ReadonlySet<string>;
  readonly pages: ReadonlySet<string>;
  isFigure(id: string): boolean;
  /** Whether any figure matches; always true while that cannot be told. */
  hasAny(query: Query): boolean;
  /** Whether what a part compares, or asks of settings, exists; always true while that cannot be told. */
  hasAnswer(asked: Asked): boolean;
}

/** What a part asks of several sessions together. */
export interface Asked extends PairQuery {
  readonly part: 'DifferenceTable' | 'DifferenceChart' | 'Effects' | 'Advice';
}

/** Of a sound bench and its register. */
export function knownOf(bench: Bench, { figures }: Register): Known {
  const idsOf = (list: readonly { readonly id: string }[]): readonly string[] => list.map(({ id }) => id);
  const ids = new Set(idsOf(figures));
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
    hasAny: (query) => selectFigures(bench, figures, query).length > 0,
    hasAnswer: (asked) => hasAnswer(bench, figures, asked),
  };
}

/** Of a bench with mistakes: the figures and pages that it would have without them. */
export function expectedOf(inventory: Inventory): Known {
  const { sessions, bodies } = inventory;
  const figures = new Set([
    ...sessions.flatMap((id) => Object.keys(KINDS).map((kind) => `${kind}/${id}`)),
    ...countIds(bodies),
  ]);
  return {
    ...inventory,
    figures,
    // Figures of several sessions come from their values, which a faulty bench does not have.
    isFigure: (id) => figures.has(id) || isOfSeveral(id),
    pages: new Set(pagePaths(inventory)),
    hasAny: () => true,
    hasAnswer: () => true,
  };
}

/** Whether a figure with this id would be of several sessions: `difference/a/b`. */
function isOfSeveral(id: string): boolean {
  return id.split('/').length > 2 && !id.startsWith('count/');
}

function hasAnswer(bench: Bench, figures: readonly Figure[], { part, ...query }: Asked): boolean {
  if (part === 'Effects')
    return figures.some(({ kind, of }) => kind === 'effect' && of['body'] === query.body && of['rig'] === query.rig);
  if (part === 'Advice') return choicesOf(bench).some(({ body, rig }) => body === query.body && rig === query.rig);
  return selectPairs(bench, [...settingFamilies(bench), ...bodyFamilies(bench)], query).length > 0;
}

/** Parts that put figures in order, and so take only what has one. */
const RANKING = new Set(['Ranking', 'Lowest', 'Highest']);

export function checkWriteUps(known: Known): readonly Problem[] {
  return known.writeUps.flatMap((writeUp) => [
    ...writeUp.parts.flatMap((part) => checkPart(writeUp, part, known)),
    ...writeUp.links.flatMap((link) => checkLink(writeUp, link, known)),
  ]);
}

function checkPart(writeUp: WriteUp, part: Part, known: Known): readonly Problem[] {
  const at = { file: writeUp.file.path, line: part.line, column: part.column };
  const definition = PARTS[part.name];
  if (definition === undefined) {
    return writeUp.ownNames.includes(part.name)
      ? []
      : [{ code: 'unknown-part', ...at, ...choice(part.name, Object.keys(PARTS)) }];
  }
  const given = Object.keys(part.attributes);
  if (part.name === 'Claim') {
    const open = given.filter((name) => part.attributes[name]?.known !== true || name === '...');
    if (open.length > 0)
      return open.map((name): Problem => ({ code: 'not-plain', ...at, key: part.name, found: name }));
  }
  // What a spread holds is known only when the part is drawn, which checks again.
  if (given.includes('...')) return [];
  const key = (name: string): Pick<Problem, 'key'> => ({ key: `${part.name} ${name}` });
  const unknown = given
    .filter((name) => !(name in definition.properties))
    .map(
      (name): Problem => ({
        code: 'unknown-property',
        ...at,
        key: part.name,
        ...choice(name, propertiesOf(definition)),
      }),
    );
  // A misspelt property is one mistake, not also a missing one.
  const meant = [...given, ...unknown.flatMap((problem) => problem.nearest ?? [])];
  const missing = definition.needs
    .filter((need) => !(typeof need === 'string' ? [need] : need).some((name) => meant.includes(name)))
    .map(
      (need): Problem => ({
        code: 'missing-property',
        ...at,
        key: part.name,
        expected: typeof need === 'string' ? need : need.join(' or '),
      }),
    );
  const value = (name: string): unknown => {
    const attribute = part.attributes[name];
    return attribute?.known === true ? attribute.value : undefined;
  };
  const mustBe = (name: string, choices: readonly string[], code: Problem['code']): readonly Problem[] => {
    const found = value(name);
    if (found === undefined || (typeof found === 'string' && choices.includes(found))) return [];
    return [
      { code, ...at, ...key(name), ...choice(typeof found === 'string' ? found : JSON.stringify(found), choices) },
    ];
  };
  const ids = part.name === 'Figure' ? value('id') : value('ids');
  const idsAttribute = part.name === 'Figure' ? 'id' : 'ids';
  const figures = (ids === undefined ? [] : Array.isArray(ids) ? (ids as readonly unknown[]) : [ids]).flatMap(
    (id): readonly Problem[] =>
      typeof id === 'string' && known.isFigure(id)
        ? []
        : [
            {
              code: 'unknown-figure',
              ...at,
              ...key(idsAttribute),
              found: String(id),
              nearest: nearest(String(id), [...known.figures]),
            },
          ],
  );
  const wrong = [
    ...unknown,
    ...missing,
    ...figures,
    ...(part.name === 'FigureTable' || part.name === 'FigureChart'
      ? mustBe('kind', Object.keys(KINDS), 'bad-choice')
      : []),
    ...(RANKING.has(part.name) ? mustBe('kind', [...RANKABLE], 'bad-choice') : []),
    ...mustBe('bands', ['sound'], 'bad-choice'),
    ...mustBe('body', known.bodies, 'unknown-body'),
    ...mustBe('rig', known.rigs, 'unknown-rig'),
    ...mustBe('session', known.sessions, 'unknown-session'),
    ...mustBe('method', known.methods, 'unknown-method'),
    ...(part.name === 'MethodNote' ? mustBe('of', known.methods, 'unknown-method') : []),
    ...checkComparison(part.name, value, known).map(
      (problem): Problem => ({ ...problem, ...at, key: `${part.name} ${problem.key}` }),
    ),
    ...(part.name === 'Claim'
      ? checkClaimShape(value, known).map(
          (problem): Problem => ({ ...problem, ...at, key: `${part.name} ${problem.key}` }),
        )
      : []),
    ...checkWords(part).map((problem): Problem => ({ ...problem, ...at, key: part.name })),
    ...checkWhere(value('where'), known).map((problem): Problem => ({ ...problem, ...at, ...key('where') })),
  ];
  return wrong.length > 0 ? wrong : [...checkSelection(part, value, at, known), ...checkAnswer(part, value, at, known)];
}

type Unplaced = Pick<Problem, 'code' | 'found' | 'expected' | 'choices' | 'nearest'>;

function checkWhere(where: unknown, { settings }: Known): readonly Unplaced[] {
  if (where === undefined) return [];
  if (typeof where !== 'object' || where === null || Array.isArray(where)) {
    return [
      {
        code: 'wrong-shape',
        found: JSON.stringify(where),
        expected: 'settings and levels, such as {{ resolution: "uhd" }}',
      },
    ];
  }
  return Object.entries(where).flatMap(([name, level]): readonly Unplaced[] => {
    const setting = settings.find(({ id }) => id === name);
    if (setting === undefined)
      return [
        {
          code: 'unknown-setting',
          ...choice(
            name,
            settings.map(({ id }) => id),
          ),
        },
      ];
    const levels = setting.levels.map(({ id }) => id);
    return levels.includes(String(level)) ? [] : [{ code: 'unknown-level', ...choice(String(level), levels) }];
  });
}

function checkSelection(
  part: Part,
  value: (name: string) => unknown,
  at: Pick<Problem, 'file' | 'line' | 'column'>,
  { hasAny }: Known,
): readonly Problem[] {
  const kind = PARTS[part.name]?.selects ?? value('kind');
  if (typeof kind !== 'string' || !isKind(kind)) return [];
  const text = (name: string): string | undefined =>
    typeof value(name) === 'string' ? String(value(name)) : undefined;
  const where = value('where') as Readonly<Record<string, string>> | undefined;
  const query = { kind, body: text('body'), rig: text('rig'), method: text('method'), where };
  return hasAny(query) ? [] : [{ code: 'empty-selection', ...at, key: part.name }];
}

function checkAnswer(
  { name }: Part,
  value: (name: string) => unknown,
  at: Pick<Problem, 'file' | 'line' | 'column'>,
  { hasAnswer: has }: Known,
): readonly Problem[] {
  if (name !== 'DifferenceTable' && name !== 'DifferenceChart' && name !== 'Effects' && name !== 'Advice') return [];
  const text = (key: string): string | undefined => (typeof value(key) === 'string' ? String(value(key)) : undefined);
  const asked = {
    part: name,
    pairs: value('pairs'),
    setting: text('setting'),
    body: text('body'),
    rig: text('rig'),
    where: value('where'),
  } as Asked;
  return has(asked) ? [] : [{ code: 'empty-comparison', ...at, key: name }];
}

function checkLink({ id, file }: WriteUp, { to, line, column }: WriteUpLink, { pages }: Known): readonly Problem[] {
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

function choice(found: string, choices: readonly string[]): Pick<Problem, 'found' | 'choices' | 'nearest'> {
  return { found, choices, nearest: nearest(found, choices) };
}
