/**
 * `npm run bench`: what the program costs, each figure beside something that does the same with less.
 *
 *     npm run bench                  every part
 *     npm run bench -- ingest site   these parts
 *     npm run bench -- site --rounds 1
 *                                    with so many rounds instead of each part's own, to look before measuring
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

const PARTS: Readonly<Record<string, (rounds?: number) => Promise<void>>> = {
  demonstration: benchDemonstration,
  site: benchSite,
  scale: benchScale,
  ingest: benchIngest,
  estimate: benchEstimate,
  live: benchLive,
  readings: benchReadings,
};

const {
  values: { rounds: said },
  positionals: asked,
} = parseArgs({ options: { rounds: { type: 'string' } }, allowPositionals: true });
const rounds = said === undefined ? undefined : Math.max(1, Math.round(Number(said)) || 1);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}. The parts are: ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const [name, measure] of Object.entries(PARTS))
    if (asked.length === 0 || asked.includes(name)) await measure(rounds);
}
