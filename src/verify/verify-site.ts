/** Every check of a built site, in the order in which they are told. */
import { readRegister } from '../register/packed-register.ts';
import type { BuiltSite } from './built-site.ts';
import type { Checked } from './checked.ts';
import { checkEntries, checkFigureLinks } from './entries.ts';
import { checkFiles } from './files.ts';
import { checkHosts, checkLinks, checkReach } from './links.ts';
import { checkPages } from './pages.ts';

export interface NamedCheck extends Checked {
  /** What was looked at, and what holds where nothing is wrong: `links and anchors`, `lead somewhere`. */
  readonly what: string;
  readonly holds: string;
}

export function verifySite(
  site: BuiltSite,
  { writeUpsRunCode }: { readonly writeUpsRunCode: boolean },
): readonly NamedCheck[] {
  const register = readRegister(site.bytes('figures.json').toString('utf8'));
  return [
    { what: 'pages', holds: 'are whole, and run nothing', ...checkPages(site, writeUpsRunCode) },
    { what: 'pages', holds: 'can be reached from the home page', ...checkReach(site) },
    { what: 'links', holds: 'lead somewhere', ...checkLinks(site) },
    { what: 'other addresses', holds: 'ask no other host', ...checkHosts(site) },
    {
      what: 'figures in text',
      holds: 'are the register’s, and lead to their entry',
      ...checkFigureLinks(site, register),
    },
    { what: 'entries', holds: 'say all that a reader needs', ...checkEntries(site, register) },
    { what: 'files', holds: 'are published as they are', ...checkFiles(site, register) },
  ];
}
