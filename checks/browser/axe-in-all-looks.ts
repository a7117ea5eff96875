import type { Page } from 'playwright-core';
import { axeFindings, NARROW, PHONE, WIDE } from './harness.ts';

/**
 * What axe finds on a page in both colour schemes at three widths. The scheme changes colours
 * alone, so that in the dark one only contrast is asked for. Leaves the page light, at a phone's
 * width.
 */
export async function axeInAllLooks(page: Page): Promise<string[]> {
  const found: string[] = [];
  for (const size of [WIDE, NARROW, PHONE]) {
    await page.setViewportSize(size);
    for (const colorScheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme });
      const rules = colorScheme === 'dark' ? ['color-contrast'] : undefined;
      const said = await axeFindings(page, rules);
      found.push(...said.map((finding) => `${colorScheme}, ${size.width} px: ${finding}`));
    }
  }
  return found;
}
