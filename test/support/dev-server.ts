import { stripVTControlCharacters } from 'node:util';
import { spawn } from 'node:child_process';
import { delimiter, join } from 'node:path';
import { compiledFolder } from './project-copy.ts';
import { PROJECT } from './project-files.ts';

/** The development server of a project, running. */
export interface DevServer extends AsyncDisposable {
  /** `http://127.0.0.1:4321`, without a final slash. */
  readonly origin: string;
  /** Everything it has printed so far, without colours. */
  printed(): string;
}

const START_MS = 120_000;

/** Starts `npm run dev` of a tool, on its own demonstration or on a publication, and waits until it serves. */
export async function startDevServer(root: string, publication: string = root): Promise<DevServer> {
  let printed = '';
  const { NODE_ENV, VITEST, TEST, DEV, PROD, MODE, ...env } = process.env;
  // not through npm, which would stand between the server and the signal that ends it
  const child = spawn(process.execPath, [join(root, 'src/commands/dev.ts'), '--host', '127.0.0.1'], {
    cwd: root,
    env: {
      ...env,
      LAGFOLIO_PUBLICATION: publication,
      NODE_COMPILE_CACHE: compiledFolder(root),
      PATH: [join(PROJECT, 'node_modules', '.bin'), env['PATH']].join(delimiter),
      NO_COLOR: '1',
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = new Promise<void>((resolve) => child.once('exit', () => resolve()));
  const origin = await new Promise<string>((resolve, reject) => {
    const timer = setTimeout(() => reject(new Error(`the development server did not start\n${printed}`)), START_MS);
    const note = (chunk: Buffer): void => {
      printed += stripVTControlCharacters(chunk.toString());
      const url = /http:\/\/127\.0\.0\.1:\d+/.exec(printed)?.[0];
      if (url === undefined) return;
      clearTimeout(timer);
      resolve(url);
    };
    child.stdout.on('data', note);
    child.stderr.on('data', note);
    void ended.then(() => reject(new Error(`the development server ended\n${printed}`)));
  });
  return {
    origin,
    printed: () => printed,
    [Symbol.asyncDispose]: async () => {
      child.kill();
      await ended;
    },
  };
}
