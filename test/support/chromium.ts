/** A Chromium to test with: found, or else installed by whichever way this machine can reach. */
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { downloadedChromium, firstStarting, PRESENT, systemsChromium, type Way } from '../../src/commands/chromium.ts';
import { installPackage, succeeds } from './install.ts';

export { launchOptions, type Way } from '../../src/commands/chromium.ts';

const HOW_TO_INSTALL = `No Chromium was found, and none could be installed. Do one of these and run the tests again:
  apt-get install chromium                   (as root, on Debian)
  npx playwright-core install chromium       (downloads one for this user)
  CHROMIUM=/path/to/chromium npm test        (names one that you have)`;

/** In the order tried: what is there comes before what has to be fetched. */
export const WAYS: readonly Way[] = [
  ...PRESENT,
  { name: "Debian's package", path: () => (installPackage('chromium') ? systemsChromium() : undefined) },
  { name: "the browser driver's download", path: () => (download() ? downloadedChromium() : undefined) },
];

/** The path of the first browser that really starts; those that do not are named where none does. */
export async function findChromium(
  ways: readonly Way[] = WAYS,
  ...starts: readonly ((path: string) => Promise<string | undefined>)[]
): Promise<string> {
  const { path, passedOver } = await firstStarting(ways, ...starts.slice(0, 1));
  if (path !== undefined) return path;
  const found = passedOver.map((trouble) => `  ${trouble}`);
  throw new Error(
    [HOW_TO_INSTALL, ...(found.length > 0 ? ['Found, but not able to start:', ...found] : [])].join('\n'),
  );
}

function download(): boolean {
  const cli = join(createRequire(import.meta.url).resolve('playwright-core/package.json'), '..', 'cli.js');
  return succeeds([process.execPath, cli, 'install', '--no-shell', 'chromium']);
}
