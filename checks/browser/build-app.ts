import { buildApp, isAppBuilt } from '../../src/start/built-app.ts';

/** Builds the app before the browser tests where it is not up to date, as a start builds it. */
export async function setup(): Promise<void> {
  if (isAppBuilt()) return;
  const mode = process.env.NODE_ENV;
  // The test runner says "test", and the builder would then leave checks for developers in.
  process.env.NODE_ENV = 'production';
  try {
    await buildApp();
  } finally {
    process.env.NODE_ENV = mode;
  }
}
