import { parseArgs, type ParseArgsConfig } from 'node:util';
import { ProblemsError } from '../model/problem.ts';

type Options = NonNullable<ParseArgsConfig['options']>;

/** What was given for the options of a command. */
export type CommandOptions<O extends Options> = { readonly [Name in keyof O]?: Given<O[Name]> | undefined };

type Given<Option> = Option extends { type: 'boolean' }
  ? boolean
  : Option extends { multiple: true }
    ? readonly string[]
    : string;

/** A mistake in how a command was called: shown without a stack, with exit code 2. */
export class CallError extends Error {}

/**
 * Runs a command of package.json: reads its options, prints what an author can mend as plain text without
 * a stack, and ends with code 1 for mistakes in files and 2 for mistakes in the call.
 */
export async function runCommand<const O extends Options>(
  usage: string,
  options: O,
  command: (values: CommandOptions<O>, words: readonly string[]) => Promise<void>,
): Promise<void> {
  let parsed: ReturnType<typeof parseArgs>;
  try {
    parsed = parseArgs({
      options: { ...options, help: { type: 'boolean', short: 'h' } } as Options,
      allowPositionals: true,
      strict: true,
    });
  } catch (error) {
    console.error(`${error instanceof Error ? error.message.split('. ')[0] : String(error)}.\n\n${usage}`);
    process.exitCode = 2;
    return;
  }
  if (parsed.values['help'] === true) {
    console.log(usage);
    return;
  }
  try {
    await command(parsed.values as CommandOptions<O>, parsed.positionals);
  } catch (error) {
    if (error instanceof CallError) {
      console.error(error.message);
      process.exitCode = 2;
      return;
    }
    // Whatever is not an author's mistake is ours, and keeps its stack.
    console.error(error instanceof ProblemsError ? `${error.message}\n\nNothing was published.` : error);
    process.exitCode = 1;
  }
}
