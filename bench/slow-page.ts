import type { Page } from 'playwright-core';

/** A slow line: 1.6 Mbit/s down, 0.75 up, 150 ms there and back (the "slow 4G" of field tools). */
const LINE = {
  offline: false,
  latency: 150,
  downloadThroughput: 1_600_000 / 8,
  uploadThroughput: 750_000 / 8,
};

/** Brakes a page by the browser's own means: its processor by a factor, its line to `LINE`. */
export async function slowDown(page: Page, slower: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', LINE);
  await session.send('Emulation.setCPUThrottlingRate', { rate: slower });
}
