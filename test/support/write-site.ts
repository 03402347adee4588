/**
 * Builds tiny sites one after the other, as a build does, until it is killed: `node write-site.ts FOLDER FILES`.
 * All files of a site hold the same word; every site has another.
 */
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { checkOutput, outputFolder, replaceSite } from '../../src/commands/output-folder.ts';

const [folder = '', files = '8', pauseMs = '0'] = process.argv.slice(2);
const output = await outputFolder('', folder);
for (let site = 0; ; site += 1) {
  await checkOutput(output, []);
  await replaceSite(output, async (fresh) => {
    for (let file = 0; file < Number(files); file += 1) await writeFile(join(fresh, `${file}.html`), `site ${site}`);
    process.stdout.write('begun\n');
    await setTimeout(Number(pauseMs));
  });
}
