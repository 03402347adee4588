/** What an author may do to a publication between two builds, drawn at random: any of it, sound or not. */
/** A number from 0 to 1. */
type Draw = () => number;

/** The files of a publication by path, and those of the tool that an edit touches. */
export type Texts = ReadonlyMap<string, string>;
/** New texts by path; undefined: the file is deleted. */
export type Change = Readonly<Record<string, string | undefined>>;
type Edit = (texts: Texts, draw: Draw) => Change | undefined;

const pick = <T>(list: readonly T[], draw: Draw): T | undefined => list[Math.floor(draw() * list.length)];
const pathsIn = (texts: Texts, pattern: RegExp): readonly string[] =>
  [...texts.keys()].filter((path) => pattern.test(path)).sort();

/** Changes the text of one file of those whose path matches. */
const inOne =
  (paths: RegExp, change: (text: string, draw: Draw) => string): Edit =>
  (texts, draw) => {
    const path = pick(pathsIn(texts, paths), draw);
    return path === undefined ? undefined : { [path]: change(texts.get(path) ?? '', draw) };
  };

/** Changes one row of readings; the first line names the columns. */
const inRow = (change: (cells: string[], draw: Draw) => void): Edit =>
  inOne(/^data\/sessions\/.*\.csv$/, (text, draw) => {
    const lines = text.trimEnd().split('\n');
    const at = 1 + Math.floor(draw() * (lines.length - 1));
    const cells = (lines[at] ?? '').split(',');
    change(cells, draw);
    return [...lines.slice(0, at), cells.join(','), ...lines.slice(at + 1), ''].join('\n');
  });

const word = (draw: Draw): string => pick(['amber', 'birch', 'cedar', 'dune', 'elm', 'fjord'], draw) ?? '';
const sessionIds = (texts: Texts): readonly string[] =>
  pathsIn(texts, /^data\/sessions\/.*\.md$/).map((path) => path.slice('data/sessions/'.length, -'.md'.length));
const filesOf = (id: string): readonly [string, string] => [`data/sessions/${id}.md`, `data/sessions/${id}.csv`];

/** Puts a session's two files elsewhere, or a copy of them. */
const moved =
  (keeps: boolean): Edit =>
  (texts, draw) => {
    const id = pick(sessionIds(texts), draw) ?? '';
    const name = `${id}-${word(draw)}`;
    const rename = keeps ? [] : filesOf(id).map((path) => [path, undefined] as const);
    const mentions = keeps
      ? []
      : pathsIn(texts, /^content\/reports\//).map(
          (path) => [path, (texts.get(path) ?? '').replaceAll(new RegExp(`\\b${id}\\b(?!-)`, 'g'), name)] as const,
        );
    return Object.fromEntries([
      ...rename,
      ...mentions,
      ...filesOf(id).map((path, index) => [filesOf(name)[index] ?? '', texts.get(path)] as const),
    ]);
  };

const PARTS: readonly ((session: string, other: string) => string)[] = [
  (id) => `The total is <Figure id="total/${id}" /> here.`,
  (id, other) =>
    `They are <Difference of="${id}" than="${other}" /> apart: <Verdict of="${id}" than="${other}" margin="10 ms" />.`,
  (id, other) => `<FigureTable ids={["total/${id}", "total/${other}"]} caption="Two sessions." />`,
  () => '<FigureChart kind="total" rig="loft" caption="On one rig." />',
  () => '<Ranking kind="total" rig="loft" caption="Lowest first." />',
  (id) => `<Readings session="${id}" />`,
  () => '<History body="alba-one" />',
  () => '<RateLaw body="brae-two" rig="loft" />',
  () => '<ChainBrackets />',
];

/** What `npm run record` writes, by running it. */
export const RECORD = 'a record';

