/** A Chromium to test with: found, or else installed by whichever way this machine can reach. */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { chromium, type LaunchOptions } from 'playwright-core';
import { firstInPath, installPackage, isRoot, succeeds } from './install.ts';

/** One way to come by a browser. `path` may install it, and is undefined where this way leads nowhere. */
export interface Way {
  readonly name: string;
  path(): string | undefined;
}

const COMMANDS = ['chromium', 'chromium-browser', 'google-chrome-stable', 'google-chrome'];
const LAUNCH_ARGS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

const HOW_TO_INSTALL = `No Chromium was found, and none could be installed. Do one of these and run the tests again:
  apt-get install chromium                   (as root, on Debian)
  npx playwright-core install chromium       (downloads one for this user)
  CHROMIUM=/path/to/chromium npm test        (names one that you have)`;

/** In the order tried: what is there comes before what has to be fetched. */
export const WAYS: readonly Way[] = [
  { name: 'the one named in $CHROMIUM', path: () => process.env['CHROMIUM'] || undefined },
  { name: "the system's", path: () => firstInPath(COMMANDS, process.env['PATH'] ?? '') },
  { name: "the browser driver's", path: () => downloaded() },
  {
    name: "Debian's package",
    path: () => (installPackage('chromium') ? firstInPath(COMMANDS, process.env['PATH'] ?? '') : undefined),
  },
  { name: "the browser driver's download", path: () => (download() ? downloaded() : undefined) },
];

/**
 * The path of the first browser that really starts.
 *
 * One that a way names but that does not start (a package that only points elsewhere, libraries that are
 * missing) is passed over and said so, except the one in $CHROMIUM: whoever names a browser means that one.
 */
export async function findChromium(
  ways: readonly Way[] = WAYS,
  starts: (path: string) => Promise<string | undefined> = whyItDoesNotStart,
): Promise<string> {
  const passedOver: string[] = [];
  for (const [index, way] of ways.entries()) {
    const path = way.path();
    if (path === undefined) continue;
    const trouble = await starts(path);
    if (trouble === undefined) return path;
    passedOver.push(`  ${way.name} (${path}): ${trouble}`);
    if (index === 0) break;
  }
  throw new Error(
    [HOW_TO_INSTALL, ...(passedOver.length > 0 ? ['Found, but not able to start:', ...passedOver] : [])].join('\n'),
  );
}

/** How every test starts it: asking nothing of the network by itself. A sandbox needs a user other than root. */
export function launchOptions(executablePath: string): LaunchOptions {
  return { executablePath, args: isRoot ? ['--no-sandbox', ...LAUNCH_ARGS] : LAUNCH_ARGS };
}

async function whyItDoesNotStart(path: string): Promise<string | undefined> {
  try {
    await (await chromium.launch(launchOptions(path))).close();
    return undefined;
  } catch (error) {
    return String(error).split('\n')[0];
  }
}

function downloaded(): string | undefined {
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

function download(): boolean {
  const cli = join(createRequire(import.meta.url).resolve('playwright-core/package.json'), '..', 'cli.js');
  return succeeds([process.execPath, cli, 'install', '--no-shell', 'chromium']);
}
