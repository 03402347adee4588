/** `npm run verify`: whether a publication holds what it promises, before it goes out. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkLedger } from '../ledger/check.ts';
import { describeChanges } from '../ledger/describe.ts';
import { problemsError } from '../model/problem-text.ts';
import { publicationFolder } from '../site/publication.ts';
import { leadsOn } from '../verify/links.ts';
import { readBuiltSite } from '../verify/built-site.ts';
import { verifySite, type NamedCheck } from '../verify/verify-site.ts';
import { checkAccessibility } from './check-accessibility.ts';
import { buildAnew } from './build-site.ts';
import { runCommand } from './run.ts';
import { complain, say } from './say.ts';
import type { BuildSummary } from './summary.ts';

const USAGE = `Usage: npm run verify [-- --no-browser]

  --no-browser  do not look at pages in a browser

Builds the site into a folder of its own, which it removes again, and checks what can be checked without its author:
that all of it compiles, that nothing moved or came since it was recorded, that every link leads somewhere, that
every number on every page comes from a file, that no page runs anything or asks another host, and that pages are
accessible, as far as a program can tell. That last one needs Chromium, the one in $CHROMIUM or the system's; without
one it says so.`;

const FAULTS_SHOWN = 20;
const HOW_TO_LOOK = 'Install one, or name it: CHROMIUM=/path/to/chromium.';

await runCommand(USAGE, { 'no-browser': { type: 'boolean' } }, async ({ 'no-browser': isWithoutBrowser = false }) => {
  const root = publicationFolder();
  const outer = await mkdtemp(join(tmpdir(), 'verify-'));
  try {
    const path = join(outer, 'site');
    const summary = await buildAnew({ root, output: { path, name: 'dist' } });
    say(`${summary.bench.site.title}: it compiles, into ${summary.pages} pages.\n`);
    const site = readBuiltSite(path);
    const pages = site.pages.map((page) => page.path).filter((page) => !leadsOn(site.page(page)));
    const looked = isWithoutBrowser ? { why: '--no-browser says so' } : await checkAccessibility(path, pages);
    const checks = [
      ledgerCheck(summary),
      numbersCheck(summary),
      ...verifySite(site, summary.bench.site),
      ...('why' in looked ? [] : [looked]),
    ];
    say(describeChecks(checks));
    if ('why' in looked) say(`  – Whether pages are accessible was not looked at: ${looked.why}. ${HOW_TO_LOOK}`);
    const failed = checks.filter(({ faults }) => faults.length > 0);
    if (failed.length === 0)
      return say('why' in looked ? '\nEverything that was looked at holds.' : '\nEverything holds.');
    for (const check of failed) complain(`\n${describeFaults(check)}`);
    process.exitCode = 1;
  } finally {
    await rm(outer, { recursive: true, force: true });
  }
});

/** Every number with a unit is accounted for. */
function numbersCheck({ audit }: BuildSummary): NamedCheck {
  return {
    what: 'numbers',
    holds: 'are accounted for',
    looked: audit.read,
    faults: audit.unaccounted.map(
      ({ page, number, around }) => `${page}: nothing accounts for “${number}” in “${around}”`,
    ),
  };
}

/** What was published is recorded; nothing is asked of a publication that has nothing to record yet. */
function ledgerCheck({ bench, changes }: BuildSummary): NamedCheck {
  const what = 'statements';
  const looked = changes.unchanged + changes.added.length + changes.moved.length;
  if (bench.ledger === undefined && bench.sessions.length === 0)
    return { what, holds: 'are not recorded: nothing has been measured yet', looked, faults: [] };
  const unrecorded = checkLedger(bench, changes);
  const isNew = changes.added.length > 0 && bench.ledger !== undefined;
  return {
    what,
    holds: 'are as recorded',
    looked,
    faults:
      unrecorded.length > 0
        ? [[describeChanges(changes), problemsError(unrecorded).message].filter(Boolean).join('\n\n')]
        : isNew
          ? [describeChanges(changes)]
          : [],
  };
}

function describeChecks(checks: readonly NamedCheck[]): string {
  const width = Math.max(...checks.map(({ looked }) => String(looked).length));
  return checks
    .map(({ what, holds, looked, faults }) => {
      const result = faults.length === 0 ? holds : `${faults.length} wrong`;
      return `  ${faults.length === 0 ? '✓' : '✗'} ${String(looked).padStart(width)} ${what}: ${result}`;
    })
    .join('\n');
}

function describeFaults({ what, holds, faults }: NamedCheck): string {
  const more = faults.length - FAULTS_SHOWN;
  return [
    `Not all ${what} ${holds}:`,
    ...faults.slice(0, FAULTS_SHOWN).map((fault) => `  ${fault.replaceAll('\n', '\n  ')}`),
    ...(more > 0 ? [`  and ${more} more`] : []),
  ].join('\n');
}
