import { createRequire } from 'node:module';
import { TOOL } from 'lagfolio/site';

/** Where a file of an installed package stands. */
export function fileOfPackage(name: string, file: string): string {
  return createRequire(`${TOOL}package.json`).resolve(`${name}/${file}`);
}
