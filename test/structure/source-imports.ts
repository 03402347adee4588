import { readFileSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import ts from 'typescript';
import { PROJECT, projectFiles } from '../support/project-files.ts';

export interface Import {
  /** File that imports: `src/site/site.ts`. */
  readonly from: string;
  /** As written: `../model/bench.ts`, `vega`. */
  readonly specifier: string;
  /** The file of the project that it names, without a query; undefined for another's package. */
  readonly to: string | undefined;
  /** `import type`: gone before the program runs. */
  readonly isType: boolean;
}

/** Files that are imported by a name of package.json: `lagfolio/site`. */
const OWN_NAMES: ReadonlyMap<string, string> = new Map(
  Object.entries(readPackage().exports).map(([name, file]) => [`lagfolio${name.slice(1)}`, posix.normalize(file)]),
);

function readPackage(): { readonly exports: Readonly<Record<string, string>> } {
  return JSON.parse(readFileSync(join(PROJECT, 'package.json'), 'utf8')) as ReturnType<typeof readPackage>;
}

/** Every file under src that can import, with what it imports, read by the TypeScript parser. */
export function readSourceImports(): ReadonlyMap<string, readonly Import[]> {
  const files = projectFiles('src').filter((path) => /\.(?:ts|astro)$/.test(path));
  return new Map(files.map((path) => [path, importsOf(path, readFileSync(join(PROJECT, path), 'utf8'))]));
}

/** Static and dynamic imports, re-exports and import types. Of an .astro file, those between its fences. */
export function importsOf(path: string, text: string): readonly Import[] {
  const source = path.endsWith('.astro') ? (/^---\r?\n([\s\S]*?)^---\s*$/m.exec(text)?.[1] ?? '') : text;
  const found: Import[] = [];
  const add = (specifier: ts.Node | undefined, isType: boolean): void => {
    if (!specifier || !ts.isStringLiteralLike(specifier)) return;
    const isRelative = specifier.text.startsWith('.');
    const to = isRelative
      ? posix.join(dirname(path), specifier.text.replace(/\?.*$/, ''))
      : OWN_NAMES.get(specifier.text);
    found.push({ from: path, specifier: specifier.text, to, isType });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node))
      add(node.moduleSpecifier, node.importClause?.phaseModifier === ts.SyntaxKind.TypeKeyword);
    else if (ts.isExportDeclaration(node)) add(node.moduleSpecifier, node.isTypeOnly);
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument)) add(node.argument.literal, true);
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      add(node.arguments[0], false);
    ts.forEachChild(node, visit);
  };
  visit(ts.createSourceFile(path, source, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS));
  return found;
}
