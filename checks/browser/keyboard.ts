import type { Page } from 'playwright-core';

/** Working the app with the keys of a keyboard alone: nothing here clicks, fills or focuses. */

type Role = Parameters<Page['getByRole']>[0];

/** More stops than any page has: whoever walks further is lost. */
const STOPS_MAX = 400;

/** Goes on with Tab until the focus is on what has this role and name. */
export async function tabTo(page: Page, role: Role, name: string | RegExp): Promise<void> {
  const target = page.getByRole(role, typeof name === 'string' ? { name, exact: true } : { name });
  await target.first().waitFor();
  for (let stop = 0; stop < STOPS_MAX; stop += 1) {
    await page.keyboard.press('Tab');
    // Looked for anew at each stop: the page that follows a save brings elements of its own.
    if (await target.evaluateAll(([first]) => first === document.activeElement)) return;
  }
  throw new Error(`The Tab key never came to the ${role} ${name}`);
}

/** Opens a link or works a button that the Tab key came to. */
export async function keyOn(page: Page, role: Role, name: string | RegExp): Promise<void> {
  await tabTo(page, role, name);
  await page.keyboard.press('Enter');
}

/** Writes into a field that the Tab key came to, over what stood there. */
export async function write(page: Page, name: string | RegExp, text: string): Promise<void> {
  await tabTo(page, 'textbox', name);
  await page.keyboard.press('ControlOrMeta+A');
  await page.keyboard.type(text);
}

/** Chooses from a list by typing how the choice begins. */
export async function choose(page: Page, name: string, begins: string): Promise<void> {
  await tabTo(page, 'combobox', name);
  await page.keyboard.type(begins);
}
