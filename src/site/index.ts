/**
 * The compiled site as the command and the pages see it. Imported by its name in package.json, `lagfolio/site`,
 * everywhere: they then have one instance of it (astro.config.mjs names it external), and nothing is computed twice.
 */
export { foundFiles, type FoundFile } from './found-files.ts';
export { pagesOf, type ViewOf } from './pages.ts';
export { watchProgress } from './progress.ts';
export { publicationFolder, TOOL } from './publication.ts';
export { recomputeFacts } from './recompute-facts.ts';
export { searchFacts } from './search-page.ts';
export { compileRemembering, forgetSite, loadSite, showDrafts } from './site.ts';
