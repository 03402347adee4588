/** A Chromium of this machine, for what can only be seen in a browser. Nothing is installed or downloaded. */
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import type { LaunchOptions } from 'playwright-core';

/** One way to come by a browser; `path` is undefined where it leads nowhere. */
export interface Way {
  readonly name: string;
  path(): string | undefined | Promise<string | undefined>;
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

export const isRoot = process.getuid?.() === 0;

/** The first of these commands in the folders of a path. */
export function firstInPath(commands: readonly string[], path: string): string | undefined {
  const folders = path.split(delimiter).filter((folder) => folder !== '');
  return commands.flatMap((command) => folders.map((folder) => join(folder, command))).find((file) => existsSync(file));
}

/** The Chromium that the system brings, wherever it was installed. */
export const systemsChromium = (): string | undefined => firstInPath(COMMANDS, process.env['PATH'] ?? '');

/** The one that the driver of browsers has downloaded before. */
export async function downloadedChromium(): Promise<string | undefined> {
  const { chromium } = await import('playwright-core');
  const path = chromium.executablePath();
  return existsSync(path) ? path : undefined;
}

/** In the order tried. */
export const PRESENT: readonly Way[] = [
  { name: 'the one named in $CHROMIUM', path: () => process.env['CHROMIUM'] || undefined },
  { name: "the system's", path: systemsChromium },
  { name: "the browser driver's", path: downloadedChromium },
];

/**
 * The first browser that really starts, and those that were passed over because they do not (a package that only points
 * elsewhere, libraries that are missing). Whoever names one in $CHROMIUM, the first way, means that one.
 */
export async function firstStarting(
  ways: readonly Way[] = PRESENT,
  starts: (path: string) => Promise<string | undefined> = whyItDoesNotStart,
): Promise<{ readonly path?: string; readonly passedOver: readonly string[] }> {
  const passedOver: string[] = [];
  for (const [index, way] of ways.entries()) {
    const path = await way.path();
    if (path === undefined) continue;
    const trouble = await starts(path);
    if (trouble === undefined) return { path, passedOver };
    passedOver.push(`${way.name} (${path}): ${trouble}`);
    if (index === 0) break;
  }
  return { passedOver };
}

/** Asking nothing of the network by itself. A sandbox needs a user other than root. */
export function launchOptions(executablePath: string): LaunchOptions {
  return { executablePath, args: isRoot ? ['--no-sandbox', ...LAUNCH_ARGS] : LAUNCH_ARGS };
}

async function whyItDoesNotStart(path: string): Promise<string | undefined> {
  try {
    const { chromium } = await import('playwright-core');
    await (await chromium.launch(launchOptions(path))).close();
    return undefined;
  } catch (error) {
    return String(error).split('\n')[0];
  }
}
