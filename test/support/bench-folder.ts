import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import type { Bench } from '../../src/model/bench.ts';
import { ProblemsError } from '../../src/model/problem.ts';
import { readBench } from '../../src/ingest/read-bench.ts';

export type Files = Readonly<Record<string, string | Uint8Array | null>>;

/** The smallest bench that has one of everything; invented. */
export const VALID_FILES = {
  'content/site.md': '---\ntitle: Test bench\ntagline: A bench for tests\npublisher: Nobody\n---\n\nHello.\n',
  'content/methods/two-timers.mdx':
    '---\ntitle: Two timers\nsummary: One picture, two timers.\ndate: 2026-04-01\n---\n\nBody.\n',
  'content/methods/frame-count.mdx':
    '---\ntitle: Frame count\nsummary: Frames of the observer.\ndate: 2026-04-01\n---\n',
  'content/methods/instrument.mdx': '---\ntitle: Instrument\nsummary: A light sensor.\ndate: 2026-04-01\n---\n',
  'content/reports/first.mdx':
    '---\ntitle: First\nsummary: The first report.\ndate: 2026-04-12\nauthor: A. Nobody\n---\n\nNothing yet.\n',
  'data/settings.yaml': `- { name: rate, label: Frame rate, kind: rate, levels: [23.976, 24, 59.94] }
- { name: bit-depth, label: Bit depth, kind: numeric, levels: [8, 10] }
- { name: chroma, label: Chroma subsampling, kind: ordered, levels: [4:2:0, "4:2:2"] }
- { name: audio-out, label: Audio embedding, kind: unordered, levels: [{ name: off, label: Off }, { name: on, label: On }] }
`,
  'data/bodies/vennick.md':
    '---\nname: Vennick Q4\nmaker: Vennick\nmodel: Q4\nsensor-readout: 14 ms\ninvented: true\n---\n\nInvented.\n',
  'data/displays/screen.md':
    '---\nname: Stage screen\nrefresh: 60\nsync: input\nscan-out: 1/60 s\ninvented: true\n---\n',
  'data/links/air.md':
    '---\nname: Wireless link\nlatency: { value: 1.5 ms, uncertainty: 0.2 ms, source: its data sheet }\ninvented: true\n---\n',
  'data/rigs/balcony.md': `---
name: Balcony
source-timer: { name: Phone, refresh: 60 }
observer: { name: Pocket camera, rate: 120, exposure: 1/500 s, source-row: 0.25, display-row: 0.75, clock-tolerance: 50 ppm }
instrument: { name: Light sensor, expanded-uncertainty: 0.5 ms }
display: screen
links: [air]
invented: true
---

On the balcony.
`,
  'data/rigs/pit.md':
    '---\nname: Pit\nsource-timer: { name: Tablet, refresh: 120, wraps-after: 60 s }\ndisplay: screen\n---\n',
  'data/sessions/a.md': `---
body: vennick
firmware: "1.40"
rig: balcony
method: two-timers
date: 2026-04-11
settings: { rate: 23.98, bit-depth: 10, chroma: 4:2:2, audio-out: on }
room: 22.5 °C
warm-up: 15 min
---

A quiet morning.
`,
  'data/sessions/a.csv': `run,source,shown,exclude,note
1,00:31.482,00:31.181,,
1,00:33.905,00:33.590,,
2,00:12.044,00:11.779,"source digits overlap","two values readable: .779 and .796"
`,
} as const satisfies Files;

/** A bench in a folder of its own, to be removed with `using`. */
export interface BenchFolder extends Disposable {
  readonly root: string;
  read(): Promise<Bench>;
  link(path: string, target: string): void;
}

/** Writes the valid bench, with these files in place of its own; null leaves a file out. */
export function writeBenchFolder(changes: Files = {}): BenchFolder {
  const root = mkdtempSync(join(tmpdir(), 'bench-'));
  const files: Files = { ...VALID_FILES, ...changes };
  for (const [path, content] of Object.entries(files)) {
    if (content === null) continue;
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), content);
  }
  return {
    root,
    read: () => readBench({ root, dataDir: join(root, 'data'), contentDir: join(root, 'content') }),
    link(path, target) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      symlinkSync(target, join(root, path));
    },
    [Symbol.dispose]: () => rmSync(root, { recursive: true, force: true }),
  };
}

/** The bench, read with these changes. */
export async function readChanged(changes: Files = {}): Promise<Bench> {
  using folder = writeBenchFolder(changes);
  return await folder.read();
}

export async function problemsIn(folder: BenchFolder): Promise<string> {
  try {
    await folder.read();
    return 'no problems';
  } catch (error) {
    if (error instanceof ProblemsError) return error.message;
    throw error;
  }
}
