import { createServer, type Server } from 'node:http';
import { getRequestListener } from '@hono/node-server';
import type { Hono } from 'hono';

/** The only address the server listens on until people can sign in. */
const LOOPBACK = '127.0.0.1';
const STOP_WITHIN_MS = 4000;
const LOOK_FOR_IDLE_MS = 50;
const CONNECTIONS_MAX = 256;

/** A body or a head that comes slower than this is cut off. */
const patience = {
  headersTimeout: 10_000,
  requestTimeout: 30_000,
  connectionsCheckingInterval: 5000,
  keepAliveTimeout: 5000,
};

export interface Listening {
  readonly port: number;
  /** Lets running requests finish, for at most four seconds. */
  stop(): Promise<void>;
}

export interface ListenOptions {
  /** 0 takes any free port. */
  readonly port: number;
  /** How many ports after the first to try when it is taken. */
  readonly more?: number;
  readonly patience?: Partial<typeof patience>;
}

/** Listens on the first free port from the given one. Throws where none is free. */
export async function listen(app: Hono, options: ListenOptions): Promise<Listening> {
  const handle = getRequestListener(app.fetch, { overrideGlobalObjects: false });
  const server = createServer({ ...patience, ...options.patience }, handle);
  server.maxConnections = CONNECTIONS_MAX;
  const port = await firstFreePort(server, options.port, options.more ?? 0);
  return { port, stop: () => stop(server) };
}

async function firstFreePort(server: Server, first: number, more: number): Promise<number> {
  try {
    await new Promise<void>((resolve, reject) => {
      server.once('error', reject);
      server.listen(first, LOOPBACK, () => {
        server.off('error', reject);
        resolve();
      });
    });
  } catch (error) {
    const taken = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
    if (!taken || more === 0) throw error;
    return firstFreePort(server, first + 1, more - 1);
  }
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : first;
}

function stop(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), STOP_WITHIN_MS);
    // A connection that is busy now is kept open by its browser once it has its answer.
    const idle = setInterval(() => server.closeIdleConnections(), LOOK_FOR_IDLE_MS);
    server.close(() => {
      clearTimeout(cut);
      clearInterval(idle);
      resolve();
    });
  });
}
