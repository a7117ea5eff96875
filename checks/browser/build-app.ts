import { build } from 'vite';

/** Builds the app once before the browser tests, so that they never look at an old one. */
export async function setup(): Promise<void> {
  await build({ logLevel: 'warn' });
}
