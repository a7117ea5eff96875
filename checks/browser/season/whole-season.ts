import type { BrowserContext, Page } from 'playwright-core';
import { Ledger } from '../../../src/ledger/ledger.ts';
import { closingList } from '../../../src/questions/closing-list.ts';
import type { BookRecord } from '../../../src/records/record.ts';
import { allSent } from '../all-sent.ts';
import { launchedBrowser, listenForComplaints, PHONE, signIn, WIDE } from '../harness.ts';
import { ask, StoppableServer } from '../offline-app.ts';
import { keyboardHand, tapHand } from './hands.ts';
import { balancesByName, movementsByKind } from './names.ts';
import { playSteps } from './play-steps.ts';
import { seasonSteps } from './season-acts.ts';

/** A season done from its first question to its closing, the middle half without a server. */
export type By = 'keyboard' | 'taps';

export interface PlayedSeason {
  /** Balances and movements of the book on the server, by name, and what they should be. */
  readonly have: Told;
  readonly should: Told;
  readonly complaints: readonly string[];
  readonly seconds: number;
  readonly steps: number;
  /** The most records that were only on the device. */
  readonly onlyHere: number;
}

interface Told {
  readonly balances: Readonly<Record<string, number>>;
  readonly movements: Readonly<Record<string, number>>;
  readonly open: readonly string[];
  readonly closed: boolean;
}

export async function playSeason(records: readonly BookRecord[], by: By): Promise<PlayedSeason> {
  const server = new StoppableServer();
  await server.start();
  const context = await (await launchedBrowser()).newContext({
    viewport: by === 'taps' ? PHONE : WIDE,
    hasTouch: by === 'taps',
    isMobile: by === 'taps',
    locale: 'en-US',
    timezoneId: 'UTC',
    reducedMotion: 'reduce',
  });
  try {
    return await played(records, by, server, context);
  } finally {
    await context.close();
    await server.end();
  }
}

async function played(
  records: readonly BookRecord[],
  by: By,
  server: StoppableServer,
  context: BrowserContext,
): Promise<PlayedSeason> {
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  const complaints = listenForComplaints(page);
  await page.clock.setFixedTime(records[0]?.at ?? '');
  await signIn(page, server.newAddress());
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  const hand = by === 'taps' ? tapHand(page) : await keyboardHand(page);
  const quarter = Math.floor(records.length / 4);
  const steps = seasonSteps(records, 3 * quarter);
  const started = performance.now();
  await playSteps(hand, steps.slice(0, quarter));
  await allSent(page);
  await server.stop();
  await playSteps(hand, steps.slice(quarter, 3 * quarter));
  const onlyHere = await waiting(page);
  await server.start();
  // Whoever opens the printed address again is signed in, and all that waited is sent.
  await page.goto(server.newAddress());
  await allSent(page);
  await playSteps(hand, steps.slice(3 * quarter));
  await allSent(page);
  const seconds = (performance.now() - started) / 1000;
  const have = told(await everyRecord(page), records);
  return {
    have,
    should: { ...told(records, records), open: [], closed: true },
    complaints: complaints.filter((words) => !isAboutNoServer(words)),
    seconds,
    steps: steps.reduce((sum, { acts }) => sum + acts.length, 0),
    onlyHere,
  };
}

/** While the server is away, the browser says of each request that nobody answered. */
function isAboutNoServer(words: string): boolean {
  return /ERR_CONNECTION_REFUSED|net::ERR_FAILED|status of 401/.test(words);
}

async function waiting(page: Page): Promise<number> {
  const line = await page.locator('.phone-line .phone-mark').textContent();
  return Number(/^\s*(\d+)/.exec(line ?? '')?.[1] ?? 0);
}

interface Shelf {
  readonly books: readonly { readonly group: string; readonly season: string }[];
}

async function everyRecord(page: Page): Promise<BookRecord[]> {
  const { books } = (await ask(page, '/api/books')) as Shelf;
  const [book] = books;
  const all = (await ask(page, `/api/books/${book?.group}/${book?.season}/records?after=0`)) as {
    readonly records: readonly { readonly record: BookRecord }[];
  };
  return all.records.map(({ record }) => record);
}

function told(records: readonly BookRecord[], season: readonly BookRecord[]): Told {
  const ledger = Ledger.of(records);
  const last = season.at(-1)?.at.slice(0, 10) ?? '';
  const items = closingList(ledger, last).items.filter(({ state }) => state === 'open');
  return {
    balances: balancesByName(ledger),
    movements: movementsByKind(ledger),
    open: items.map(({ item }) => item),
    closed: ledger.setup.season?.closed !== undefined,
  };
}
