/** What the figures of a session take for granted of rig and display, as its files state it. */
import { parseFrontMatter } from '../ingest/front-matter.ts';

export interface Assumption {
  readonly file: string;
  readonly path: readonly string[];
  readonly label: string;
  /** As written; undefined where it is not stated. */
  readonly value: string | undefined;
}

type Key = readonly [path: readonly string[], label: string];

const OF_RIG: readonly Key[] = [
  [['source-timer', 'refresh'], 'Refresh rate of the source timer'],
  [['source-timer', 'resolution'], 'Step of its last digit'],
  [['source-timer', 'clock-tolerance'], 'Tolerance of its clock'],
  [['observer', 'rate'], 'Frame rate of the observer'],
  [['observer', 'exposure'], 'Exposure of the observer'],
  [['observer', 'readout'], 'Readout of its sensor'],
  [['observer', 'source-row'], 'Row of the source in its picture'],
  [['observer', 'display-row'], 'Row of the display in its picture'],
  [['observer', 'clock-tolerance'], 'Tolerance of its clock'],
  [['instrument', 'expanded-uncertainty'], 'Uncertainty of the instrument, k = 2'],
  [['digits-row'], 'Row of the digits on the display'],
];
const OF_DISPLAY: readonly Key[] = [
  [['refresh'], 'Refresh rate of the display'],
  [['sync'], 'Follows its input, or runs free'],
  [['scan-out'], 'Time in which it draws a picture'],
  [['latency', 'value'], 'Latency stated for it'],
  [['latency', 'uncertainty'], 'Standard uncertainty of that'],
];

/** Of the rig and display of these sessions, each once; of a rig only the parts that it has. */
export function assumptionsOf(
  files: ReadonlyMap<string, Uint8Array>,
  sessions: readonly { readonly rig: string; readonly display: string }[],
): readonly Assumption[] {
  const rigs = [...new Set(sessions.map(({ rig }) => `data/rigs/${rig}.md`))];
  const displays = [...new Set(sessions.map(({ display }) => `data/displays/${display}.md`))];
  return [
    ...rigs.flatMap((file) => statedIn(files, file, OF_RIG)).filter(({ isPossible }) => isPossible),
    ...displays.flatMap((file) => statedIn(files, file, OF_DISPLAY)),
  ].map(({ isPossible, ...assumption }) => assumption);
}

function statedIn(files: ReadonlyMap<string, Uint8Array>, file: string, keys: readonly Key[]) {
  const bytes = files.get(file);
  const source = { path: file, sha256: '', bytes: bytes?.length ?? 0 };
  const front = bytes && parseFrontMatter({ file: source, bytes, report: () => undefined });
  return keys.map(([path, label]) => {
    const parts = path.map((_, depth) => valueAt(front?.value, path.slice(0, depth + 1)));
    const value = parts.at(-1);
    return {
      file,
      path,
      label,
      value: typeof value === 'string' ? value : undefined,
      isPossible: path.length === 1 || parts[0] !== undefined,
    };
  });
}

function valueAt(value: unknown, path: readonly string[]): unknown {
  return path.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? (at as Readonly<Record<string, unknown>>)[key] : undefined),
    value,
  );
}
