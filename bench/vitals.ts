import { mkdtempSync, rmSync } from 'node:fs';
import { availableParallelism, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { launchedBrowser, PHONE } from '../checks/browser/harness.ts';
import { demoHeader, demoSeason } from '../scenarios/demo/demo-season.ts';
import { makeSeason } from '../simulation/season-maker.ts';
import { writeBook } from '../src/intake/write-book.ts';
import type { BookRecord } from '../src/records/record.ts';
import { startServing } from '../src/start/serve.ts';
import { median } from './median.ts';
import { longestTasks, type Tasks } from './page-tasks.ts';
import { slowDown } from './slow-page.ts';

/**
 * How the app feels on a slow phone and a slow line:
 * `node bench/vitals.ts [demo|large] [RUNS] [SLOWER]`. A processor four times slower and 1.6 Mbit/s
 * with a round trip of 150 ms, by the browser's own brakes. Told are the largest paint of a first
 * visit and of a later start, how far the page jumps, the slowest of real interactions (a form
 * opened, typed into, saved; a list filtered) and the longest tasks while a season is scrolled and
 * filtered. What counts and how it is measured: web.dev/articles/vitals (LCP, INP, CLS), W3C Long
 * Tasks.
 */
const GOALS = { lcpMs: 2000, inpMs: 100, cls: 0.02, taskMs: 50 };
const DRAWN_MS = 6000;
/** Around a tap the driver asks the page nothing: its questions would count as the app's work. */
const QUIET_MS = 500;
const LARGE = { families: 45, products: 12, days: 63, changesPercent: 5 };
const SIZE = 5000;

const SCROLLED = [
  ['the stockroom', '/places/stockroom', 'Stockroom'],
  ['all records', '/find', 'Find'],
  ['families', '/families', 'Families'],
] as const;
const [only, runs = '3', slower = '4'] = process.argv.slice(2);
const seasons: readonly (readonly [string, () => BookRecord[]])[] = [
  ['demo', demoSeason],
  ['large', () => makeSeason(1, { ...LARGE, actsADay: (SIZE / LARGE.days) * 1.2 }).slice(0, SIZE)],
];
say(`${availableParallelism()} cores, ${slower} times slower`);
say(`load ${loadavg()[0]?.toFixed(1)} before`);
for (const [name, records] of seasons) {
  if (only === undefined || only === name) await measure(name, records());
}
say(`load ${loadavg()[0]?.toFixed(1)} after`);
process.exit();

interface Vitals {
  readonly firstMs: number;
  readonly laterMs: number;
  readonly inpMs: number;
  readonly cls: number;
  readonly jumps: readonly string[];
  readonly slowest: readonly string[];
  readonly tasks: readonly (readonly [what: string, tasks: Tasks])[];
}

async function measure(name: string, records: readonly BookRecord[]): Promise<void> {
  const all: Vitals[] = [];
  for (let run = 0; run < Number(runs); run += 1) all.push(await oneRun(records));
  const middle = (of: (vitals: Vitals) => number) => median(all.map(of));
  say(`${name}: ${records.length} records, the median of ${all.length} runs`);
  told(
    'LCP, first visit',
    middle((each) => each.firstMs),
    GOALS.lcpMs,
    'ms',
  );
  told(
    'LCP, later start',
    middle((each) => each.laterMs),
    GOALS.lcpMs,
    'ms',
  );
  told(
    'INP',
    middle((each) => each.inpMs),
    GOALS.inpMs,
    'ms',
  );
  for (const slow of all[0]?.slowest ?? []) say(`    ${slow}`);
  told(
    'CLS',
    middle((each) => each.cls),
    GOALS.cls,
    '',
  );
  for (const jump of all[0]?.jumps ?? []) say(`    ${jump}`);
  for (const [place, [what]] of (all[0]?.tasks ?? []).entries()) {
    const own = all.map((each) => each.tasks[place]?.[1]);
    told(`longest task, ${what}`, median(own.map((task) => task?.wallMs ?? 0)), GOALS.taskMs, 'ms');
    told('  of it at work', median(own.map((task) => task?.workMs ?? 0)), GOALS.taskMs, 'ms');
  }
}

async function oneRun(records: readonly BookRecord[]): Promise<Vitals> {
  const data = mkdtempSync(join(tmpdir(), 'cratebook-vitals-'));
  const started = await startServing({ data, port: 0 });
  if (!started.ok) throw new Error(started.refusal.message);
  const { listening, newAddress, stop } = started.value;
  const origin = `http://127.0.0.1:${listening.port}`;
  const browser = await launchedBrowser();
  const context = await browser.newContext({
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
    locale: 'en-US',
  });
  try {
    const key = new URLSearchParams(new URL(newAddress()).hash.slice(1)).get('key');
    const headers = { origin, 'sec-fetch-site': 'same-origin' };
    await context.request.post(`${origin}/api/session`, { data: { key }, headers });
    await context.request.post(`${origin}/api/books`, {
      data: { group: demoHeader.group, season: demoHeader.season, start: 'empty' },
      headers,
    });
    const filled = await context.request.post(
      `${origin}/api/books/${demoHeader.group}/${demoHeader.season}/file`,
      {
        data: [...writeBook(demoHeader, records)].join(''),
        headers: { ...headers, 'content-type': 'application/jsonl' },
      },
    );
    if (!filled.ok()) throw new Error(await filled.text());
    return await visits(async () => {
      const page = await context.newPage();
      await watch(page);
      await slowDown(page, Number(slower));
      return page;
    }, origin);
  } finally {
    await context.close();
    await stop();
    rmSync(data, { recursive: true, force: true });
  }
}

async function visits(newPage: () => Promise<Page>, origin: string): Promise<Vitals> {
  const first = await newPage();
  await first.goto(origin);
  const firstMs = await lcp(first);
  await board(first);
  await first.evaluate(async () => void (await navigator.serviceWorker.ready));
  await first.waitForTimeout(1000);
  await first.close();
  const page = await newPage();
  await page.goto(origin);
  const laterMs = await lcp(page);
  await board(page);
  // Without the trace that the tasks are read from: it slows every tap down by a quarter.
  await interact(page);
  await pageOf(page, '/find', 'Find');
  await filter(page);
  const { inpMs, cls, jumps, slowest } = await page.evaluate(() => globalThis.watched());
  await pageOf(page, '/', 'Places');
  const tasks: (readonly [string, Tasks])[] = [];
  const longest = async (what: string, work: () => Promise<void>) => {
    tasks.push([what, await longestTasks(page, work)]);
  };
  await longest('a payment opened, typed and saved', () => interact(page));
  await pageOf(page, '/find', 'Find');
  await longest('filtering all records', () => filter(page));
  for (const [words, path, title] of SCROLLED) {
    await pageOf(page, path, title);
    await longest(`scrolling ${words}`, () => scroll(page));
  }
  return { firstMs, laterMs, inpMs, cls, jumps, slowest, tasks };
}

async function board(page: Page): Promise<void> {
  await page.locator('main h1:text-is("Places")').waitFor();
}

/** A tap as a finger gives it, at a moment when nothing else goes on. */
async function tapOn(target: Locator): Promise<void> {
  await target.scrollIntoViewIfNeeded();
  const box = await target.boundingBox();
  if (box === null) throw new Error('what is to be tapped is on the page');
  const page = target.page();
  await page.waitForTimeout(QUIET_MS);
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await page.waitForTimeout(QUIET_MS);
}

/** Goes to a page within the app by a tap on a link, which is laid over the page for it. */
async function pageOf(page: Page, path: string, title: string): Promise<void> {
  await page.evaluate((to) => {
    const link = document.createElement('a');
    link.href = to;
    link.id = 'way';
    link.textContent = to;
    Object.assign(link.style, { position: 'fixed', top: '0', zIndex: '9' });
    document.body.append(link);
  }, path);
  await tapOn(page.locator('#way'));
  await page.evaluate(() => document.querySelector('#way')?.remove());
  await page.locator(`main h1:text-is("${title}")`).waitFor();
  await page.waitForTimeout(500);
}

/** A form is opened by its verb, typed into and saved, twice; the menu is opened in between. */
async function interact(page: Page): Promise<void> {
  const verbs = page.getByRole('navigation', { name: 'Record' });
  for (const amount of ['12', '7']) {
    await tapOn(verbs.getByRole('link', { name: 'Payment' }));
    await page.locator('main h1:text-is("Payment")').waitFor();
    await page.locator('#field-seller').press('ArrowDown');
    await tapOn(page.locator('#field-cents'));
    await page.locator('#field-cents').press('ControlOrMeta+A');
    await page.keyboard.type(amount, { delay: 60 });
    await tapOn(page.getByRole('button', { name: 'Save', exact: true }));
    await page.locator('.saved-text').waitFor();
    await page.waitForTimeout(800);
    await tapOn(page.getByRole('button', { name: 'Menu' }));
    await tapOn(page.getByRole('link', { name: 'Places', exact: true }).first());
    await board(page);
  }
}

async function filter(page: Page): Promise<void> {
  await tapOn(page.getByLabel('Words or amount'));
  await page.keyboard.type('cheque', { delay: 120 });
  await page.waitForTimeout(300);
  for (let letter = 0; letter < 6; letter += 1)
    await page.keyboard.press('Backspace', { delay: 80 });
  await page.locator('#field-kind').selectOption({ index: 2 });
  await page.waitForTimeout(500);
  await page.locator('#field-kind').selectOption({ index: 0 });
  await page.waitForTimeout(500);
}

async function scroll(page: Page): Promise<void> {
  for (let step = 0; step < 25; step += 1) {
    const more = page.getByRole('button', { name: /^Show more|^Earlier/ });
    if (step % 8 === 7 && (await more.isVisible())) await tapOn(more);
    await page.mouse.wheel(0, 900);
    await page.waitForTimeout(60);
  }
}

/** Collects in the page what its observers tell. */
async function watch(page: Page): Promise<void> {
  await page.addInitScript(() => {
    let largest = 0;
    let jumped = 0;
    const jumps: string[] = [];
    const slowest = new Map<number, { readonly ms: number; readonly told: string }>();
    const observe = (type: string, each: (entry: PerformanceEntry) => void) =>
      new PerformanceObserver((list) => list.getEntries().forEach(each)).observe({
        type,
        buffered: true,
        ...(type === 'event' ? { durationThreshold: 16 } : {}),
      });
    observe('largest-contentful-paint', (entry) => (largest = entry.startTime));
    observe('layout-shift', (entry) => {
      const { value, hadRecentInput } = { value: 0, hadRecentInput: false, ...entry.toJSON() };
      if (hadRecentInput) return;
      jumped += value;
      const sources: readonly { readonly node?: Node }[] = Reflect.get(entry, 'sources') ?? [];
      for (const { node } of sources) {
        const element = node instanceof Element ? node : node?.parentElement;
        jumps.push(`${value.toFixed(3)} ${location.pathname} ${element?.outerHTML.slice(0, 70)}`);
      }
    });
    observe('event', (entry) => {
      const interactionId: number = Reflect.get(entry, 'interactionId') ?? 0;
      if (interactionId === 0) return;
      if (entry.duration <= (slowest.get(interactionId)?.ms ?? 0)) return;
      const begun: number = Reflect.get(entry, 'processingStart');
      const worked: number = Reflect.get(entry, 'processingEnd');
      const target: unknown = Reflect.get(entry, 'target');
      const parts = [
        begun - entry.startTime,
        worked - begun,
        entry.startTime + entry.duration - worked,
      ].map((ms) => ms.toFixed(0));
      const on = target instanceof Element ? target.outerHTML.slice(0, 60) : '';
      const told = `${entry.duration} ms (${parts.join(' + ')}) ${entry.name} ${on}`;
      slowest.set(interactionId, { ms: entry.duration, told });
    });
    globalThis.watched = () => ({
      lcpMs: largest,
      cls: jumped,
      jumps,
      inpMs: Math.max(0, ...[...slowest.values()].map(({ ms }) => ms)),
      slowest: [...slowest.values()]
        .sort((a, b) => b.ms - a.ms)
        .slice(0, 8)
        .map(({ told }) => told),
    });
  });
}

/** Asked once all is drawn: to look again and again for it would hold up what is measured. */
async function lcp(page: Page): Promise<number> {
  await page.waitForTimeout(DRAWN_MS);
  return page.evaluate(() => globalThis.watched().lcpMs);
}

function told(what: string, is: number, goal: number, unit: string): void {
  const figure = unit === '' ? is.toFixed(3) : `${is.toFixed(0)} ${unit}`;
  say(`  ${what}: ${figure} (goal ${goal}${unit && ` ${unit}`}: ${is <= goal ? 'met' : 'missed'})`);
}

function say(line: string): void {
  process.stdout.write(`${line}\n`);
}

declare global {
  var watched: () => {
    readonly lcpMs: number;
    readonly cls: number;
    readonly jumps: readonly string[];
    readonly inpMs: number;
    /** The slowest interactions: whole (until begun + at work + until painted), event, target. */
    readonly slowest: readonly string[];
  };
}
