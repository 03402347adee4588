/** Loaded into a measured program with `--import`: when it ends, writes down what it took from the machine. */
import { writeFileSync } from 'node:fs';
import { isMainThread } from 'node:worker_threads';

const file = process.env['BENCH_USAGE'];
if (isMainThread && file !== undefined) {
  process.on('exit', () => writeFileSync(file, JSON.stringify(process.resourceUsage())));
}
