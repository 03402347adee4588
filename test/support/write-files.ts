/** Writes three files of a publication together, until it is killed: `node write-files.ts ROOT SET`. */
import { whileWriting } from '../../src/commands/write-all.ts';

const [root = '', set = ''] = process.argv.slice(2);
process.stdout.write('begun\n');
await whileWriting(root, (write) =>
  write(['a', 'b', 'c'].map((name) => ({ path: `data/sessions/${name}-${set}.md`, text: set.repeat(100_000) }))),
);
