import { readFileSync } from 'node:fs';
import { parseOutput } from '../reference/compare-outputs.ts';

/** What R printed for one script of test/reference: numbers by name. Throws where the name is not there. */
export function readReference(script: string): (name: string) => readonly number[] {
  const entries = parseOutput(readFileSync(new URL(`../reference/outputs/${script}.txt`, import.meta.url), 'utf8'));
  return (name) => {
    const values = entries.get(name);
    if (!values) throw new Error(`${script}.R prints no '${name}'; it prints ${[...entries.keys()].join(', ')}`);
    return values;
  };
}
