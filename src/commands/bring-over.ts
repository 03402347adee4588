/** `npm run bring-over`: files that were written for an earlier format, as the present one has them. */
import { editFrontMatter } from '../ingest/edit-front-matter.ts';
import { FIRST_FORMAT, FORMAT, neededChange } from '../ingest/formats.ts';
import type { Changes } from '../rename/rename-record.ts';
import { publicationFolder } from '../site/publication.ts';
import { makeChanges, tryChanges } from './change-records.ts';
import { finishEarlier } from './finish-earlier.ts';
import { publicationTexts } from './publication-texts.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run bring-over [-- --dry]

  --dry  say what would be changed, and change nothing

Brings a publication from the format that content/site.md states to that of this version of the tool: writes anew
what a later format has changed, and states the new one. Tries it first on a copy, as a build would read it, and makes
all of it or nothing.`;

const SITE = 'content/site.md';

await runCommand(USAGE, { dry: { type: 'boolean' } }, async ({ dry }) => {
  const root = publicationFolder();
  if ((await finishEarlier(root)).length > 0) return;
  const texts = await publicationTexts(root);
  const format = statedFormat(texts.get(SITE));
  if (format > FORMAT)
    throw new CallError(
      `This publication is of format ${format}, newer than this tool, which knows ${FORMAT}. Update the tool.`,
    );
  if (format === FORMAT) return say(`Every file is of format ${FORMAT}, the present one. Nothing was changed.`);
  const needed = [...texts].flatMap(([path, text]) => {
    const change = neededChange(format, path, text);
    return change === undefined ? [] : [{ path, ...change }];
  });
  const changes: Changes = new Map([
    ...needed.map(({ path, text }) => [path, text] as const),
    [SITE, editFrontMatter(texts.get(SITE) ?? '', { format: FORMAT })],
  ]);
  await tryChanges(root, changes);
  say(`From format ${format} to ${FORMAT}:`);
  for (const { path, line, says } of needed) say(`  ${path}:${line}  ${says}`);
  say(`\n${await makeChanges(root, changes, new Set(texts.keys()), dry)}`);
});

/** As it is written: where that is no number, the trial on a copy says so. */
function statedFormat(site: string | undefined): number {
  if (site === undefined) throw new CallError(`There is no ${SITE}, which states the format of a publication.`);
  const [, stated] = /^format:[ \t]*(\d+)[ \t]*(?:#.*)?\r?$/m.exec(site.split(/^---[ \t]*\r?$/m)[1] ?? '') ?? [];
  return stated === undefined ? FIRST_FORMAT : Number(stated);
}
