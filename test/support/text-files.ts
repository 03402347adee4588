import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** Writes files of a folder; what stood there before stands there again afterwards, with `using`. */
export function writeFiles(root: string, files: Readonly<Record<string, string>>): Disposable {
  const before = Object.keys(files).map((path) => {
    const full = join(root, path);
    return [full, existsSync(full) ? readFileSync(full) : undefined] as const;
  });
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(dirname(join(root, path)), { recursive: true });
    writeFileSync(join(root, path), text);
  }
  return {
    [Symbol.dispose]() {
      for (const [path, bytes] of before) bytes === undefined ? rmSync(path) : writeFileSync(path, bytes);
    },
  };
}
