/**
 * Runs a program on the Node that the lockfile pins: `node launch.mjs PROGRAM [WORD ...]`.
 *
 * npm 11 and newer find that one first by themselves, and this process is on it already. The npm that comes with
 * Node 20 does not link it where packages of other platforms are optional, too: then it is started from here.
 * Plain JavaScript, since any Node from 20 on has to run it.
 *
 * What Node compiles is kept among the packages for the next command, which then starts in half the time. Node takes
 * it over only where the source is the same to the byte; it can be deleted at any time.
 */
import { spawn } from 'node:child_process';
import { existsSync, realpathSync } from 'node:fs';
import module from 'node:module';
import { delimiter, dirname, resolve } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const modules = fileURLToPath(new URL('../../node_modules/', import.meta.url));
const name = process.platform === 'win32' ? 'node.exe' : 'node';
const pinned = ['node-', 'node-bin-']
  .map((start) => resolve(modules, `${start}${process.platform.replace('32', '')}-${process.arch}`, 'bin', name))
  .find((path) => existsSync(path));

process.env.NODE_COMPILE_CACHE ??= resolve(modules, '.cache', 'compiled');

const [program = '', ...words] = process.argv.slice(2);

if (pinned === undefined || realpathSync(pinned) === realpathSync(process.execPath)) {
  process.argv.splice(1, 2, resolve(program));
  module.enableCompileCache?.();
  await import('./no-requests.ts');
  await import(pathToFileURL(resolve(program)).href);
} else {
  const path = [dirname(pinned), process.env.PATH].join(delimiter);
  const child = spawn(pinned, [fileURLToPath(import.meta.url), program, ...words], {
    stdio: 'inherit',
    env: { ...process.env, PATH: path },
  });
  // a terminal sends these to both; this process has to outlast the other to hand on how it ended
  process.on('SIGINT', () => {});
  for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.on('exit', (code, signal) => {
    process.exitCode = code ?? (signal === 'SIGINT' ? 130 : 1);
  });
}
