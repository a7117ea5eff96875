import { createInterface } from 'node:readline';
import { buildApp, isAppBuilt } from './built-app.ts';
import { defaultDataFolder } from './data-folder.ts';
import { messageOf } from './message-of.ts';
import { type ServeOptions, type Serving, startServing } from './serve.ts';

/** What a stop may take before the program ends without waiting further. */
const STOP_WITHIN_MS = 5000;

export interface RunOptions extends Partial<ServeOptions> {
  /** `as it is` leaves the built app alone; without it, an old one is built anew. */
  readonly app?: 'as it is';
}

/**
 * Serves until it is told to stop: prints the address, gives a new one on Enter, and on SIGINT or
 * SIGTERM finishes what is running and closes the store.
 *
 * @returns the exit code: 0 after a stop, 2 where it could not start
 */
export async function runServe(given: RunOptions): Promise<number> {
  const data = given.data ?? defaultDataFolder(process.env);
  let serving: Serving;
  try {
    if (given.app !== 'as it is' && !isAppBuilt()) {
      process.stderr.write('Building the app\n');
      await buildApp();
    }
    const started = await startServing({ ...given, data });
    if (!started.ok) {
      process.stderr.write(`cratebook serve: ${started.refusal.message}\n`);
      return 2;
    }
    serving = started.value;
  } catch (error) {
    process.stderr.write(`cratebook serve: ${messageOf(error)}\n`);
    return 2;
  }
  process.stdout.write(`Books are kept in ${data}\n`);
  printAddress(serving);
  const terminal = process.stdin.isTTY ? createInterface({ input: process.stdin }) : undefined;
  if (terminal !== undefined) process.stdout.write('Enter gives a new address, Ctrl+C stops.\n');
  terminal?.on('line', () => printAddress(serving));
  await stopAsked();
  terminal?.close();
  process.stdout.write('Stopping\n');
  setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
  await serving.stop();
  return 0;
}

function printAddress(serving: Serving): void {
  process.stdout.write(`Open ${serving.newAddress()} (good for one use)\n`);
}

function stopAsked(): Promise<void> {
  return new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
}
