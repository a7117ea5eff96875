import type { BrowserContext, Page, Route } from 'playwright-core';
import type { Step } from '../../../simulation/convergence/history.ts';
import type { Fate } from '../../../simulation/convergence/link.ts';
import type { PhoneSeen } from '../../../simulation/convergence/verdict.ts';
import type { BookAddress } from '../../../src/web/connection.ts';
import type { OpenPhone } from '../pages/phone-in-page.ts';

/** A phone of a history: a page of a browser's context, with a line to the server that fails. */
export class BrowserPhone {
  readonly told = new Set<string>();
  fate: Fate = 'answered';
  skewMs = 0;
  readonly #page: Page;
  readonly #blank: string;
  readonly #number: number;
  readonly #late: { readonly url: string; readonly body: string }[] = [];
  #asked: OpenPhone | undefined;
  #wiped = 0;

  private constructor(page: Page, blank: string, number: number) {
    this.#page = page;
    this.#blank = blank;
    this.#number = number;
  }

  /** @param code the page's script, bundled */
  static async in(
    context: BrowserContext,
    origin: string,
    number: number,
    code: string,
  ): Promise<BrowserPhone> {
    const blank = `${origin}/blank-page`;
    const page = await context.newPage();
    const phone = new BrowserPhone(page, blank, number);
    const html = `<!doctype html><title>Phone</title><script type="module">${code}</script>`;
    await page.route(blank, (route) => route.fulfill({ contentType: 'text/html', body: html }));
    await page.route('**/api/books/*/*/records*', (route) => phone.#onLine(route));
    return phone;
  }

  /** A phone of a new history: nothing of an earlier one is on it. */
  async begin(address: BookAddress, fault: string): Promise<void> {
    this.told.clear();
    this.#late.length = 0;
    this.#wiped = 0;
    this.skewMs = 0;
    this.fate = 'answered';
    const store = `${address.season}-${this.#number}`;
    this.#asked = { address, store, series: '', skewMs: 0, fault };
    await this.open();
  }

  /** The page is left, whatever it was doing, and the app opened over what the browser keeps. */
  async open(): Promise<void> {
    await this.#page.goto(this.#blank);
    await this.#page.waitForFunction(() => Reflect.has(globalThis, 'phone'));
    await this.#page.evaluate((asked) => globalThis.phone.open(asked), this.#now());
  }

  async write(step: Step, at: number): Promise<void> {
    const ids = await this.#page.evaluate(([step, at]) => globalThis.phone.write(step, at), [
      step,
      at,
    ] as const);
    if (ids === undefined) await this.#killed();
    for (const id of ids ?? []) this.told.add(id);
  }

  async exchange(step: Step): Promise<void> {
    const whole = await this.#page.evaluate((step) => globalThis.phone.exchange(step), step);
    if (whole === undefined) await this.#killed();
  }

  async #killed(): Promise<void> {
    this.fate = 'answered';
    await this.open();
  }

  async wipe(): Promise<void> {
    const wiped = await this.#page.evaluate((asked) => globalThis.phone.wipe(asked), this.#now());
    if (!wiped) return;
    this.#wiped += 1;
    this.told.clear();
    await this.open();
  }

  async setClock(skewMs: number): Promise<void> {
    this.skewMs = skewMs;
    await this.#page.evaluate((ms) => globalThis.phone.skew(ms), skewMs);
  }

  async seen(): Promise<PhoneSeen> {
    const shown = await this.#page.evaluate(() => globalThis.phone.seen());
    return { told: this.told, ...shown };
  }

  /** Requests that were held up arrive now, the last one first. */
  async deliverLate(): Promise<void> {
    this.fate = 'answered';
    for (const { url, body } of this.#late.splice(0).reverse()) await this.#send(url, body);
  }

  #now(): OpenPhone {
    if (this.#asked === undefined) throw new Error('a history was begun');
    const series = `${this.#wiped}${['A3B-', 'C4D-', 'E6F-'][this.#number] ?? ''}`;
    return { ...this.#asked, series, skewMs: this.skewMs };
  }

  async #onLine(route: Route): Promise<void> {
    const request = route.request();
    const isSending = request.method() === 'POST';
    if (this.fate === 'lost') return route.abort();
    if (!isSending || this.fate === 'answered') return route.continue();
    const [url, body] = [request.url(), request.postData() ?? ''];
    if (this.fate === 'late') {
      this.#late.push({ url, body });
      return route.abort();
    }
    const first = await route.fetch();
    if (this.fate === 'answer lost') return route.abort();
    const second = await route.fetch();
    return route.fulfill({ response: second.ok() ? second : first });
  }

  /** As the browser would have sent it, later. */
  async #send(url: string, body: string): Promise<void> {
    await this.#page.evaluate(
      async ([url, body]) => {
        const headers = { 'content-type': 'application/json' };
        await fetch(url, { method: 'POST', body, headers });
      },
      [url, body] as const,
    );
  }
}
