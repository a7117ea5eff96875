import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import type { BookRecord } from '../../src/records/record.ts';
import { APP_FILES } from '../../src/start/built-app.ts';
import { type Serving, startServing } from '../../src/start/serve.ts';
import { bookKept } from './all-sent.ts';
import { BOOK, CHROMIUM_FLAGS, chromiumPath, PHONE } from './harness.ts';
import { untilTrue } from './until-true.ts';

/**
 * A server that can be stopped and started again over the same store and port, and phones: browsers
 * with a profile of their own on disk, which can be closed or killed and opened again.
 */
export class StoppableServer {
  readonly #data = mkdtempSync(join(tmpdir(), 'cratebook-data-'));
  /** A copy of the built app of its own: a build meanwhile must not change what is kept. */
  readonly appFiles = mkdtempSync(join(tmpdir(), 'cratebook-app-'));
  #serving: Serving | undefined;
  #port = 0;

  constructor() {
    cpSync(APP_FILES, this.appFiles, { recursive: true });
  }

  get origin(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  async start(): Promise<void> {
    const started = await startServing({
      data: this.#data,
      port: this.#port,
      appFiles: this.appFiles,
    });
    if (!started.ok) throw new Error(started.refusal.message);
    this.#serving = started.value;
    this.#port = started.value.listening.port;
  }

  async stop(): Promise<void> {
    await this.#serving?.stop();
    this.#serving = undefined;
  }

  newAddress(): string {
    if (this.#serving === undefined) throw new Error('the server runs');
    return this.#serving.newAddress();
  }

  async end(): Promise<void> {
    await this.stop();
    for (const folder of [this.#data, this.appFiles]) {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}

export class Phone {
  readonly profile = mkdtempSync(join(tmpdir(), 'cratebook-phone-'));
  #context: BrowserContext | undefined;

  async open(address: string): Promise<Page> {
    this.#context ??= await chromium.launchPersistentContext(this.profile, {
      executablePath: chromiumPath(),
      args: CHROMIUM_FLAGS,
      viewport: PHONE,
      locale: 'en-US',
      reducedMotion: 'reduce',
    });
    const page = this.#context.pages()[0] ?? (await this.#context.newPage());
    await page.goto(address);
    return page;
  }

  get context(): BrowserContext {
    if (this.#context === undefined) throw new Error('the phone is open');
    return this.#context;
  }

  async close(): Promise<void> {
    await this.#context?.close();
    this.#context = undefined;
  }

  async end(): Promise<void> {
    await this.close();
    rmSync(this.profile, { recursive: true, force: true });
  }
}

/** Opens the printed address until the board is there and the phone keeps app and book. */
export async function signInAndKeep(phone: Phone, server: StoppableServer): Promise<Page> {
  const page = await phone.open('about:blank');
  const signedIn = page.waitForResponse((answer) => answer.url().endsWith('/api/session'));
  await page.goto(server.newAddress());
  await signedIn;
  await untilTrue(page, async () => {
    const registration = await navigator.serviceWorker.ready;
    return registration.active?.state === 'activated';
  });
  return page;
}

const RECORDS = `/api/books/${BOOK.group}/${BOOK.season}/records`;

/** Asks the server as the app does; the page must be signed in. */
export async function ask(page: Page, path: string, body?: object): Promise<unknown> {
  return page.evaluate(
    async ([to, text]) => {
      const init = text && {
        method: 'POST',
        body: text,
        headers: { 'Content-Type': 'application/json' },
      };
      const answer = await fetch(to ?? '', init || {});
      if (!answer.ok) throw new Error(`${to}: ${answer.status} ${await answer.text()}`);
      return answer.json();
    },
    [path, body && JSON.stringify(body)] as const,
  );
}

export async function startDemo(page: Page): Promise<void> {
  await ask(page, '/api/books', { ...BOOK, start: 'demo' });
  await page.goto(new URL('/', page.url()).href);
  await page.getByRole('heading', { level: 1, name: 'Places' }).waitFor();
  await bookKept(page);
}

export async function serverRecords(page: Page): Promise<BookRecord[]> {
  const answer = (await ask(page, `${RECORDS}?after=0`)) as { records: { record: BookRecord }[] };
  return answer.records.map(({ record }) => record);
}

/** Amounts in minor units of the bank fees that the server has. */
export async function serverFees(page: Page): Promise<number[]> {
  const records = await serverRecords(page);
  return records.flatMap((record) => (record.kind === 'bank-fee' ? [record.cents] : []));
}

/** Records a bank fee by the form, as a person does; resolves when the form says it is saved. */
export async function saveFee(page: Page, amount: string): Promise<void> {
  await page.goto(new URL('/add/bank-fee', page.url()).href);
  await page.getByRole('heading', { level: 1, name: 'Bank fee' }).waitFor();
  await page.getByLabel('Amount').fill(amount);
  await page.getByRole('button', { name: 'Save' }).click();
  await page.getByRole('status').getByText(`Bank fee: $${amount}`).waitFor();
}
