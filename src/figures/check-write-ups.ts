/** Whether every write-up asks for parts, properties, figures and pages that exist. All mistakes, each with its place. */
import { nearest } from '../ingest/nearest.ts';
import type { Bench, Part, WriteUp, WriteUpLink } from '../model/bench.ts';
import type { Problem } from '../model/problem.ts';
import { isKind, KINDS } from './kinds.ts';
import type { Register } from './register.ts';
import { selectFigures } from './select.ts';
import { sitePaths } from './site-paths.ts';
import { PARTS } from './write-up-parts.ts';

interface Known {
  readonly bench: Bench;
  readonly register: Register;
  readonly figureIds: ReadonlySet<string>;
  readonly pages: ReadonlySet<string>;
}

export function checkWriteUps(bench: Bench, register: Register): readonly Problem[] {
  const known: Known = {
    bench,
    register,
    figureIds: new Set(register.figures.map(({ id }) => id)),
    pages: new Set(sitePaths(bench)),
  };
  return [...bench.methods, ...bench.reports].flatMap((writeUp) => [
    ...writeUp.parts.flatMap((part) => checkPart(writeUp, part, known)),
    ...writeUp.links.flatMap((link) => checkLink(writeUp, link, known)),
  ]);
}

function checkPart(writeUp: WriteUp, part: Part, known: Known): readonly Problem[] {
  const at = { file: writeUp.file.path, line: part.line, column: part.column };
  const definition = PARTS[part.name];
  if (definition === undefined) {
    return writeUp.ownNames.includes(part.name) ? [] : [{ code: 'unknown-part', ...at, ...choice(part.name, Object.keys(PARTS)) }];
  }
  const given = Object.keys(part.attributes);
  // What a spread holds is known only when the part is drawn, which checks again.
  if (given.includes('...')) return [];
  const key = (name: string): Pick<Problem, 'key'> => ({ key: `${part.name} ${name}` });
  const unknown = given
    .filter((name) => !definition.takes.includes(name))
    .map((name): Problem => ({ code: 'unknown-property', ...at, key: part.name, ...choice(name, definition.takes) }));
  const missing = definition.needs
    .filter((need) => !(typeof need === 'string' ? [need] : need).some((name) => given.includes(name)))
    .map((need): Problem => ({ code: 'missing-property', ...at, key: part.name, expected: typeof need === 'string' ? need : need.join(' or ') }));
  const value = (name: string): unknown => {
    const attribute = part.attributes[name];
    return attribute?.known === true ? attribute.value : undefined;
  };
  const mustBe = (name: string, choices: readonly string[], code: Problem['code']): readonly Problem[] => {
    const found = value(name);
    if (found === undefined || (typeof found === 'string' && choices.includes(found))) return [];
    return [{ code, ...at, ...key(name), ...choice(typeof found === 'string' ? found : JSON.stringify(found), choices) }];
  };
  const ids = part.name === 'Figure' ? value('id') : value('ids');
  const idsAttribute = part.name === 'Figure' ? 'id' : 'ids';
  const { bench, figureIds } = known;
  const figures = (ids === undefined ? [] : Array.isArray(ids) ? (ids as readonly unknown[]) : [ids]).flatMap((id): readonly Problem[] =>
    typeof id === 'string' && figureIds.has(id) ? [] : [{ code: 'unknown-figure', ...at, ...key(idsAttribute), found: String(id), nearest: nearest(String(id), [...figureIds]) }],
  );
  const wrong = [
    ...unknown,
    ...missing,
    ...figures,
    ...(part.name === 'FigureTable' || part.name === 'FigureChart' ? mustBe('kind', Object.keys(KINDS), 'bad-choice') : []),
    ...mustBe('body', idsOf(bench.bodies), 'unknown-body'),
    ...mustBe('rig', idsOf(bench.rigs), 'unknown-rig'),
    ...mustBe('session', idsOf(bench.sessions), 'unknown-session'),
    ...mustBe('method', idsOf(bench.methods), 'unknown-method'),
    ...mustBe('of', idsOf(bench.methods), 'unknown-method'),
    ...checkWhere(value('where'), known.bench).map((problem): Problem => ({ ...problem, ...at, ...key('where') })),
  ];
  return wrong.length > 0 ? wrong : checkSelection(part, value, at, known);
}

type Unplaced = Pick<Problem, 'code' | 'found' | 'expected' | 'choices' | 'nearest'>;

function checkWhere(where: unknown, { settings }: Bench): readonly Unplaced[] {
  if (where === undefined) return [];
  if (typeof where !== 'object' || where === null || Array.isArray(where)) {
    return [{ code: 'wrong-shape', found: JSON.stringify(where), expected: 'settings and levels, such as {{ resolution: "uhd" }}' }];
  }
  return Object.entries(where).flatMap(([name, level]): readonly Unplaced[] => {
    const setting = settings.find(({ id }) => id === name);
    if (setting === undefined) return [{ code: 'unknown-setting', ...choice(name, idsOf(settings)) }];
    const levels = idsOf(setting.levels);
    return levels.includes(String(level)) ? [] : [{ code: 'unknown-level', ...choice(String(level), levels) }];
  });
}

function checkSelection(part: Part, value: (name: string) => unknown, at: Pick<Problem, 'file' | 'line' | 'column'>, { bench, register }: Known): readonly Problem[] {
  const kind = value('kind');
  if (typeof kind !== 'string' || !isKind(kind)) return [];
  const text = (name: string): string | undefined => (typeof value(name) === 'string' ? String(value(name)) : undefined);
  const where = value('where') as Readonly<Record<string, string>> | undefined;
  const query = { kind, body: text('body'), rig: text('rig'), method: text('method'), where };
  return selectFigures(bench, register.figures, query).length > 0 ? [] : [{ code: 'empty-selection', ...at, key: part.name }];
}

function checkLink({ file }: WriteUp, { to, line, column }: WriteUpLink, { pages }: Known): readonly Problem[] {
  if (!to.startsWith('/') || to.startsWith('//')) return [];
  const path = to.replace(/[?#].*$/, '');
  return pages.has(path) ? [] : [{ code: 'unknown-page', file: file.path, line, column, found: path, nearest: nearest(path, [...pages]) }];
}

function choice(found: string, choices: readonly string[]): Pick<Problem, 'found' | 'choices' | 'nearest'> {
  return { found, choices, nearest: nearest(found, choices) };
}

function idsOf(list: readonly { readonly id: string }[]): readonly string[] {
  return list.map(({ id }) => id);
}
