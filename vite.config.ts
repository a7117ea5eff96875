import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { offlineFiles } from './tools/offline-files.ts';

/** Bundles the app (src/web) into dist/web, which the server hands out under a strict policy. */
// biome-ignore lint/style/noDefaultExport: the tool reads its settings from the default export
export default defineConfig({
  root: fileURLToPath(new URL('src/web', import.meta.url)),
  publicDir: false,
  plugins: [offlineFiles()],
  build: {
    outDir: fileURLToPath(new URL('dist/web', import.meta.url)),
    emptyOutDir: true,
    target: 'es2022',
    // No inline data: and no polyfill: the server's policy allows scripts of its own origin only.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    sourcemap: false,
  },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
});
