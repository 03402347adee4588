/** Two R versions, or two linear algebra libraries, agree at least to this share of a number. */
const AGREEMENT = 1e-9;
/** Below this a number is a rounding remainder of zero. */
const NOTHING = 1e-13;

/** Lines "name value value …", as `emit.R` prints them. Throws a RangeError for a line of another shape. */
export function parseOutput(text: string): Map<string, number[]> {
  const entries = new Map<string, number[]>();
  for (const line of text.split('\n').filter((l) => l !== '')) {
    const [name = '', ...words] = line.split(' ');
    const values = words.map(Number);
    if (values.length === 0 || values.some((value) => !Number.isFinite(value)) || entries.has(name)) {
      throw new RangeError(`a line of reference output has a new name and finite numbers, not '${line}'`);
    }
    entries.set(name, values);
  }
  return entries;
}

/** What differs between committed and new output, in words, and how many numbers were looked at. */
export function compareOutputs(committed: string, fresh: string): { numbers: number; differences: string[] } {
  const [old, now] = [parseOutput(committed), parseOutput(fresh)];
  const differences: string[] = [];
  let numbers = 0;
  for (const name of new Set([...old.keys(), ...now.keys()])) {
    const [was, is] = [old.get(name), now.get(name)];
    if (!was || !is || was.length !== is.length) {
      differences.push(`${name}: ${was?.length ?? 'no'} numbers committed, ${is?.length ?? 'none'} now`);
      continue;
    }
    was.forEach((value, i) => {
      numbers += 1;
      const other = is[i] ?? Number.NaN;
      const close = Math.abs(value - other) <= Math.max(NOTHING, AGREEMENT * Math.abs(value));
      if (!close) differences.push(`${name}[${i}]: ${value} committed, ${other} now`);
    });
  }
  return { numbers, differences };
}
