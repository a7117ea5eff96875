import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import axeCore from 'axe-core';
import {
  type Browser,
  type BrowserContext,
  chromium,
  type Page,
  type Request,
} from 'playwright-core';
import { type Serving, startServing } from '../../src/start/serve.ts';

/**
 * Starts what a volunteer has: the real server with its store in a data folder of its own, and a
 * browser that opens the printed address. Each test takes what it needs and calls `close`.
 *
 *     const app = await openApp({ book: 'demo' });
 *     await app.page.getByRole('link', { name: 'Families' }).click();
 *     expect(await axeFindings(app.page)).toEqual([]);
 *     await app.close();
 */

/** The made-up book that tests keep; `none` leaves the choice of a first book to the test. */
export const BOOK = { group: 'wrenfield', season: 'spring-2027' } as const;

export interface OpenOptions {
  readonly book?: 'demo' | 'empty' | 'none';
  readonly viewport?: { readonly width: number; readonly height: number };
  readonly colorScheme?: 'light' | 'dark';
  readonly locale?: string;
  /** The address within the app, after the key was changed for a session. */
  readonly path?: string;
  /**
   * The browser keeps the app's files, as it does for a person. Without it they come from the
   * server each time, so that a test sees every request.
   */
  readonly keepsApp?: boolean;
}

export interface OpenedApp {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Like `http://127.0.0.1:4870`, without a slash at the end. */
  readonly origin: string;
  readonly serving: Serving;
  /** Page errors, console errors and broken policies so far: a good test ends with none. */
  readonly complaints: string[];
  /** Asks the server as the app does, for setting a scene: `api('POST', '/api/books', {…})`. */
  api(method: 'GET' | 'POST', path: string, body?: unknown): Promise<unknown>;
  goto(path: string): Promise<void>;
  close(): Promise<void>;
}

