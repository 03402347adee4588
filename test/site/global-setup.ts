/** Once for all tests of the site: the committed project built in a copy of its own, and a browser. */
import type { TestProject } from 'vitest/node';
import { findChromium } from '../support/chromium.ts';
import { copyProject } from '../support/project-copy.ts';

declare module 'vitest' {
  interface ProvidedContext {
    /** Root of the copy in which the committed project is built. Tests read it and leave it as it is. */
    readonly builtProject: string;
    readonly chromium: string;
  }
}

export default async function setup({ provide }: TestProject): Promise<() => void> {
  provide('chromium', await findChromium());
  const copy = copyProject();
  try {
    copy.build({ TZ: 'UTC', LANG: 'C', LC_ALL: 'C' });
  } catch (error) {
    copy[Symbol.dispose]();
    throw error;
  }
  provide('builtProject', copy.root);
  return () => copy[Symbol.dispose]();
}