export const EDITS: Readonly<Record<string, Edit>> = {
  'a reading': inRow((cells, draw) => {
    const at = 1 + Math.floor(draw() * 2);
    cells[at] = (cells[at] ?? '').replace(/\d$/, String(Math.floor(draw() * 10)));
  }),
  'a note on a reading': inRow((cells, draw) => {
    cells[4] = word(draw);
  }),
  'an exclusion': inRow((cells, draw) => {
    cells[3] = cells[3] === '' ? `${word(draw)} on the lens` : '';
  }),
  'a reading gone': inRow((cells) => {
    cells.splice(0);
  }),
  'a setting': inOne(/^data\/sessions\/.*\.md$/, (text, draw) =>
    pick([/resolution: \w+/, /audio-out: \w+/], draw)?.source === 'resolution: \\w+'
      ? text.replace(/resolution: (\w+)/, (_all, level) => `resolution: ${level === 'hd' ? 'uhd' : 'hd'}`)
      : text.replace(/audio-out: (\w+)/, (_all, level) => `audio-out: ${level === 'off' ? 'on' : 'off'}`),
  ),
  'a day': inOne(/^data\/sessions\/.*\.md$/, (text, draw) =>
    text.replace(/date: .*/, `date: 2026-02-${10 + Math.floor(draw() * 18)}`),
  ),
  'a firmware': inOne(/^data\/sessions\/.*\.md$/, (text, draw) =>
    text.replace(/\n(?:firmware: .*\n)?method:/, `\nfirmware: "${Math.floor(draw() * 3)}.0"\nmethod:`),
  ),
  'a note on a session': inOne(/^data\/sessions\/.*\.md$/, (text, draw) => `${text}\nMore of ${word(draw)}.\n`),
  'a label': inOne(/^data\/settings\.yaml$/, (text, draw) =>
    text.replace(/label: (?:HD|Full)\w*/, `label: Full${word(draw)}`),
  ),
  'a rig': inOne(/^data\/rigs\//, (text, draw) =>
    draw() < 0.5
      ? text.replace(/clock-tolerance: \d+/, `clock-tolerance: ${20 + Math.floor(draw() * 60)}`)
      : text.replace(/^name: .*/m, `name: The ${word(draw)}`),
  ),
  'a display': inOne(/^data\/displays\//, (text, draw) => text.replace(/^name: .*/m, `name: Screen of ${word(draw)}`)),
  'a body': inOne(/^data\/bodies\//, (text, draw) => text.replace(/^maker: .*/m, `maker: ${word(draw)}`)),
  prose: inOne(/^content\/(?:reports|methods)\//, (text, draw) => `${text}\nA line about ${word(draw)}.\n`),
  'a summary': inOne(/^content\/(?:reports|methods)\//, (text, draw) =>
    text.replace(/^summary: .*/m, `summary: About ${word(draw)}.`),
  ),
  'a part': (texts, draw) => {
    const ids = sessionIds(texts);
    const [one = '', other = ''] = [pick(ids, draw), pick(ids, draw)];
    const part = pick(PARTS, draw)?.(one, other) ?? '';
    return inOne(/^content\/reports\//, (text) => `${text}\n${part}\n`)(texts, draw);
  },
  'a new write-up': (_texts, draw) => ({
    [`content/reports/on-${word(draw)}.mdx`]: `---\ntitle: On ${word(draw)}\nsummary: New.\ndate: 2026-05-06\n---\n\nNothing yet.\n`,
  }),
  'a write-up gone': (texts, draw) => ({
    [pick(pathsIn(texts, /^content\/reports\/on-/), draw) ?? 'content/reports/none.mdx']: undefined,
  }),
  'the site': inOne(/^content\/site\.md$/, (text, draw) => text.replace(/^tagline: .*/m, `tagline: Of ${word(draw)}`)),
  'a session copied': moved(true),
  'a session renamed': moved(false),
  'a session gone': (texts, draw) => {
    const id = pick(sessionIds(texts), draw) ?? '';
    return Object.fromEntries(filesOf(id).map((path) => [path, undefined]));
  },
  'the words of the tool': (texts, draw) => ({
    'src/register/kinds.ts': (texts.get('src/register/kinds.ts') ?? '').replace(
      /'Readings excluded \w*'|'Readings excluded'|'Excluded \w*'|'Excluded'/,
      `'Excluded ${word(draw)}'`,
    ),
  }),
  'the markup of the tool': (texts, draw) => ({
    'src/components/page/Measurand.astro': (texts.get('src/components/page/Measurand.astro') ?? '').replace(
      /<p class="small[^"]*">/,
      `<p class="small ${word(draw)}">`,
    ),
  }),
};
