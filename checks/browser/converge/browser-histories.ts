import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { BrowserContext } from 'playwright-core';
import { build } from 'vite';
import { SELLERS } from '../../../simulation/convergence/drafts.ts';
import { CLOCKS_MS, type History, type Step } from '../../../simulation/convergence/history.ts';
import { type Verdict, verdictOn } from '../../../simulation/convergence/verdict.ts';
import type { Arrived } from '../../../src/journal/journal.ts';
import { testBook } from '../../../src/ledger/test-book.ts';
import { type Serving, startServing } from '../../../src/start/serve.ts';
import { launchedBrowser, signIn } from '../harness.ts';
import { BrowserPhone } from './browser-phone.ts';

/**
 * Plays histories of two and three phones on what a volunteer has: the real server over its store
 * and over HTTP, and three contexts of a real browser, each with its own database.
 */
export class BrowserHistories {
  readonly #phones: BrowserPhone[] = [];
  readonly #contexts: BrowserContext[] = [];
  readonly #data = mkdtempSync(join(tmpdir(), 'cratebook-data-'));
  #serving: Serving | undefined;
  #played = 0;

  async start(): Promise<void> {
    const started = await startServing({ data: this.#data, port: 0 });
    if (!started.ok) throw new Error(started.refusal.message);
    this.#serving = started.value;
    const code = await bundled();
    const browser = await launchedBrowser();
    for (const number of [0, 1, 2]) {
      const context = await browser.newContext({ serviceWorkers: 'block' });
      this.#contexts.push(context);
      const page = await context.newPage();
      await signIn(page, this.#serving.newAddress());
      await page.close();
      this.#phones.push(await BrowserPhone.in(context, this.#origin, number, code));
    }
  }

  async end(): Promise<void> {
    for (const context of this.#contexts) await context.close();
    await this.#serving?.stop();
    rmSync(this.#data, { recursive: true, force: true });
  }

  get #origin(): string {
    return `http://127.0.0.1:${this.#serving?.listening.port}`;
  }

  /** What is wrong in the end, one line each. */
  async play(history: History, fault = ''): Promise<Verdict> {
    this.#played += 1;
    const address = { group: 'wrenfield', season: `history-${this.#played}` };
    await this.#ask('/api/books', { ...address, start: 'empty' });
    const { setup } = testBook({ honey: 800, jam: 650 }, SELLERS);
    const records = `/api/books/${address.group}/${address.season}/records`;
    await this.#ask(records, { records: setup });
    const phones = this.#phones.slice(0, history.phones);
    for (const phone of phones) await phone.begin(address, fault);
    for (const [at, step] of history.steps.entries()) {
      const phone = phones[step.phone % phones.length];
      if (phone !== undefined) await take(phone, step, at);
    }
    for (const round of [1, 2]) {
      for (const phone of phones) {
        phone.fate = 'answered';
        if (round === 1) await phone.deliverLate();
        if (round === 1) await phone.open();
        else await phone.exchange(WHOLE);
      }
    }
    const there = (await this.#ask(`${records}?after=0`)) as { readonly records: Arrived[] };
    const seen = await Promise.all(phones.map((phone) => phone.seen()));
    return verdictOn({ journal: { readSince: async () => there.records } }, seen);
  }

  async #ask(path: string, data?: object): Promise<unknown> {
    const [context] = this.#contexts;
    if (context === undefined) throw new Error('the histories were started');
    const headers = { origin: this.#origin, 'sec-fetch-site': 'same-origin' };
    const method = data === undefined ? 'GET' : 'POST';
    const options = { method, headers, ...(data && { data }) };
    const answer = await context.request.fetch(this.#origin + path, options);
    if (!answer.ok()) throw new Error(`${path}: ${answer.status()} ${await answer.text()}`);
    return answer.json();
  }
}

const WHOLE: Step = { phone: 0, does: 'exchange', fate: 'answered', pick: 0, killAt: 0 };

async function take(phone: BrowserPhone, step: Step, at: number): Promise<void> {
  phone.fate = step.fate;
  switch (step.does) {
    case 'exchange':
      return phone.exchange(step);
    case 'reopen':
      return phone.open();
    case 'wipe':
      phone.fate = 'answered';
      return phone.wipe();
    case 'late mail':
      return phone.deliverLate();
    case 'clock':
      return phone.setClock(CLOCKS_MS[step.pick % CLOCKS_MS.length] ?? 0);
    default:
      return phone.write(step, at);
  }
}

/** The page's script, by the app's own builder. */
async function bundled(): Promise<string> {
  const entry = fileURLToPath(new URL('../pages/phone-in-page.ts', import.meta.url));
  const built = await build({
    configFile: false,
    logLevel: 'warn',
    build: {
      write: false,
      target: 'es2022',
      lib: { entry, formats: ['es'] },
      rolldownOptions: { output: { codeSplitting: false } },
    },
  });
  const [first] = Array.isArray(built) ? built : [built];
  const chunk = first !== undefined && 'output' in first ? first.output[0] : undefined;
  if (chunk?.type !== 'chunk') throw new Error('nothing was bundled');
  // Inside of a page, the end of a script must not stand in its text.
  return chunk.code.replaceAll('</script', '<\\/script');
}
