/** `npm run recompute`: prints a session's figures from its downloaded files alone. */
import { readFile } from 'node:fs/promises';
import { ANALYSIS_VERSION } from '../analysis/version.ts';
import { nearest } from '../ingest/nearest.ts';
import { estimateSession } from '../analysis/estimate.ts';
import { compareFigures } from '../recompute/compare-figures.ts';
import { describeComparison } from '../recompute/describe-comparison.ts';
import { missingFiles } from '../recompute/missing-files.ts';
import { estimatorAt, recomputePair, recomputeSessions } from '../recompute/recompute-sessions.ts';
import type { Compilation } from '../register/compilation.ts';
import { findingsOf } from '../register/findings/findings.ts';
import { readRegister } from '../register/packed-register.ts';
import type { Register } from '../register/register.ts';
import { renderRegister } from '../register/render-register.ts';
import { fromCaller } from '../site/publication.ts';
import { gatherFiles } from './gather-files.ts';
import { CallError, runCommand } from './run.ts';
import { say } from './say.ts';

const USAGE = `Usage: npm run recompute -- PATH ... [--session ID ...] [--than ID] [--level 0.99] [--against FILE]

  PATH            files of a session as its page lists them (readings, front matter, body, rig, display, links,
                  settings, variation), or folders that hold them: a data package, data/, or one folder with all
  --session ID    only this session; may be given several times
  --than ID       besides, how much later the one session is than this one: difference, ratio, verdict
  --level LEVEL   coverage of the sessions' intervals; 0.95 where nothing is said
  --against FILE  a published figures.json: says which figures are identical to the last digit, and what differs`;

await runCommand(
  USAGE,
  {
    session: { type: 'string', multiple: true },
    than: { type: 'string' },
    level: { type: 'string' },
    against: { type: 'string' },
  },
  async ({ session: asked, than, level, against }, paths) => {
    if (paths.length === 0) throw new CallError(`Name the files of a session, or their folder.\n\n${USAGE}`);
    const files = await gatherFiles(paths);
    const missing = missingFiles(files);
    if (missing.length > 0)
      throw new CallError(`Needed besides; the page of the session lists them to download:\n  ${missing.join('\n  ')}`);
    const estimator = level === undefined ? estimateSession : estimatorAt(levelOf(level));
    const register = only(recomputeSessions(files, estimator), asked, than);
    if (against === undefined) process.stdout.write(renderRegister(register));
    else {
      const compared = compareFigures((await publishedIn(against)).figures, register.figures);
      say(describeComparison(compared));
      if (compared.some(({ differing }) => differing.length > 0)) process.exitCode = 1;
    }
  },
  { takesWords: true, onPublication: false },
);

function only(compilation: Compilation, asked: readonly string[] | undefined, than: string | undefined): Register {
  const ids = compilation.sessions.map(({ session }) => session.id);
  for (const id of [...(asked ?? []), ...(than === undefined ? [] : [than])])
    if (!ids.includes(id))
      throw new CallError(
        `there is no session '${id}' among the files; there are ${ids.join(', ')}.${suggest(id, ids)}`,
      );
  const wanted = [...(asked ?? ids.filter((id) => id !== than)), ...(than === undefined ? [] : [than])];
  const sessions = compilation.sessions.filter(({ session }) => wanted.includes(session.id));
  const [first] = wanted;
  if (than !== undefined && (wanted.length !== 2 || first === undefined || first === than))
    throw new CallError('--than compares one session with another: name both, --session A --than B.');
  const pair = than === undefined || first === undefined ? [] : recomputePair(compilation, first, than);
  return {
    analysis: ANALYSIS_VERSION,
    figures: [...sessions.flatMap(({ figures }) => figures), ...pair],
    findings: findingsOf(sessions),
  };
}

function levelOf(text: string): number {
  const level = Number(text);
  if (text.trim() === '' || !(level >= 0.5 && level <= 0.9999))
    throw new CallError(`--level is a probability from 0.5 to 0.9999, not '${text}'.`);
  return level;
}

async function publishedIn(file: string): Promise<Register> {
  try {
    return readRegister(await readFile(fromCaller(file), 'utf8'));
  } catch (error) {
    if (!(error instanceof Error)) throw error;
    throw new CallError(`${file} is no published figures.json that can be read.`);
  }
}

function suggest(id: string, ids: readonly string[]): string {
  const [near] = nearest(id, ids);
  return near === undefined ? '' : ` Did you mean ${near}?`;
}
