/** `npm run figures`: prints the register without building a site. */
import { compileRemembering } from 'lagfolio/site';
import { compareWithLedger } from '../ledger/compare.ts';
import { describeChanges } from '../ledger/describe.ts';
import { renderRegister } from '../register/render-register.ts';
import { nearest } from '../ingest/nearest.ts';
import type { Register } from '../register/register.ts';
import { CallError, runCommand } from './run.ts';
import { complain } from './say.ts';
import { foldersOf, fromCaller, publicationFolder } from '../site/publication.ts';

const USAGE = `Usage: npm run figures [-- [ID ...] [--data DIR] [--content DIR]]

  ID             print only these figures, such as total/SESSION; without any, the whole register
  --data DIR     read sessions and rigs from here instead of data/
  --content DIR  read write-ups from here instead of content/`;

await runCommand(
  USAGE,
  { data: { type: 'string' }, content: { type: 'string' } },
  async ({ data, content }, ids) => {
    const folders = foldersOf(publicationFolder());
    const { bench, register } = await compileRemembering({
      ...folders,
      ...(data === undefined ? {} : { dataDir: fromCaller(data) }),
      ...(content === undefined ? {} : { contentDir: fromCaller(content) }),
    });
    // Beside the register, not in it: another program may be reading that.
    const changes = describeChanges(compareWithLedger(bench, register));
    if (changes !== '' && ids.length === 0) complain(changes);
    process.stdout.write(renderRegister(ids.length === 0 ? register : only(ids, register)));
  },
  { takesWords: true },
);

function only(ids: readonly string[], register: Register): Register {
  const known = new Map(register.figures.map((figure) => [figure.id, figure]));
  return {
    ...register,
    figures: ids.map((id) => {
      const figure = known.get(id);
      if (figure === undefined)
        throw new CallError(`there is no figure '${id}'${suggest(nearest(id, [...known.keys()]))}`);
      return figure;
    }),
    findings: register.findings.filter(({ where }) => ids.some((id) => id.endsWith(`/${where['session']}`))),
  };
}

function suggest(near: readonly string[]): string {
  return near.length > 0 ? `; did you mean ${near.join(', ')}?` : '; without an id, all are printed';
}
