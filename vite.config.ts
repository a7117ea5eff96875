import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { firstFiles } from './tools/first-files.ts';
import { offlineFiles } from './tools/offline-files.ts';
import { packedFiles } from './tools/packed-files.ts';

/**
 * Files of script by part of the app: a hundred small files pack worse than ten, by a seventh. What
 * the first page needs comes by itself; readers of statements stay apart, as few need them.
 */
/** What asks the server before the app is there (src/web/ask-early.ts), and nothing else. */
const EARLY = {
  name: 'early',
  test: /src[\\/](?:web[\\/](?:ask-early|chosen-book|request-of)|contract[\\/]api)\.ts/,
  priority: 11,
};
const FIRST = { name: 'first', tags: ['$initial' as const], priority: 10 };
const BOARD = { name: 'board', test: /src[\\/]web[\\/]screens[\\/]board/, priority: 9 };
const SHARED = { name: 'shared', test: /[\\/]src[\\/]/, minShareCount: 2, priority: 8 };
const AREAS = [
  ['match', /screens[\\/]match[\\/](?!read-chosen)/],
  ['stalls', /screens[\\/](?:hosts|prizes|share|stalls?)[\\/]/],
  ['records', /screens[\\/](?:find|form|products|record|set-up)[\\/]/],
  ['season', /screens[\\/](?:closing|count|family|families|phone)[\\/]/],
] as const;
const groups = [EARLY, FIRST, BOARD, SHARED, ...AREAS.map(([name, test]) => ({ name, test }))];

/** Bundles the app (src/web) into dist/web, which the server hands out under a strict policy. */
// biome-ignore lint/style/noDefaultExport: the tool reads its settings from the default export
export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  publicDir: false,
  plugins: [firstFiles(), offlineFiles(), packedFiles()],
  build: {
    outDir: fileURLToPath(new URL('dist/web', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
    // No inline data: and no polyfill: the server's policy allows scripts of its own origin only.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
    rolldownOptions: { output: { codeSplitting: { groups } } },
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
