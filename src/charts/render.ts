import * as vega from 'vega';
import { compile, type TopLevelSpec } from 'vega-lite';
import { Store } from 'lagfolio/memory';
import { escapeMarkup } from '../model/markup-text.ts';
import { shareAttributes } from './share-attributes.ts';
import { textWidth } from './text-width.ts';
import { CHART_CONFIG, FONT_FAMILY } from './theme.ts';

/** One drawing: a specification that charts of a kind share, and what is this chart's own. */
export interface Drawing {
  /** Same object for all charts of a kind: it is compiled once. Rows and sizes stay out of it. */
  readonly spec: TopLevelSpec;
  /** Rows by the name of the data set. */
  readonly data: Readonly<Record<string, readonly object[]>>;
  /** Values of the specification's params. */
  readonly params: Readonly<Record<string, unknown>>;
  /** Of the plotting area, in px. */
  readonly width: number;
  readonly height: number;
  readonly padding: Readonly<Record<'left' | 'right' | 'top' | 'bottom', number>>;
}

export interface DrawingWords {
  /** Unique on the page: every id in the SVG starts with it. */
  readonly id: string;
  readonly className: string;
  readonly title: string;
  readonly description: string;
}

const PRECISION = 2;
const TEXT_DEFAULT = 11;
const NAME = /^[A-Za-z][\w-]*$/;
/** What vega writes for clipping and picking, and groups with nothing in them. */
const EMPTY = /<path class="(?:background|foreground)"[^>]*\/>|<g[^>]*\/>|<g[^>]*><\/g>/g;
/** Text between tags, or one of the attributes that are changed. */
const TEXT_OR_ATTRIBUTE =
  />[^<]+| (?:(?:role|aria-[a-z]+|font-family|pointer-events)="[^"]*"|opacity="1")| id="([^"]+)"|url\(#([^)]+)\)|( (?:d|transform|[xy][12]?|width|height)=)("[^"]*")/g;
const LONG_NUMBER = /-?\d*\.\d{3,}(?:e-?\d+)?/g;

// no canvas: vega measures text with the widths of the font that the pages use
vega.textMetrics.width = ({ fontSize = TEXT_DEFAULT, fontWeight }, text) =>
  text === null || text === undefined ? 0 : textWidth(String(text), fontSize, Number(fontWeight ?? 400));

/** What draws the charts of a kind, one after the other: setting it up costs more than drawing with it. */
interface Stage {
  readonly view: vega.View;
  /** What vega has warned of since the last drawing began. */
  readonly problems: string[];
}

const drawn = new Store('drawings', ['src/charts', 'src/model']);

const stages = new WeakMap<TopLevelSpec, Stage>();

/** vega counts the ids of clips and gradients in one place: one drawing at a time, each starting anew. */
let queue: Promise<unknown> = Promise.resolve();

/**
 * Draws a vega-lite specification as SVG, the same bytes whatever was drawn before.
 *
 *     spec ── 1 stage (once per kind) ── 2 sizes, params, rows ── 3 SVG ── 4 tidy: ids, roles, digits,
 *     what marks have alike ── 5 words
 *
 * What was drawn before from the same is taken from disk. Rejects when vega warns of anything: a warning means that
 * something is missing from the drawing.
 */
export async function renderSvg(drawing: Drawing, words: DrawingWords): Promise<string> {
  const name = drawn.nameOf({ drawing, words });
  const known = drawn.get(name);
  if (typeof known === 'string') return known;
  const job = queue.then(() => draw(drawing, words));
  queue = job.catch(() => undefined);
  const svg = await job;
  drawn.put(name, svg);
  return svg;
}

async function draw(drawing: Drawing, words: DrawingWords): Promise<string> {
  if (!NAME.test(words.id))
    throw new RangeError(`chart id '${words.id}': letters, digits, '-' and '_' only, a letter first`);
  const stage = stages.get(drawing.spec) ?? setUp(drawing.spec);
  // kept again when the drawing is done: one that failed may have left anything behind
  stages.delete(drawing.spec);
  const { view, problems } = stage;
  const refuseProblems = () => {
    if (problems.length > 0) throw new Error(`chart '${words.id}': ${problems.join('; ')}`);
  };
  let svg: string;
  try {
    refuseProblems();
    vega.resetSVGDefIds();
    vega.setRandom(vega.randomLCG(1));
    view
      .width(drawing.width)
      .height(drawing.height)
      .padding({ ...drawing.padding });
    for (const [name, value] of Object.entries(drawing.params)) view.signal(name, value);
    // vega marks the rows it is given: hand it copies
    for (const [name, rows] of Object.entries(drawing.data))
      view.data(
        name,
        rows.map((row) => ({ ...row })),
      );
    svg = await view.toSVG();
    refuseProblems();
  } catch (error) {
    view.finalize();
    throw error;
  }
  await clear(stage, drawing);
  stages.set(drawing.spec, stage);
  return withWords(shareAttributes(tidy(svg.replace(EMPTY, ''), words.id)), words);
}

function setUp(spec: TopLevelSpec): Stage {
  const problems: string[] = [];
  const logger = collectingLogger(problems);
  const loader = vega.loader();
  loader.load = (uri: string) => Promise.reject(new Error(`a chart reads no files, not even ${uri}`));
  const runtime = vega.parse(compile(spec, { config: CHART_CONFIG, logger }).spec);
  return { view: new vega.View(runtime, { renderer: 'none', logger, loader }), problems };
}

/**
 * Back to the params of the specification and no rows: ticks that two drawings share would else keep the order of the
 * first.
 */
async function clear({ view, problems }: Stage, { spec, data }: Drawing): Promise<void> {
  for (const param of spec.params ?? []) if ('value' in param) view.signal(param.name, param.value);
  for (const name of Object.keys(data)) view.data(name, []);
  await view.runAsync();
  problems.length = 0;
}

function collectingLogger(problems: string[]): vega.LoggerInterface {
  const logger = vega.logger(vega.Warn);
  const note = (level: string) =>
    function (this: vega.LoggerInterface, ...parts: readonly unknown[]): vega.LoggerInterface {
      problems.push(`${level}: ${parts.map(String).join(' ')}`);
      return this;
    };
  logger.warn = note('warning');
  logger.error = note('error');
  return logger;
}

/** Inside tags: no inner roles, no font (the root has it), no defaults, ids unique on the page, short numbers. */
function tidy(svg: string, id: string): string {
  return svg.replace(
    TEXT_OR_ATTRIBUTE,
    (found: string, ownId?: string, reference?: string, name?: string, geometry?: string) => {
      if (found.startsWith('>')) return found;
      if (ownId !== undefined) return ` id="${id}-${ownId}"`;
      if (reference !== undefined) return `url(#${id}-${reference})`;
      return name === undefined || geometry === undefined ? '' : name + geometry.replace(LONG_NUMBER, shorten);
    },
  );
}

function shorten(number: string): string {
  return String(Number(Number(number).toFixed(PRECISION)));
}

function withWords(svg: string, { id, className, title, description }: DrawingWords): string {
  return svg.replace(/^<svg ([^>]*)>/, (_all, attributes: string) => {
    const kept = attributes.replace(/(?:class|xmlns(?::xlink)?)="[^"]*" ?/g, '').trim();
    return (
      `<svg xmlns="http://www.w3.org/2000/svg" class="${className}" ${kept} font-family="${escapeMarkup(FONT_FAMILY)}" role="img" ` +
      `aria-labelledby="${id}-title ${id}-desc"><title id="${id}-title">${escapeMarkup(title)}</title>` +
      `<desc id="${id}-desc">${escapeMarkup(description)}</desc>`
    );
  });
}
