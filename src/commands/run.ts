import './no-requests.ts';
import { existsSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs, type ParseArgsConfig } from 'node:util';
import { distance } from 'fastest-levenshtein';
import { recallResultsFrom } from 'lagfolio/memory';
import { date as dateSchema } from '../ingest/fields.ts';
import { nearest } from '../ingest/nearest.ts';
import { ProblemsError } from '../model/problem.ts';
import { fromCaller, publicationFolder, PUBLICATION_VARIABLE } from '../site/publication.ts';
import { resultsFolder } from './cache-folder.ts';
import { fileSystemProblem } from './file-system-faults.ts';
import { complain, say } from './say.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What was given for the options of a command. */
export type CommandOptions<O extends Options> = { readonly [Name in keyof O]?: Given<O[Name]> | undefined };

type Given<Option> = Option extends { type: 'boolean' }
  ? boolean
  : Option extends { multiple: true }
    ? readonly string[]
    : string;

/** What every command takes that works on a publication. */
const PUBLICATION_OPTION = { publication: { type: 'string' } } as const;
const PUBLICATION_USAGE = `

  --publication DIR  work on the publication in this folder; without it, on the one that the environment
                     variable ${PUBLICATION_VARIABLE} names, and without that on the demonstration`;

const BEGIN = ' To begin one: npm run begin -- DIR';

interface Manner {
  /** Whether words that belong to no option mean something to the command. */
  readonly takesWords?: boolean;
  /** Whether it works on a publication that is there already. */
  readonly onPublication?: boolean;
}

/** A mistake in how a command was called: shown without a stack, with exit code 2. */
export class CallError extends Error {}

/** Letters that a setting of npm may differ in to be a misspelt option of ours, where that is long enough. */
const NEARLY = 2;
const LONG_ENOUGH = 6;

/**
 * Runs a command of package.json: reads its options, prints what an author can mend as plain text without
 * a stack, and ends with code 1 for mistakes in files and 2 for mistakes in the call.
 */
export async function runCommand<const O extends Options>(
  ownUsage: string,
  ownOptions: O,
  command: (values: CommandOptions<O>, words: readonly string[]) => Promise<void>,
  { takesWords = false, onPublication = true }: Manner = {},
): Promise<void> {
  const [usage, options] = onPublication
    ? [`${ownUsage}${PUBLICATION_USAGE}`, { ...ownOptions, ...PUBLICATION_OPTION }]
    : [ownUsage, ownOptions];
  try {
    const { values, words } = readCall(usage, options, takesWords);
    if (values['help'] === true) {
      say(usage);
      return;
    }
    if (onPublication) choosePublication(values['publication']);
    await command(values as CommandOptions<O>, words);
  } catch (error) {
    if (error instanceof CallError) {
      complain(error.message);
      process.exitCode = 2;
      return;
    }
    const told = error instanceof ProblemsError ? error : fileSystemProblem(error, 'the output folder');
    // Whatever is not an author's mistake is ours, and keeps its stack.
    complain(told === undefined ? error : `${told.message}\n\nNothing was published.`);
    process.exitCode = 1;
  }
}

/** Settles which publication everything works on from here, that there is one, and what builds of it computed before. */
function choosePublication(said: unknown): void {
  if (typeof said === 'string') process.env[PUBLICATION_VARIABLE] = fromCaller(said);
  const root = publicationFolder();
  const by = typeof said === 'string' ? '--publication' : PUBLICATION_VARIABLE;
  if (!existsSync(root)) throw new CallError(`There is no folder ${root}, which ${by} names.${BEGIN}`);
  if (!statSync(root).isDirectory()) throw new CallError(`${root}, which ${by} names, is no folder.${BEGIN}`);
  if (!['data', 'content', '.writing'].some((folder) => existsSync(join(root, folder))))
    throw new CallError(`${root}, which ${by} names, holds no publication: neither data/ nor content/.${BEGIN}`);
  recallResultsFrom(resultsFolder(root));
}

/** Refuses a --date that is no calendar date; `what` needs one, as in `A record`. */
export function requireDay(date: string, what: string, usage: string): void {
  if (dateSchema.safeParse(date).success) return;
  const why = date === '' ? 'None was given, and nothing here reads a clock' : `'${date}' is no calendar date`;
  throw new CallError(`${what} needs its day, as YYYY-MM-DD: --date 2026-05-02. ${why}.\n\n${usage}`);
}

/** A port, of an option. */
export function portOf(text: string): number {
  if (!/^\d{1,5}$/.test(text) || Number(text) > 65_535)
    throw new CallError(`--port is a number up to 65535, not '${text}'.`);
  return Number(text);
}

function readCall(
  usage: string,
  options: Options,
  takesWords: boolean,
): { values: Readonly<Record<string, unknown>>; words: readonly string[] } {
  const all: Options = { ...options, help: { type: 'boolean', short: 'h' } };
  const names = Object.keys(all);
  refuseKeptByNpm(options);
  // Loosely first, to name what an unknown option nearly is.
  const { tokens } = parseArgs({ options: all, allowPositionals: true, strict: false, tokens: true });
  const seen = new Set<string>();
  for (const token of tokens) {
    if (token.kind !== 'option') continue;
    const option = all[token.name];
    if (option === undefined)
      throw new CallError(`Unknown option '${token.rawName}'${suggest(token.name, names) || '.'}\n\n${usage}`);
    if (seen.has(token.name) && option.multiple !== true)
      throw new CallError(`${token.rawName} is given twice; give it once.\n\n${usage}`);
    seen.add(token.name);
  }
  const { values, positionals } = parseStrictly(usage, all);
  const [word = ''] = positionals;
  if (positionals.length > 0 && !takesWords)
    throw new CallError(
      `'${positionals.join(' ')}' belongs to no option${suggest(word, names) || '; put text of several words in quotes.'}\n\n${usage}`,
    );
  return { values, words: positionals };
}

function parseStrictly(usage: string, options: Options) {
  try {
    return parseArgs({ options, allowPositionals: true, strict: true });
  } catch (error) {
    throw new CallError(`${error instanceof Error ? error.message.split('. ')[0] : String(error)}.\n\n${usage}`);
  }
}

function suggest(name: string, names: readonly string[]): string {
  const near = nearest(name, names).map((each) => `--${each}`);
  return near.length > 0 ? `; did you mean ${near.join(' or ')}?` : '';
}

/** Without `--`, npm takes options for its own settings and the command never sees them, as in `npm run build --strict`. */
function refuseKeptByNpm(options: Options): void {
  const script = process.env['npm_lifecycle_event'];
  if (script === undefined) return;
  const kept = Object.entries(process.env).flatMap(([variable, value = '']) => {
    const [, setting] = /^npm_config_(.+)$/.exec(variable) ?? [];
    const name = setting && Object.keys(options).find((option) => isMeant(setting.replaceAll('_', '-'), option));
    return name ? [options[name]?.type === 'boolean' ? `--${name}` : `--${name} ${JSON.stringify(value)}`] : [];
  });
  if (kept.length === 0) return;
  const command = script === 'start' ? 'npm start' : `npm run ${script}`;
  throw new CallError(
    `npm took ${kept.length === 1 ? 'an option' : 'options'} of this command for itself; a lone -- hands on what follows. Type:\n\n  ${command} -- ${kept.join(' ')}`,
  );
}

/** The option itself, or what is one or two letters off it. */
function isMeant(setting: string, option: string): boolean {
  const off = distance(setting, option);
  return off === 0 || (option.length >= LONG_ENOUGH && off <= NEARLY);
}
