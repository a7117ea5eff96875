import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'vite';

/**
 * Part of the app's build: what makes the app installable and able to open without its server (the
 * manifest, its icons, and the service worker, which is told every file of the build).
 */
const OFFLINE = new URL('../src/web/offline/', import.meta.url);
const PLAIN = [
  'manifest.webmanifest',
  'icons/icon-192.png',
  'icons/icon-512.png',
  'icons/maskable-512.png',
] as const;

export function offlineFiles(): Plugin {
  return {
    name: 'offline-files',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'link', injectTo: 'head', attrs: { rel: 'manifest', href: '/manifest.webmanifest' } },
      {
        tag: 'link',
        injectTo: 'head',
        attrs: { rel: 'apple-touch-icon', href: '/icons/icon-192.png' },
      },
    ],
    generateBundle() {
      for (const fileName of PLAIN) {
        const source = readFileSync(new URL(fileName, OFFLINE));
        this.emitFile({ type: 'asset', fileName, source });
      }
    },
    writeBundle: {
      sequential: true,
      order: 'post',
      async handler({ dir }, bundle) {
        if (dir === undefined) throw new Error('the app is built into a folder');
        const files = Object.values(bundle).map((file) =>
          entryOf(file.fileName, file.type === 'chunk' ? file.code : file.source),
        );
        await buildWorker(dir, files);
      },
    },
  };
}

interface Entry {
  readonly url: string;
  readonly revision: string | null;
}

/** Files in assets/ carry their content in their names; others are told apart by a hash. */
function entryOf(fileName: string, content: string | Uint8Array): Entry {
  const named = fileName.startsWith('assets/');
  const revision = named ? null : createHash('sha256').update(content).digest('hex');
  return { url: `/${fileName}`, revision };
}

async function buildWorker(outDir: string, files: readonly Entry[]): Promise<void> {
  await build({
    configFile: false,
    logLevel: 'warn',
    publicDir: false,
    define: {
      APP_FILES: JSON.stringify(files),
      'process.env.NODE_ENV': JSON.stringify('production'),
    },
    build: {
      outDir,
      emptyOutDir: false,
      target: 'es2022',
      rollupOptions: {
        input: fileURLToPath(new URL('service-worker.ts', OFFLINE)),
        output: { entryFileNames: 'sw.js', format: 'iife' },
      },
    },
  });
}
