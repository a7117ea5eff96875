/**
 * Puts the schema library into few files, so that every command starts sooner; run after each
 * install. `node tools/bundle-libraries.ts`
 */
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { BUNDLED, bundleFile, bundleFolder, entryOf } from '../src/start/bundled-libraries.ts';

const folder = fileURLToPath(bundleFolder()).replace(/\/$/, '');
const making = `${folder}.${process.pid}`;
mkdirSync(making, { recursive: true });
const names = Object.keys(BUNDLED);
const entry = Object.fromEntries(
  names.map((name) => [bundleFile(name).replace(/\.js$/, ''), fileURLToPath(entryOf(name))]),
);
await build({
  configFile: false,
  logLevel: 'error',
  publicDir: false,
  build: {
    outDir: making,
    emptyOutDir: true,
    minify: false,
    target: 'esnext',
    lib: { entry, formats: ['es'] },
  },
});
writeFileSync(`${making}/whole.json`, JSON.stringify(names.map(bundleFile)));
writeFileSync(`${making}/package.json`, '{"type":"module"}');
// Nobody ever sees half a bundle.
rmSync(folder, { recursive: true, force: true });
renameSync(making, folder);
