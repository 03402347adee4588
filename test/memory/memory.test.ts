import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { estimateSession, keepEstimate } from '../../src/analysis/estimate.ts';
import { keepResultsIn, Memory, nameOf } from '../../src/memory/memory.ts';
import { Shelf } from '../../src/memory/shelf.ts';
import { lookup } from '../../src/register/lookup.ts';
import { sessionInput } from '../../src/register/session-input.ts';
import { bench, reading, session } from '../support/small-bench.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'memory-'));
});
afterEach(() => {
  keepResultsIn(undefined);
  rmSync(folder, { recursive: true });
});

const inputOf = (latencyMs: number) => {
  const one = session('a', { rate: '24' }, { readings: [reading(2, 300), reading(3, 310), reading(4, latencyMs)] });
  return sessionInput(one, lookup(bench([one])));
};
const estimates = () =>
  new Memory({
    name: 'estimates',
    code: ['src/analysis'],
    compute: estimateSession,
    keep: keepEstimate,
    restore: (estimate) => estimate,
  });
/** A function that counts how often it is worked out. */
function counting(compute: (input: number) => unknown) {
  const inputs: number[] = [];
  const memory = () =>
    new Memory({
      name: 'counted',
      code: ['src/memory'],
      compute: (input: number) => {
        inputs.push(input);
        return compute(input);
      },
      keep: (result) => result,
      restore: (result) => result,
    });
  return { inputs, memory };
}
const onlyFile = (): string => join(folder, 'counted', readdirSync(join(folder, 'counted'))[0] ?? '');

describe('while a program runs', () => {
  it('gives the estimate that would be made anew', () => {
    const memory = estimates();
    for (const latencyMs of [305, 350, 305])
      expect(memory.recall(inputOf(latencyMs))).toEqual(estimateSession(inputOf(latencyMs)));
  });

  it('makes an estimate once, and again only after it went unused', () => {
    const memory = estimates();
    const first = memory.recall(inputOf(305));
    memory.forgetUnused();
    expect(memory.recall(inputOf(305))).toBe(first);
    memory.forgetUnused();
    memory.forgetUnused();
    expect(memory.recall(inputOf(305))).not.toBe(first);
  });

  it('keeps nothing on disk until it is told where', () => {
    counting((x) => x)
      .memory()
      .recall(1);
    expect(readdirSync(folder)).toEqual([]);
  });
});

describe('from one program to the next', () => {
  it('gives the estimate that would be made anew, to the last bit and at every level', () => {
    keepResultsIn(folder);
    estimates().recall(inputOf(305));
    const restored = estimates().recall(inputOf(305));
    const anew = estimateSession(inputOf(305));
    expect(restored).toEqual(anew);
    expect({ ...restored.errors }).toEqual({ ...anew.errors });
    expect(readdirSync(join(folder, 'estimates'))).toHaveLength(1);
  });

  it('works a thing out once, with numbers that JSON has no word for', () => {
    keepResultsIn(folder);
    const { inputs, memory } = counting((input) => ({ freedom: Infinity, minus: -0, none: Number.NaN, input }));
    const first = memory().recall(7);
    expect(memory().recall(7)).toStrictEqual(first);
    expect(inputs).toEqual([7]);
    memory().recall(8);
    expect(inputs).toEqual([7, 8]);
  });

  it('tells apart inputs that JSON would not', () => {
    const names = [Number.NaN, Infinity, -Infinity, null].map((input) => nameOf('1', { input }));
    expect(new Set([...names, nameOf('2', { input: null })]).size).toBe(5);
  });

  it.each([
    ['a changed byte', (bytes: Buffer) => Buffer.from(bytes.map((byte, at) => (at === 40 ? byte ^ 1 : byte)))],
    ['a changed digest', (bytes: Buffer) => Buffer.from(bytes.map((byte, at) => (at === 0 ? byte ^ 1 : byte)))],
    ['half of it', (bytes: Buffer) => bytes.subarray(0, bytes.length / 2)],
    ['nothing', () => Buffer.alloc(0)],
  ])('trusts no damaged file, and mends it: %s', (_what, damage) => {
    keepResultsIn(folder);
    const { inputs, memory } = counting((input) => `result of ${input}, long enough to be damaged`);
    const result = memory().recall(7);
    const whole = readFileSync(onlyFile());
    writeFileSync(onlyFile(), damage(whole));
    expect(memory().recall(7)).toBe(result);
    expect(inputs).toEqual([7, 7]);
    expect(readFileSync(onlyFile()).equals(whole)).toBe(true);
  });

  it('passes over what is there when asked, and keeps it anew', () => {
    keepResultsIn(folder);
    const { inputs, memory } = counting((input) => input);
    memory().recall(7);
    keepResultsIn(folder, { fresh: true });
    rmSync(onlyFile());
    memory().recall(7);
    memory().recall(7);
    expect(inputs).toEqual([7, 7, 7]);
    keepResultsIn(folder);
    memory().recall(7);
    expect(inputs).toEqual([7, 7, 7]);
  });

  it('computes where the folder cannot be written', () => {
    writeFileSync(join(folder, 'a-file'), '');
    keepResultsIn(join(folder, 'a-file'));
    const { memory } = counting((input) => input + 1);
    expect(memory().recall(7)).toBe(8);
  });
});

describe('a shelf', () => {
  it('keeps what was used last, within its limit, and nothing that it did not write whole', async () => {
    const shelf = new Shelf(folder, 3 * 132);
    for (const name of ['a', 'b', 'c', 'd']) {
      shelf.put(name, Buffer.alloc(100, name));
      await new Promise((done) => setTimeout(done, 15));
    }
    shelf.get('a');
    shelf.sweep();
    expect(readdirSync(folder).sort()).toEqual(['a', 'c', 'd']);
    expect(readdirSync(folder).map((name) => statSync(join(folder, name)).size)).toEqual([132, 132, 132]);
    expect(shelf.get('b')).toBeUndefined();
    expect(shelf.get('c')?.toString()).toBe('c'.repeat(100));
  });
});