const CHROMIUM_PATHS = [
  process.env.CHROMIUM ?? '',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
/** WCAG 2.2, 1.4.10: no sideways scroll at 320 CSS pixels. */
export const NARROW = { width: 320, height: 800 } as const;
export const PHONE = { width: 390, height: 844 } as const;
export const WIDE = { width: 1280, height: 900 } as const;

let browser: Promise<Browser> | undefined;

export function chromiumPath(): string {
  const found = CHROMIUM_PATHS.find((path) => path !== '' && existsSync(path));
  if (found !== undefined) return found;
  throw new Error('No Chromium here. Debian: apt-get install chromium, or set CHROMIUM.');
}

/** One browser a test file; vitest ends it with the file's process. */
export function launchedBrowser(): Promise<Browser> {
  browser ??= chromium.launch({ executablePath: chromiumPath(), args: CHROMIUM_FLAGS });
  return browser;
}

export async function openApp(options: OpenOptions = {}): Promise<OpenedApp> {
  const data = mkdtempSync(join(tmpdir(), 'cratebook-data-'));
  const started = await startServing({ data, port: 0 });
  if (!started.ok) throw new Error(started.refusal.message);
  const serving = started.value;
  const origin = `http://127.0.0.1:${serving.listening.port}`;
  const context = await (await launchedBrowser()).newContext({
    viewport: options.viewport ?? PHONE,
    colorScheme: options.colorScheme ?? 'light',
    locale: options.locale ?? 'en-US',
    reducedMotion: 'reduce',
    serviceWorkers: options.keepsApp ? 'allow' : 'block',
  });
  const page = await context.newPage();
  const complaints = listenForComplaints(page);
  const quiet = quietnessOf(page);
  const api: OpenedApp['api'] = (method, path, body) => askAsApp(page, method, path, body);
  const goto = async (path: string): Promise<void> => {
    await page.goto(origin + path);
    await quiet();
  };
  const close = async (): Promise<void> => {
    await context.close();
    await serving.stop();
    rmSync(data, { recursive: true, force: true });
  };
  try {
    await signIn(page, serving.newAddress());
    const start = options.book ?? 'demo';
    if (start !== 'none') await api('POST', '/api/books', { ...BOOK, start });
    await goto(options.path ?? '/');
  } catch (error) {
    await close();
    throw error;
  }
  return { page, context, origin, serving, complaints, api, goto, close };
}

/** Opens the printed address as a person does, and waits until its key became a session. */
export async function signIn(page: Page, address: string): Promise<void> {
  const signedIn = page.waitForResponse(
    (answer) => answer.url().endsWith('/api/session') && answer.ok(),
    { timeout: 15_000 },
  );
  await page.goto(address);
  await signedIn;
}

/** Requests are over when none began for so long; a page asks several times, one after another. */
const QUIET_MS = 120;
const QUIET_WITHIN_MS = 60_000;

/**
 * Gives what waits until a page has a heading, asks the server for nothing and does nothing: sooner
 * than the driver's own "networkidle", which waits half a second more at every page.
 */
function quietnessOf(page: Page): () => Promise<void> {
  const asked = new Set<Request>();
  let last = 0;
  const note = (request: Request, isNew: boolean): void => {
    last = performance.now();
    if (isNew) asked.add(request);
    else asked.delete(request);
  };
  page.on('request', (request) => note(request, true));
  page.on('requestfinished', (request) => note(request, false));
  page.on('requestfailed', (request) => note(request, false));
  return async () => {
    const end = performance.now() + QUIET_WITHIN_MS;
    // While the book opens the heading is the app's own name.
    await page
      .locator('h1')
      .filter({ hasNotText: /^Cratebook$/ })
      .first()
      .waitFor();
    while (asked.size > 0 || performance.now() - last < QUIET_MS) {
      if (performance.now() > end) throw new Error('the page does not come to rest');
      await page.waitForTimeout(QUIET_MS / 4);
      await page.evaluate(() => new Promise((resolve) => requestIdleCallback(resolve)));
    }
  };
}

async function askAsApp(page: Page, method: string, path: string, body: unknown): Promise<unknown> {
  const answer = await page.evaluate(
    async (asked) => {
      const sent = await fetch(asked.path, {
        method: asked.method,
        ...(asked.body === undefined
          ? {}
          : {
              body: JSON.stringify(asked.body),
              headers: { 'Content-Type': 'application/json' },
            }),
      });
      return { status: sent.status, text: await sent.text() };
    },
    { method, path, body },
  );
  if (answer.status >= 300) throw new Error(`${method} ${path}: ${answer.status} ${answer.text}`);
  return JSON.parse(answer.text);
}

export function listenForComplaints(page: Page): string[] {
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(`page error: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(`console: ${message.text()}`);
  });
  page.on('requestfailed', (request) => {
    const why = request.failure()?.errorText ?? '';
    // A download or a page that is left behind ends its own requests.
    if (!why.includes('ERR_ABORTED')) complaints.push(`request failed: ${request.url()} ${why}`);
  });
  return complaints;
}

/**
 * What axe finds (WCAG 2.0 to 2.2, A and AA, and best practice), one line a finding.
 *
 * @param rules only these, where the others have looked at the same page already
 */
export async function axeFindings(page: Page, rules?: string[]): Promise<string[]> {
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const runOnly: axeCore.RunOptions['runOnly'] =
    rules === undefined ? { type: 'tag', values: tags } : { type: 'rule', values: rules };
  // Into each page once: with axe's own driver it went in at every look, for most of the time.
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeCore.source);
  return page.evaluate(
    async (options) => {
      const { violations } = await globalThis.axe.run(document, options);
      return violations.flatMap(({ id, help, nodes }) =>
        nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')}`),
      );
    },
    { resultTypes: ['violations' as const], runOnly },
  );
}

declare global {
  /** In a page, once axeFindings has looked at it. */
  var axe: typeof import('axe-core');
}

/**
 * CSS pixels by which the page scrolls sideways at 320 px, 0 where it does not, with the elements
 * that stick out. Tables may scroll inside a box of their own.
 */
export async function reflowAt320(page: Page): Promise<{ overflow: number; widest: string[] }> {
  const before = page.viewportSize();
  await page.setViewportSize(NARROW);
  const found = await page.evaluate(() => {
    const root = document.documentElement;
    const sticksOut = (element: Element): boolean =>
      element.getBoundingClientRect().right > root.clientWidth + 0.5 &&
      element.closest('[data-scrolls], .scrolls') === null;
    const widest = [...document.body.querySelectorAll('*')].filter(sticksOut).slice(0, 5);
    return {
      overflow: Math.max(0, root.scrollWidth - root.clientWidth),
      widest: widest.map((element) => element.outerHTML.slice(0, 120)),
    };
  });
  if (before !== null) await page.setViewportSize(before);
  return { overflow: found.overflow, widest: found.overflow === 0 ? [] : found.widest };
}

/** The text spacing of WCAG 2.2, 1.4.12: nothing may be cut off or overlap under it. */
export async function applyTextSpacing(page: Page): Promise<void> {
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(
      '* { line-height: 1.5 !important; letter-spacing: 0.12em !important; ' +
        'word-spacing: 0.16em !important; } p { margin-bottom: 2em !important; }',
    );
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  });
}

/** Taps on what has a role and a name, as a person finds it. */
export async function press(page: Page, name: string | RegExp): Promise<void> {
  const button = page.getByRole('button', { name });
  await button.or(page.getByRole('link', { name })).first().click();
}
