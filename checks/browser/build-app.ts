import { buildApp, isAppBuilt } from '../../src/start/built-app.ts';

/** Builds the app before the browser tests where it is not up to date. */
export async function setup(): Promise<void> {
  if (!isAppBuilt()) await buildApp();
}
