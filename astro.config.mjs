import { satteri } from '@astrojs/markdown-satteri';
import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import { cellAlignment } from './src/components/cell-alignment.ts';
import { ownPictures, picturesAlone } from './src/components/place-illustrations.ts';
import { refuseCode } from './src/commands/refuse-code.ts';
import { writeUps } from './src/commands/write-ups.ts';
import { reloadOnData } from './src/commands/reload-on-data.ts';
import { takeReadings } from './src/take-readings/dev-server.ts';

/** As package.json exports them: one instance of each, for the command and for the pages that it bundles. */
const SHARED = ['lagfolio/fonts', 'lagfolio/memory', 'lagfolio/scripts', 'lagfolio/site'];

export default defineConfig({
  output: 'static',
  // Every link is written relative to its page, so the site works from any folder of any host.
  trailingSlash: 'always',
  build: { format: 'directory' },
  devToolbar: { enabled: false },
  cacheDir: './.astro/cache',
  // A page is taken over from the last build where its view is the same (src/site/pages.ts).
  experimental: { incrementalBuild: true },
  integrations: [mdx(), reloadOnData(), takeReadings()],
  markdown: {
    syntaxHighlight: false,
    processor: satteri({ mdastPlugins: [ownPictures], hastPlugins: [picturesAlone, cellAlignment] }),
  },
  vite: {
    cacheDir: './.astro/vite',
    plugins: [writeUps(), refuseCode()],
    ssr: { external: SHARED },
    build: { rolldownOptions: { external: SHARED, checks: { moduleLevelDirective: false } } },
    server: { watch: { ignored: ['**/dist/**', '**/.*.building/**'] } },
  },
});
