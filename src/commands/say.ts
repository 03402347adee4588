/** All that commands print. What files hold, their names included, never gets to steer the terminal. */
import { inspect } from 'node:util';
import { escapeControls } from '../model/problem-text.ts';

export function say(text: string): void {
  process.stdout.write(`${escapeLines(text)}\n`);
}

export function complain(error: unknown): void {
  process.stderr.write(`${escapeLines(typeof error === 'string' ? error : inspect(error))}\n`);
}

/** Puts a line in place of the last such, on a terminal only: what a long command is doing. None clears it. */
export function sayMeanwhile(text = ''): void {
  if (process.stderr.isTTY) process.stderr.write(`\r\u001b[K${escapeControls(text)}`);
}

/** Line breaks and tabs stay. */
function escapeLines(text: string): string {
  return text
    .split(/([\n\t])/)
    .map((part) => (part === '\n' || part === '\t' ? part : escapeControls(part)))
    .join('');
}
