/**
 * Writes the demonstration's ledger afresh: `npm run demonstration-ledger`.
 *
 * Its story, invented like the rest: on the day of the report one reading stood in the file with its last two digits
 * exchanged; later somebody compared the file with the stills. Both states are recorded by the real command, so that
 * the old value and the new one are what the site would have said. To be run whenever the numbers of the
 * demonstration move for any other reason, which its readers need not be told.
 */
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const READINGS = `${ROOT}data/sessions/vennick-uhd30-a.csv`;
const LINE = 4;

const correct = readFileSync(READINGS, 'utf8');
const lines = correct.split('\n');
const mistyped = lines.with(LINE - 1, (lines[LINE - 1] ?? '').replace(/^(\d+,[\d:.]*)(\d)(\d),/, '$1$3$2,')).join('\n');
if (mistyped === correct) throw new Error(`line ${LINE} of ${READINGS} has no two digits to exchange: choose another`);

rmSync(`${ROOT}content/ledger`, { recursive: true, force: true });
try {
  writeFileSync(READINGS, mistyped);
  record('2026-04-20', 'First record: what the site said when the report on the stage screen came out.');
} finally {
  writeFileSync(READINGS, correct);
}
record(
  '2026-05-06',
  'A source time of the Vennick in UHD at 29.97 had been typed with its last two digits exchanged. Found when the readings were compared with the stills again; the file now says what the still shows.',
);

function record(date: string, reason: string): void {
  const { status } = spawnSync(process.execPath, ['src/commands/record.ts', '--date', date, '--reason', reason], {
    cwd: ROOT,
    stdio: 'inherit',
  });
  if (status !== 0) throw new Error(`the record of ${date} ended with code ${status}`);
}
