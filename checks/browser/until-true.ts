import type { Page } from 'playwright-core';

const WITHIN_MS = 30_000;
const EVERY_MS = 50;

/**
 * Waits until what the page is asked comes out true. For what takes the page a while to find out:
 * the driver's own waitForFunction takes a promise for a yes.
 */
export async function untilTrue(
  page: Page,
  ask: (about: string) => Promise<boolean>,
  about = '',
): Promise<void> {
  const end = performance.now() + WITHIN_MS;
  while (!(await page.evaluate(ask, about))) {
    if (performance.now() > end) throw new Error(`not so within ${WITHIN_MS} ms: ${ask}`);
    await page.waitForTimeout(EVERY_MS);
  }
}
