import { build } from 'vite';

/**
 * The code of a page of this folder as one script, by the app's own builder and for the app's own
 * browsers.
 *
 * @param name under which the page's exports are found in the browser
 */
export async function bundledPage(file: string, name: string): Promise<string> {
  const made = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      lib: { entry: new URL(file, import.meta.url).pathname, formats: ['iife'], name },
    },
  });
  const [first] = Array.isArray(made) ? made : [made];
  const chunk = first !== undefined && 'output' in first ? first.output[0] : undefined;
  if (chunk?.type !== 'chunk') throw new Error('The builder gave no script.');
  return chunk.code;
}
