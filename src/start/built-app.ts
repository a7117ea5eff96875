import { existsSync, globSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The app as the browser gets it: built from src/ where that is newer, so it is never old. */
const HOME = fileURLToPath(new URL('../..', import.meta.url));
/** The folder of the built app. */
export const APP_FILES = join(HOME, 'dist', 'web');
const SOURCES = [
  'src/**/*.{ts,tsx,css,html,svg,png,webmanifest}',
  'vite.config.ts',
  'tools/{first,offline,packed}-files.ts',
  'package-lock.json',
];

export function isAppBuilt(): boolean {
  const page = statSync(join(APP_FILES, 'index.html'), { throwIfNoEntry: false });
  if (page === undefined) return false;
  const sources = globSync(SOURCES, { cwd: HOME }).filter((file) => !file.includes('.test.'));
  return sources.every((file) => statSync(join(HOME, file)).mtimeMs <= page.mtimeMs);
}

/**
 * Builds the app beside the one that is there, then puts it in its place, so that a server that
 * runs never hands out half of one.
 */
export async function buildApp(): Promise<void> {
  // Loaded only where something is to be built: most starts need no builder.
  const { build } = await import('vite');
  const fresh = `${APP_FILES}.${process.pid}`;
  const old = `${fresh}.old`;
  mkdirSync(join(HOME, 'dist'), { recursive: true });
  try {
    await build({
      configFile: join(HOME, 'vite.config.ts'),
      logLevel: 'warn',
      build: { outDir: fresh },
    });
    if (existsSync(APP_FILES)) renameSync(APP_FILES, old);
    renameSync(fresh, APP_FILES);
  } finally {
    rmSync(fresh, { recursive: true, force: true });
    rmSync(old, { recursive: true, force: true });
  }
}
