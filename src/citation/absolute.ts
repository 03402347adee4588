import type { SiteInfo } from '../model/bench.ts';

/** A site path as an address on the web: `/sessions/a/#total`. Undefined where nobody said where the site stands. */
export function absolute({ address }: Pick<SiteInfo, 'address'>, path: string): string | undefined {
  return address === undefined ? undefined : new URL(path.replace(/^\//, ''), address).href;
}
