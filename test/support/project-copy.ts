import { spawnSync } from 'node:child_process';
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { cacheFolder } from '../../src/commands/cache-folder.ts';
import { PROJECT, projectFiles } from './project-files.ts';

export interface CommandResult {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The whole project in a folder of its own, to build, change or break; to be removed with `using` or `remove`. */
export interface ProjectCopy extends Disposable {
  readonly root: string;
  /** Where its site is built. */
  readonly dist: string;
  read(path: string): string;
  /** Writes a file of the copy, new or not. */
  write(path: string, content: string): void;
  /** Removes a file or folder. */
  remove(path: string): void;
  /** Changes the text of a file. Throws when the change changes nothing: such a test would test nothing. */
  edit(path: string, change: (text: string) => string): void;
  /** Runs a script of package.json as `npm run` does, without npm, which takes half a second of its own. */
  run(script: string, words?: readonly string[], env?: NodeJS.ProcessEnv): CommandResult;
  /** Builds its site. Throws with what was printed when that fails. */
  build(env?: NodeJS.ProcessEnv): void;
}

export interface CopyOptions {
  /** Of the copy's folder: `a b` shows whether spaces are minded. */
  readonly name?: string;
  /** Files in the opposite order, so that nothing can lean on the order in which a folder lists them. */
  readonly backwards?: boolean;
  /** Root of a copy that was built: its builds' results and pages are taken over, as by a second build of that copy. */
  readonly builtAs?: string;
}

/** Where a copy keeps what Node compiled: its own paths would fill the cache of the project for good. */
export const compiledFolder = (root: string): string => join(root, '.astro', 'compiled');

/** Copies every file of the project; what is installed is shared with it. */
export function copyProject({ name = 'project', backwards = false, builtAs }: CopyOptions = {}): ProjectCopy {
  const outer = mkdtempSync(join(tmpdir(), 'copy-'));
  const root = join(outer, name);
  const files = backwards ? projectFiles().toReversed() : projectFiles();
  for (const path of files) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    copyFileSync(join(PROJECT, path), join(root, path));
  }
  symlinkSync(join(PROJECT, 'node_modules'), join(root, 'node_modules'), 'dir');
  if (builtAs !== undefined) {
    cpSync(cacheFolder(builtAs, builtAs), cacheFolder(root, root), { recursive: true });
    symlinkSync(compiledFolder(builtAs), compiledFolder(root), 'dir');
  }
  return openCopy(root, () => rmSync(outer, { recursive: true, force: true }));
}

/** A copy that already exists: its root. */
export function openCopy(root: string, dispose: () => void = () => {}): ProjectCopy {
  const read = (path: string): string => readFileSync(join(root, path), 'utf8');
  const write = (path: string, content: string): void => {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), content);
  };
  const run = (script: string, words: readonly string[] = [], env: NodeJS.ProcessEnv = {}): CommandResult => {
    // As npm does: the pinned runtime, which is a package, comes first.
    const path = [join(PROJECT, 'node_modules', '.bin'), process.env['PATH']].join(delimiter);
    // What the test runner says about itself, and what its caller works on, is not for the product.
    const { NODE_ENV, VITEST, TEST, DEV, PROD, MODE, INIT_CWD, LAGFOLIO_PUBLICATION, ...rest } = process.env;
    const [runtime, ...line] = scriptOf(root, script).split(' ');
    if (runtime !== 'node') throw new Error(`npm run ${script} is no program of Node's alone`);
    const { status, stdout, stderr } = spawnSync(process.execPath, [...line, ...words], {
      cwd: root,
      env: { ...rest, PATH: path, NODE_COMPILE_CACHE: compiledFolder(root), ...env },
      encoding: 'utf8',
      maxBuffer: 2 ** 28,
    });
    return { code: status, stdout, stderr };
  };
  return {
    root,
    dist: join(root, 'dist'),
    read,
    write,
    remove(path) {
      rmSync(join(root, path), { recursive: true });
    },
    edit(path, change) {
      const [before, after] = [read(path), change(read(path))];
      if (before === after) throw new Error(`the edit of ${path} changes nothing`);
      write(path, after);
    },
    run,
    build(env) {
      const { code, stdout, stderr } = run('build', [], env);
      if (code !== 0 || !existsSync(join(root, 'dist')))
        throw new Error(`the build of ${root} ended with code ${code}\n${stdout}${stderr}`);
    },
    [Symbol.dispose]: dispose,
  };
}

function scriptOf(root: string, name: string): string {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    readonly scripts: Readonly<Record<string, string>>;
  };
  return scripts[name] ?? '';
}
