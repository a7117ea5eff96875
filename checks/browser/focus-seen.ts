import type { Page } from 'playwright-core';

const STOPS_MAX = 90;

/**
 * Goes through the page by Tab and gives what has the focus while something else lies over it
 * (WCAG 2.2, 2.4.11): the middle of what is focused, or of the part of it that is in the window.
 */
export async function hiddenByFixedBars(page: Page): Promise<string[]> {
  await page.evaluate(() => {
    scrollTo(0, 0);
    document.body.focus();
  });
  const hidden: string[] = [];
  for (let stop = 0; stop < STOPS_MAX; stop += 1) {
    await page.keyboard.press('Tab');
    const found = await page.evaluate(coveredFocus);
    if (found === 'round') break;
    if (found !== 'seen') hidden.push(found);
  }
  return hidden;
}

function coveredFocus(): string {
  const focused = document.activeElement;
  if (focused === null || focused === document.body) return 'round';
  // A chip's own field lies under its words; a link over lines has a box for each of them.
  const box = focused.getClientRects()[0] ?? focused.getBoundingClientRect();
  const middle = (from: number, to: number, most: number) =>
    (Math.max(0, from) + Math.min(most, to)) / 2;
  const x = middle(box.left, box.right, innerWidth);
  const y = middle(box.top, box.bottom, innerHeight);
  const over = document.elementFromPoint(x, y);
  const same = over !== null && (focused.contains(over) || over.contains(focused));
  const sibling = over?.closest('label') === focused.closest('label') && over?.closest('label');
  if (same || sibling) return 'seen';
  return `${focused.outerHTML.slice(0, 80)} under ${over?.outerHTML.slice(0, 60)}`;
}
