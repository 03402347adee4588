/** Seeded single slips of the demonstration, each compiled and classified. */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { seededRandom } from '../../src/analysis/random.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import type { Published } from '../../src/register/published.ts';
import type { Finding, Register } from '../../src/register/register.ts';
import { compileRemembering } from '../../src/site/site.ts';
import { PROJECT } from '../support/project-files.ts';
import { CSV_KINDS, RIG_KINDS, SESSION_KINDS } from './kinds.ts';

/**
 * `got through` and `crash` are failures. `within scatter` is a slip that no rule sees because nothing in the files
 * contradicts it: one of the last three digits, where the reading is still one that its rig can give; and, in a file
 * without stamps, one row more like another or two rows exchanged.
 */
export type End = 'refused' | 'found' | 'unchanged' | 'within scatter' | 'got through' | 'crash';

const LAST_DIGITS = ['last digit', 'second last digit', 'third last digit'];
const ORDER = ['a row pasted twice', 'two rows exchanged'];

function isWithinScatter(kind: string, readings: string): boolean {
  return LAST_DIGITS.includes(kind) || (ORDER.includes(kind) && !readings.startsWith('run,source'));
}

export interface Outcome {
  readonly kind: string;
  readonly file: string;
  readonly end: End;
  readonly says: string;
  /** The files of problems that do not name the one with the slip as their cause. */
  readonly elsewhere: readonly string[];
}

const GROUPS = [
  { kinds: CSV_KINDS, folders: ['sessions'], ending: '.csv' },
  { kinds: SESSION_KINDS, folders: ['sessions'], ending: '.md' },
  { kinds: RIG_KINDS, folders: ['rigs', 'displays', 'bodies'], ending: '.md' },
];

/** A copy of the demonstration's files in a folder of its own. */
export function demonstrationCopy(): { readonly root: string } & Disposable {
  const root = mkdtempSync(join(tmpdir(), 'slips-'));
  for (const folder of ['data', 'content']) cpSync(join(PROJECT, folder), join(root, folder), { recursive: true });
  return { root, [Symbol.dispose]: () => rmSync(root, { recursive: true, force: true }) };
}

/** What was computed before is remembered, so that a slip costs one session's estimate and not all. */
export const compileCopy = (root: string): Promise<Published> =>
  compileRemembering({ root, dataDir: 'data', contentDir: 'content' });

export async function runSlips(seed: number, count: number): Promise<readonly Outcome[]> {
  using copy = demonstrationCopy();
  const compile = async (): Promise<Register> => (await compileCopy(copy.root)).register;
  const sound = await compile();
  const random = seededRandom(seed);
  const draw = (): number => random.uniform();
  const kinds = GROUPS.flatMap((group) =>
    Object.entries(group.kinds).map(([kind, change]) => ({ ...group, kind, change })),
  );
  const outcomes: Outcome[] = [];
  for (let at = 0; outcomes.length < count && at < 20 * count; at += 1) {
    const { kind, change, folders, ending } = kinds[at % kinds.length] ?? kinds[0]!;
    const files = folders.flatMap((folder) =>
      readdirSync(join(copy.root, 'data', folder))
        .filter((name) => name.endsWith(ending))
        .sort()
        .map((name) => `data/${folder}/${name}`),
    );
    const file = files[Math.floor(draw() * files.length)] ?? '';
    const before = readFileSync(join(copy.root, file), 'utf8');
    const after = change(before, draw);
    if (after === undefined || after === before) continue;
    writeFileSync(join(copy.root, file), after);
    const outcome = await classify(compile, sound, file);
    const end = outcome.end === 'got through' && isWithinScatter(kind, before) ? 'within scatter' : outcome.end;
    outcomes.push({ kind, file, ...outcome, end });
    writeFileSync(join(copy.root, file), before);
  }
  return outcomes;
}

async function classify(
  compile: () => Promise<Register>,
  sound: Register,
  file: string,
): Promise<Pick<Outcome, 'end' | 'says' | 'elsewhere'>> {
  const elsewhere: readonly string[] = [];
  try {
    const register = await compile();
    const known = new Set(sound.findings.map(keyOf));
    const id = /([^/]+)\.\w+$/.exec(file)?.[1] ?? '';
    const named = register.findings.find(
      (finding) => !known.has(keyOf(finding)) && JSON.stringify(finding).includes(id),
    );
    const was = new Map(sound.figures.map((figure) => [figure.id, figure.text]));
    const moved = register.figures.filter((figure) => was.get(figure.id) !== figure.text);
    if (named !== undefined) return { end: 'found', says: `${named.rule}: ${named.message}`, elsewhere };
    if (moved.length === 0 && register.figures.length === sound.figures.length)
      return { end: 'unchanged', says: '', elsewhere };
    const total = moved.find(({ kind }) => kind === 'total') ?? moved[0];
    return {
      end: 'got through',
      says: `${moved.length} moved, ${total?.id}: ${was.get(total?.id ?? '')} → ${total?.text}`,
      elsewhere,
    };
  } catch (error) {
    if (error instanceof ProblemsError && error.problems.every((problem) => problem.file !== ''))
      return {
        end: 'refused',
        says: error.message.split('\n')[2] ?? '',
        elsewhere: error.problems.flatMap((problem) =>
          problem.file === file || JSON.stringify(problem).includes(file) ? [] : [problem.file],
        ),
      };
    return { end: 'crash', says: error instanceof Error ? (error.stack ?? error.message) : String(error), elsewhere };
  }
}

function keyOf({ rule, where, message }: Finding): string {
  return JSON.stringify([rule, where, message]);
}
