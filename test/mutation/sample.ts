/**
 * Lets Stryker try a share of all mutants, the same ones for the same seed: the rest is told to be invalid, which
 * counts for nothing in its score. Read by `run.ts`, which says share and seed in the environment.
 */
import { createHash } from 'node:crypto';

interface Mutant {
  readonly id: string;
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement: string;
  readonly location: object;
}

type Result = { readonly status: 'passed' } | { readonly status: 'compileError'; readonly reason: string };

const share = Number(process.env['MUTANTS_SHARE'] ?? 1);
const seed = process.env['MUTANTS_SEED'] ?? '';

/** Where a mutant falls between 0 and 1: evenly spread, and the same wherever the project stands. */
function placeOf({ fileName, mutatorName, replacement, location }: Mutant): number {
  const path = fileName.replace(/^.*?(?=src\/)/, '');
  const digest = createHash('sha256')
    .update(JSON.stringify([seed, path, mutatorName, replacement, location]))
    .digest();
  return digest.readUInt32BE() / 2 ** 32;
}

class SampleChecker {
  async init(): Promise<void> {}

  async check(mutants: readonly Mutant[]): Promise<Readonly<Record<string, Result>>> {
    return Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        placeOf(mutant) < share ? { status: 'passed' } : { status: 'compileError', reason: 'not in the sample' },
      ]),
    );
  }
}

export const strykerPlugins = [{ kind: 'Checker', name: 'sample', injectableClass: SampleChecker }];
