/**
 * `npm run bench`: what the program costs, each figure beside something that does the same with less.
 *
 *     npm run bench                  every part
 *     npm run bench -- ingest site   these parts
 *     npm run bench -- site --rounds 1
 *                                    with so many rounds instead of each part's own, to look before measuring
 *     npm run bench -- site --rounds 1 --sessions 60
 *                                    the site of so many sessions instead of 500
 *
 * Times on a machine with other work say little alone: compare the ratios, measured in turn within one run.
 */
import { parseArgs } from 'node:util';
import { benchDemonstration } from './demonstration.ts';
import { benchEstimate } from './estimate.ts';
import { benchIngest } from './ingest.ts';
import { benchLive } from './live.ts';
import { benchReadings } from './readings.ts';
import { benchScale, benchSite } from './site.ts';

const PARTS: Readonly<Record<string, (rounds?: number, sessions?: number) => Promise<void>>> = {
  demonstration: benchDemonstration,
  site: benchSite,
  scale: benchScale,
  ingest: benchIngest,
  estimate: benchEstimate,
  live: benchLive,
  readings: benchReadings,
};

const { values, positionals: asked } = parseArgs({
  options: { rounds: { type: 'string' }, sessions: { type: 'string' } },
  allowPositionals: true,
});
const [rounds, sessions] = [values.rounds, values.sessions].map((said) =>
  said === undefined ? undefined : Math.max(1, Math.round(Number(said)) || 1),
);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}. The parts are: ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const [name, measure] of Object.entries(PARTS))
    if (asked.length === 0 || asked.includes(name)) await measure(rounds, sessions);
}
