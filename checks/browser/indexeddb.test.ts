import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { copySuite } from '../../src/journal/copy.suite.ts';
import { journalSuite } from '../../src/journal/journal.suite.ts';
import { launchedBrowser } from './harness.ts';
import { devicePage, remoteStore } from './remote-device.ts';

/** The browser's own database as an engine of the storage port. */
let page: Page;
let opened = 0;

beforeAll(async () => {
  page = await (await launchedBrowser()).newPage();
  await devicePage(page);
});
afterAll(() => page.close());

function openStore() {
  opened += 1;
  return Promise.resolve(remoteStore(page, `store-${opened}`));
}

journalSuite('IndexedDB in Chromium', openStore);
copySuite('IndexedDB in Chromium', openStore);
