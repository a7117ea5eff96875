import type { HtmlTagDescriptor, Plugin, Rolldown } from 'vite';

/**
 * Part of the app's build: the first page names the board's files too, so that a slow line fetches
 * them together with the app and not after it. The board is where the app opens.
 */
const BOARD = 'board-screen';

export function firstFiles(): Plugin {
  return {
    name: 'first-files',
    apply: 'build',
    transformIndexHtml: {
      order: 'post',
      handler: (page, { bundle = {} }) => {
        const wanted = withImports(bundle, chunkNamed(bundle, BOARD));
        const scripts = wanted.map(({ fileName }) => fileName);
        const styles = wanted.flatMap(({ viteMetadata }) => [...(viteMetadata?.importedCss ?? [])]);
        return [
          ...scripts.map((file) => link({ rel: 'modulepreload', href: `/${file}` })),
          ...styles.map((file) => link({ rel: 'stylesheet', crossorigin: true, href: `/${file}` })),
        ].filter(({ attrs }) => !page.includes(String(attrs?.href)));
      },
    },
  };
}

function withImports(
  bundle: Rolldown.OutputBundle,
  chunk: Rolldown.OutputChunk,
): Rolldown.OutputChunk[] {
  const imported = chunk.imports.map((file) => bundle[file]).filter((file) => file !== undefined);
  return [chunk, ...imported.filter((file) => file.type === 'chunk')];
}

function chunkNamed(bundle: Rolldown.OutputBundle, name: string): Rolldown.OutputChunk {
  const found = Object.values(bundle).find((file) => file.type === 'chunk' && file.name === name);
  if (found?.type !== 'chunk') throw new Error(`the build has a chunk named ${name}`);
  return found;
}

function link(attrs: HtmlTagDescriptor['attrs']): HtmlTagDescriptor {
  return { tag: 'link', injectTo: 'head', ...(attrs && { attrs }) };
}
