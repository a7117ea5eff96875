import { randomBytes, randomUUID } from 'node:crypto';
import { mkdirSync } from 'node:fs';
import { homedir } from 'node:os';
import { join } from 'node:path';
import { memoryStore } from '../journal/memory-store.ts';
import type { Store } from '../journal/store.ts';
import type { BookRecord } from '../records/record.ts';
import { createApp } from '../server/app.ts';
import type { Printer } from '../server/handlers.ts';
import { Library } from '../server/library.ts';
import { type Listening, listen } from '../server/listen.ts';
import { Sessions } from '../server/sessions.ts';
import { APP_FILES } from './built-app.ts';

/** Starts the server on this machine: picks the clock, ids, disk and store it works with. */
export const FIRST_PORT = 4870;
const PORTS_TRIED = 20;

export interface ServeOptions {
  /** The data folder. */
  readonly data: string;
  /** Without it, the first free one from 4870. */
  readonly port?: number;
}

export interface Serving {
  /** A new address that opens the app, good for one use. */
  newAddress(): string;
  readonly listening: Listening;
  /** Finishes running requests and closes the store. */
  stop(): Promise<void>;
}

/** The data folder where none is named. */
export function defaultDataFolder(environment: NodeJS.ProcessEnv): string {
  if (environment.CRATEBOOK_DATA) return environment.CRATEBOOK_DATA;
  const share = environment.XDG_DATA_HOME || join(homedir(), '.local', 'share');
  return join(share, 'cratebook');
}

/** Opens the store in the data folder, making both where they are new. */
export async function openStore(data: string): Promise<Store> {
  // Names of children and what families owe: for the user who runs this, and nobody else.
  mkdirSync(data, { recursive: true, mode: 0o700 });
  return memoryStore();
}

export async function startServing(options: ServeOptions): Promise<Serving> {
  const store = await openStore(options.data);
  try {
    return await serveStore(store, options);
  } catch (error) {
    await store.close();
    throw error;
  }
}

async function serveStore(store: Store, { port }: ServeOptions): Promise<Serving> {
  const sessions = new Sessions({ now: () => performance.now(), random: randomBytes });
  let listening: Listening | undefined;
  const app = createApp({
    library: new Library(store),
    sessions,
    instant: () => new Date().toISOString(),
    demo: demoRecords,
    ...printing,
    port: () => listening?.port ?? 0,
    appFiles: APP_FILES,
    newReference: () => randomUUID().slice(0, 8),
    reportBug: (reference, bug) => {
      const trace = bug instanceof Error ? bug.stack : String(bug);
      process.stderr.write(`${new Date().toISOString()} bug ${reference} ${trace}\n`);
    },
  });
  const listens = await listen(app, {
    port: port ?? FIRST_PORT,
    more: port === undefined ? PORTS_TRIED : 0,
  });
  listening = listens;
  return {
    listening: listens,
    newAddress: () => `http://127.0.0.1:${listens.port}/#key=${sessions.newKey()}`,
    stop: async () => {
      await listens.stop();
      await store.close();
    },
  };
}

const printing: { print?: Printer } = {};

function demoRecords(): readonly BookRecord[] {
  return [];
}
