/**
 * Loaded before a program (`node --import`), writes a line into the file `CONNECTIONS` when it starts, and one
 * for each connection or look-up of a name that it asks for.
 */
import dgram from 'node:dgram';
import dns from 'node:dns';
import { appendFileSync } from 'node:fs';
import net from 'node:net';
import { basename } from 'node:path';

const file = process.env['CONNECTIONS'] ?? '';
const note = (what: string): void => appendFileSync(file, `${basename(process.argv[1] ?? '')} ${what}\n`);

/** Notes the calls of a method and lets them through. */
function watch(target: object, method: string): void {
  const original = Reflect.get(target, method) as (...words: unknown[]) => unknown;
  Reflect.set(target, method, function (this: unknown, ...words: unknown[]) {
    note(`${method} ${JSON.stringify(words)}`);
    return original.apply(this, words);
  });
}

watch(net.Socket.prototype, 'connect');
watch(dgram.Socket.prototype, 'send');
watch(dns, 'lookup');
note('begins');
