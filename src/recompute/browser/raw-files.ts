/** The published raw files: asked of the site, or taken from a folder in which the site was saved. */

export interface RawFiles {
  /** By path from the site's root: `data/rigs/balcony.md`, `figures.json`. Rejects with a sentence for the reader. */
  read(path: string): Promise<Uint8Array>;
}

/** Same-origin requests, once for each file. */
export function fetchedFiles(root: URL): RawFiles {
  const known = new Map<string, Promise<Uint8Array>>();
  const ask = async (path: string): Promise<Uint8Array> => {
    const response = await fetch(new URL(path, root));
    if (!response.ok) throw new Error(`${path} could not be fetched: the server answers ${response.status}.`);
    return new Uint8Array(await response.arrayBuffer());
  };
  return {
    read(path) {
      const asked = known.get(path) ?? ask(path);
      known.set(path, asked);
      asked.catch(() => known.delete(path));
      return asked;
    },
  };
}

/** A folder that the reader chose: wherever in it the site stands. */
export function chosenFiles(list: Iterable<File>): RawFiles {
  const files = [...list];
  return {
    async read(path) {
      const file = files.find(({ webkitRelativePath: own }) => own === path || own.endsWith(`/${path}`));
      if (file === undefined) throw new Error(`the folder that you chose holds no ${path}.`);
      return new Uint8Array(await file.arrayBuffer());
    },
  };
}
