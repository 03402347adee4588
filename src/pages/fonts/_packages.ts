import { createRequire } from 'node:module';
import { TOOL } from 'lagfolio/site';

/** The package that brings each family. */
export const FONT_PACKAGES: ReadonlyMap<string, string> = new Map([
  ['source-serif-4', '@fontsource-variable/source-serif-4'],
  ['source-sans-3', '@fontsource-variable/source-sans-3'],
]);

/** Where a file of an installed package stands. */
export function fileOfPackage(name: string, file: string): string {
  return createRequire(`${TOOL}package.json`).resolve(`${name}/${file}`);
}
