/** The compiled site as pages see it: read and computed once per build, again when a file changes in development. */
import { join } from 'node:path';
import type { Bench } from '../model/bench.ts';
import { compileSite } from './compile.ts';
import { EstimateMemory } from './estimate-memory.ts';
import { lookup, type Lookup } from './lookup.ts';
import type { Figure, Finding, Register } from './register.ts';

export interface Site {
  readonly bench: Bench;
  readonly register: Register;
  readonly find: Lookup;
  /** The figure with this id; undefined when there is none. */
  figure(id: string): Figure | undefined;
  /** Every figure of one session alone, in the order of the register. */
  figuresOf(session: string): readonly Figure[];
  findingsOf(key: string, id: string): readonly Finding[];
}

interface Shared {
  /** The latest reading of the files: under way, or done without a mistake. */
  site?: Promise<Site> | undefined;
  readonly memory: EstimateMemory;
}

/**
 * Kept on the global object: the command and the pages that it bundles are two copies of this module, and
 * must not compute everything twice.
 */
const SHARED = Symbol.for('lagfolio.site');
const holder = globalThis as { [SHARED]?: Shared };
const shared = (holder[SHARED] ??= { memory: new EstimateMemory() });

/**
 * Reads `data/` and `content/` of the current folder, once until `forgetSite`. Rejects with a ProblemsError
 * when they hold mistakes; the next call reads them again.
 */
export function loadSite(): Promise<Site> {
  if (shared.site === undefined) {
    const site = readSite(process.cwd(), shared.memory);
    shared.site = site;
    site.catch(() => {
      if (shared.site === site) forgetSite();
    });
  }
  return shared.site;
}

/** Makes the next `loadSite` read the files again. */
export function forgetSite(): void {
  shared.site = undefined;
}

async function readSite(root: string, memory: EstimateMemory): Promise<Site> {
  const { bench, register } = await compileSite(
    { root, dataDir: join(root, 'data'), contentDir: join(root, 'content') },
    memory.estimate,
  );
  memory.forgetUnused();
  const byId = new Map(register.figures.map((figure) => [figure.id, figure]));
  const bySession = Map.groupBy(
    register.figures.filter(({ of }) => of['than'] === undefined),
    ({ of }) => of['session'],
  );
  return {
    bench,
    register,
    find: lookup(bench),
    figure: (id) => byId.get(id),
    figuresOf: (session) => bySession.get(session) ?? [],
    findingsOf: (key, id) => register.findings.filter(({ where }) => where[key] === id),
  };
}
