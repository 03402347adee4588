import type { Files } from './bench-folder.ts';

/** A second display, and how two of them are compared. */
export const TWO_DISPLAYS: Files = {
  'content/methods/side-by-side.mdx': '---\ntitle: Side by side\nsummary: Two displays.\ndate: 2026-04-01\n---\n',
  'data/displays/wall.md': '---\nname: Wall\nrefresh: 60\nsync: input\nscan-out: 4 ms\n---\n',
};
