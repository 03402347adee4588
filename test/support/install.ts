/** Coming by what the tests need and npm does not bring: Debian's packages, where this machine can install them. */
import { spawnSync } from 'node:child_process';
import { firstInPath, isRoot } from '../../src/commands/chromium.ts';

export { firstInPath } from '../../src/commands/chromium.ts';

/** Whether a Debian package could be installed: as root, or by sudo without a question. */
export function installPackage(name: string): boolean {
  if (firstInPath(['apt-get'], process.env['PATH'] ?? '') === undefined) return false;
  const asRoot = isRoot ? [] : ['sudo', '-n'];
  const apt = (...words: string[]): boolean =>
    succeeds([...asRoot, 'env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', '-qq', ...words]);
  const install = (): boolean => apt('install', '-y', '--no-install-recommends', name);
  // The lists of a fresh machine are empty, those of an old one name packages that are gone.
  return install() || (apt('update') && install());
}

/** Runs a command that installs something, and says so. */
export function succeeds([command = '', ...words]: readonly string[]): boolean {
  console.log(`Installing what the tests need: ${[command, ...words].join(' ')}`);
  return spawnSync(command, words, { stdio: ['ignore', 'ignore', 'inherit'] }).status === 0;
}
