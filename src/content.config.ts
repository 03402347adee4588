import { defineCollection } from 'astro:content';
import { glob } from 'astro/loaders';

/** Only the text of write-ups: their front matter is read and checked by `src/ingest/` like every other file. */
const writeUps = (folder: string) =>
  defineCollection({ loader: glob({ base: `./content/${folder}`, pattern: '*.mdx' }) });

export const collections = {
  reports: writeUps('reports'),
  methods: writeUps('methods'),
};
