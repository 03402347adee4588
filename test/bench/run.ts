/**
 * `npm run bench`: what the program costs, each figure beside something that does the same with less.
 *
 *     npm run bench                  every part
 *     npm run bench -- ingest site   these parts
 *
 * Times on a machine with other work say little alone: compare the ratios, measured in turn within one run.
 */
import { benchDemonstration } from './demonstration.ts';
import { benchEstimate } from './estimate.ts';
import { benchIngest } from './ingest.ts';
import { benchLive } from './live.ts';
import { benchReadings } from './readings.ts';
import { benchScale, benchSite } from './site.ts';

const PARTS: Readonly<Record<string, () => Promise<void>>> = {
  demonstration: benchDemonstration,
  site: benchSite,
  scale: benchScale,
  ingest: benchIngest,
  estimate: benchEstimate,
  live: benchLive,
  readings: benchReadings,
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !Object.hasOwn(PARTS, name));
if (unknown.length > 0) {
  console.error(`There is no part ${unknown.join(', ')}. The parts are: ${Object.keys(PARTS).join(', ')}.`);
  process.exitCode = 2;
} else {
  for (const [name, measure] of Object.entries(PARTS)) if (asked.length === 0 || asked.includes(name)) await measure();
}
