import { readFileSync } from 'node:fs';
import { registerHooks } from 'node:module';

/**
 * The schema library is some seven hundred small files, which takes half a second to load. After an
 * install, tools/bundle-libraries.ts puts it into a few; where they are there, they are loaded in
 * its place. Without them everything works the same and starts later.
 */

/** What is bundled: the names under which it is imported, and where each begins in its package. */
export const BUNDLED: Readonly<Record<string, string>> = {
  typebox: 'build/index.mjs',
  'typebox/compile': 'build/compile/index.mjs',
  'typebox/schema': 'build/schema/index.mjs',
  'typebox/value': 'build/value/index.mjs',
};

const LIBRARY = new URL('../../node_modules/typebox/', import.meta.url);

/** The folder of the bundle for the version that is installed, so that none can be stale. */
export function bundleFolder(): URL {
  const text = readFileSync(new URL('package.json', LIBRARY), 'utf8');
  const version = /"version": *"([^"]+)"/.exec(text)?.[1] ?? 'none';
  return new URL(`../.cache/cratebook/typebox-${version}/`, LIBRARY);
}

/** The source of a bundled entry. */
export function entryOf(name: string): URL {
  return new URL(BUNDLED[name] ?? '', LIBRARY);
}

/** The file of an entry within the bundle: `typebox/value` is `typebox-value.js`. */
export function bundleFile(name: string): string {
  return `${name.replace('/', '-')}.js`;
}

/** From now on, imports of the library load its bundle, where there is one. */
export function useBundledLibraries(): void {
  let files: ReadonlySet<string>;
  const folder = bundleFolder();
  try {
    files = new Set(JSON.parse(readFileSync(new URL('whole.json', folder), 'utf8')));
  } catch {
    return;
  }
  registerHooks({
    resolve: (name, context, next) => {
      const file = Object.hasOwn(BUNDLED, name) ? bundleFile(name) : '';
      if (!files.has(file)) return next(name, context);
      return { url: new URL(file, folder).href, format: 'module', shortCircuit: true };
    },
  });
}
