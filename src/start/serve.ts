import { randomBytes, randomUUID } from 'node:crypto';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { done, type Outcome } from '../base/outcome.ts';
import type { Store } from '../journal/store.ts';
import { createApp } from '../server/app.ts';
import { Library } from '../server/library.ts';
import { type Listening, listen } from '../server/listen.ts';
import { Sessions } from '../server/sessions.ts';
import type { OpenRefusal } from '../storage/sqlite/open-database.ts';
import { openSqliteStore } from '../storage/sqlite/open-sqlite-store.ts';
import { APP_FILES } from './built-app.ts';
import { makeDataFolder, storeFile } from './data-folder.ts';

/** Starts the server on this machine: picks the clock, ids, disk and store it works with. */
export const FIRST_PORT = 4870;
const PORTS_TRIED = 20;

export interface ServeOptions {
  /** The data folder. */
  readonly data: string;
  /** Without it, the first free one from 4870. */
  readonly port?: number;
  /** The folder of the built app, where it is not the usual one. */
  readonly appFiles?: string;
}

export interface Serving {
  /** A new address that opens the app, good for one use. */
  newAddress(): string;
  readonly listening: Listening;
  /** Finishes running requests and closes the store. */
  stop(): Promise<void>;
}

/** Serves the store of a data folder, both made where new. Throws where no port is free. */
export async function startServing(options: ServeOptions): Promise<Outcome<Serving, OpenRefusal>> {
  makeDataFolder(options.data);
  const opened = await openSqliteStore(storeFile(options.data));
  if (!opened.ok) return opened;
  try {
    return done(await serveStore(opened.value, options));
  } catch (error) {
    await opened.value.close();
    throw error;
  }
}

async function serveStore(store: Store, { port, appFiles }: ServeOptions): Promise<Serving> {
  const sessions = new Sessions({ now: () => performance.now(), random: randomBytes });
  let listening: Listening | undefined;
  const app = createApp({
    library: new Library(store, today),
    sessions,
    instant: () => new Date().toISOString(),
    today,
    demo: demoSeason,
    port: () => listening?.port ?? 0,
    appFiles: appFiles ?? APP_FILES,
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

/** The day on this machine's own calendar, as YYYY-MM-DD. */
function today(): string {
  const now = new Date();
  const twoDigits = (part: number): string => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${twoDigits(now.getMonth() + 1)}-${twoDigits(now.getDate())}`;
}
