/**
 * Writes the sessions of the demonstration to `data/sessions/`: `npm run demonstration`.
 *
 * Plan (sessions.ts) and truth (truth.ts) → simulation of the rig → the pair of files per session (write.ts).
 * Its pictures are drawn too (pictures.ts). The clip of them is made anew only where there is ffmpeg.
 *
 * The same seed gives the same bytes on every machine; a test holds the committed files to that.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { drawPng } from '../../src/pictures/draw-png.ts';
import { DISPLAY_PAIRS, pairFront, pairReadings } from './display-pairs.ts';
import { encodeSwing } from './encode-swing.ts';
import { stillSvg, swingSvg } from './pictures.ts';
import { SESSIONS } from './sessions.ts';
import { frontMatterText, readingsText } from './write.ts';

const folder = fileURLToPath(new URL('../../data/sessions/', import.meta.url));
mkdirSync(folder, { recursive: true });
for (const session of SESSIONS) {
  writeFileSync(`${folder}${session.id}.md`, frontMatterText(session));
  writeFileSync(`${folder}${session.id}.csv`, readingsText(session));
}
const pairs = fileURLToPath(new URL('../../data/display-pairs/', import.meta.url));
mkdirSync(pairs, { recursive: true });
for (const pair of DISPLAY_PAIRS) {
  writeFileSync(`${pairs}${pair.id}.md`, pairFront(pair));
  writeFileSync(`${pairs}${pair.id}.csv`, pairReadings(pair));
}
const pictures = fileURLToPath(new URL('../../content/reports/pictures/', import.meta.url));
mkdirSync(pictures, { recursive: true });
writeFileSync(`${pictures}one-still.png`, await drawPng(stillSvg()));
writeFileSync(`${pictures}swing.png`, await drawPng(swingSvg(0)));
await encodeSwing(`${pictures}swing.mp4`);
const readings = SESSIONS.flatMap(({ runs }) => runs).reduce((sum, run) => sum + run.readings, 0);
console.log(`${SESSIONS.length} sessions, ${readings} readings written to data/sessions/`);
