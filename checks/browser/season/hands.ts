import type { Locator, Page } from 'playwright-core';
import { type Act, type Cell, link, locate, type Place } from './act.ts';

/** How a person works the app; the steps of a season are the same for both. */
export interface Hand {
  readonly page: Page;
  /** Works a link, a button, a radio button or a tick box. */
  work(at: Locator): Promise<void>;
  write(at: Locator, text: string): Promise<void>;
  date(at: Locator, text: string): Promise<void>;
  choose(at: Locator, option: number): Promise<void>;
  /** Goes on from a list that saves what is chosen. */
  leave(): Promise<void>;
  /** Shows the links to the main pages where they are folded away. */
  showPages(): Promise<void>;
}

/** More stops than any page has: whoever walks further is lost. */
const STOPS_MAX = 600;

/** The keys of a keyboard alone: nothing here clicks, fills or focuses. */
export async function keyboardHand(page: Page): Promise<Hand> {
  const press = (key: string) => page.keyboard.press(key);
  const tab = await tabKey(page);
  const reach = async (at: Locator): Promise<void> => {
    await at.waitFor();
    // Most of the way in one go, the rest stop by stop.
    let stops = await at.evaluate(stopsTo);
    for (let stop = 0; stop < STOPS_MAX && stops !== 0; stop += 1) {
      await tab(stop === 0 ? Math.abs(stops) : 1, stops < 0);
      stops = await at.evaluate(stopsTo);
    }
    if (stops === 0) return;
    throw new Error(`the Tab key never came to ${at}`);
  };
  return {
    page,
    showPages: async () => undefined,
    work: async (at) => {
      await reach(at);
      const type = await at.getAttribute('type');
      await press(type === 'radio' || type === 'checkbox' ? 'Space' : 'Enter');
      // The Tab key comes to one radio button of a group, the arrows to the others.
      for (let step = 0; type === 'radio' && step < 9 && !(await at.isChecked()); step += 1) {
        await press('ArrowDown');
      }
    },
    write: async (at, text) => {
      await reach(at);
      await press('ControlOrMeta+A');
      if (text === '') await press('Delete');
      else await page.keyboard.type(text);
    },
    date: async (at, text) => {
      await reach(at);
      // Out at the front and in again: the focus is then on the first of its parts.
      for (let part = 0; part < 8 && (await at.evaluate(hasFocus)); part += 1) await tab(1, true);
      await tab(1, false);
      for (const keys of typedParts(text)) {
        await page.keyboard.type(keys);
        if (keys.length === 4) await press('ArrowRight');
      }
    },
    choose: async (at, option) => {
      await reach(at);
      const now = await at.evaluate((list: HTMLSelectElement) => list.selectedIndex);
      const key = option > now ? 'ArrowDown' : 'ArrowUp';
      for (let step = 0; step < Math.abs(option - now); step += 1) await press(key);
    },
    leave: () => press('Tab'),
  };
}

/** The Tab key many times over, as quick as the browser takes it. */
async function tabKey(page: Page): Promise<(times: number, back: boolean) => Promise<void>> {
  const session = await page.context().newCDPSession(page);
  const key = { key: 'Tab', code: 'Tab', windowsVirtualKeyCode: 9 };
  return async (times, back) => {
    const modifiers = back ? 8 : 0;
    const strokes = Array.from({ length: times }, () => [
      session.send('Input.dispatchKeyEvent', { type: 'rawKeyDown', modifiers, ...key }),
      session.send('Input.dispatchKeyEvent', { type: 'keyUp', modifiers, ...key }),
    ]);
    await Promise.all(strokes.flat());
  };
}

/**
 * Runs in the page: about how many stops of the Tab key an element is away, below 0 for back, and 0
 * only where the focus is on it (or on another radio button of its group).
 */
function stopsTo(wanted: Element): number {
  const at = document.activeElement;
  const nameOf = (element: Element | null) =>
    element instanceof HTMLInputElement && element.type === 'radio' ? element.name : undefined;
  const name = nameOf(wanted);
  if (at === wanted || (name !== undefined && nameOf(at) === name)) return 0;
  const before = (a: Node, b: Node) =>
    a.compareDocumentPosition(b) & Node.DOCUMENT_POSITION_PRECEDING;
  const isBack = at !== null && at !== document.body && before(at, wanted) !== 0;
  const start = at ?? document.body;
  let stops = 0;
  for (const element of document.querySelectorAll<HTMLElement>(
    'a, button, input, select, textarea, summary',
  )) {
    const isBetween = isBack
      ? before(start, element) && before(element, wanted)
      : before(element, start) && before(wanted, element);
    if (!isBetween || element.tabIndex < 0 || element.matches(':disabled, [type=radio]')) continue;
    if (element.checkVisibility({ visibilityProperty: true })) stops += 1;
  }
  return isBack ? -1 - stops : 1 + stops;
}

const hasFocus = (element: Element): boolean => element === document.activeElement;

/** What is typed into a date's parts, month first as in English (US): `0208`, `2027`. */
function typedParts(text: string): string[] {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)/.exec(text) ?? [];
  const [, hour, minute] = /(\d\d):(\d\d)$/.exec(text) ?? [];
  const parts: string[] = [];
  if (year !== undefined) parts.push(`${month}`, `${day}`, year);
  if (hour !== undefined) {
    const half = Number(hour) < 12 ? 'A' : 'P';
    parts.push(String(((Number(hour) + 11) % 12) + 1).padStart(2, '0'), `${minute}`, half);
  }
  return parts;
}

/** A finger: every control is tapped, and must be where a finger can reach it. */
export function tapHand(page: Page): Hand {
  return {
    page,
    showPages: () => page.getByRole('button', { name: 'Menu', exact: true }).tap(),
    work: (at) => at.tap(),
    write: async (at, text) => {
      await at.tap();
      await at.fill(text);
    },
    // What the phone itself draws for days and lists cannot be tapped from here: it is filled.
    date: async (at, text) => {
      await at.tap();
      await at.fill(text);
    },
    choose: async (at, option) => {
      await at.selectOption({ index: option });
    },
    leave: async () => undefined,
  };
}

/** What was saved last, as the page shows it: the address of the record. */
const SAVED = '.saved-text a';
const savedNow = (page: Page): Promise<string> =>
  page.evaluate((at) => document.querySelector(at)?.getAttribute('href') ?? '', SAVED);

export async function act(hand: Hand, one: Act): Promise<void> {
  const { page } = hand;
  switch (one.does) {
    case 'page': {
      await hand.showPages();
      return hand.work(locate(page, link(one.name, { role: 'navigation', name: 'Pages' })));
    }
    case 'verb':
      return hand.work(locate(page, link(one.name, { role: 'navigation', name: 'Record' })));
    case 'open':
    case 'pick':
      return worked(hand, one);
    case 'write': {
      const at = locate(page, one.at);
      if ((await at.inputValue()) !== one.text) await hand.write(at, one.text);
      return;
    }
    case 'date': {
      const at = locate(page, one.at);
      if ((await at.inputValue()) === one.text) return;
      await hand.date(at, one.text);
      const said = await at.inputValue();
      if (said !== one.text) throw new Error(`${one.text} was written, ${said} stands there`);
      return;
    }
    case 'choose': {
      const choosing = () => chosen(hand, one.at, one.words);
      if (!one.saves) return choosing();
      return untilSaved(page, async () => {
        await choosing();
        await hand.leave();
      });
    }
    case 'see':
      return locate(page, one.at).waitFor();
    case 'save':
      return untilSaved(page, () => hand.work(locate(page, one.at)));
    case 'agree':
      return agreed(hand, one.cells);
  }
}

async function untilSaved(page: Page, work: () => Promise<void>): Promise<void> {
  const before = await savedNow(page);
  await work();
  await page.waitForFunction(
    ([at, old]) => {
      const now = document.querySelector(at)?.getAttribute('href') ?? '';
      return now !== '' && now !== old;
    },
    [SAVED, before] as const,
    { timeout: 10_000 },
  );
}

async function worked(hand: Hand, one: { readonly does: string; readonly at: Place }) {
  const at = locate(hand.page, one.at);
  if (one.does === 'pick' && (await at.isChecked())) return;
  await hand.work(at);
}

async function chosen(hand: Hand, place: Place, words: string): Promise<void> {
  const at = locate(hand.page, place);
  await at.waitFor();
  const all = await at.evaluate((list: HTMLSelectElement) =>
    [...list.options].map((option) => option.text),
  );
  const whole = all.indexOf(words);
  const option = whole >= 0 ? whole : all.findIndex((text) => text.includes(words));
  if (option < 0) throw new Error(`${words} is not among ${all.join(' | ')}`);
  await hand.choose(at, option);
}

/** The rest of a shared table follows what is written into one cell: look again until it agrees. */
async function agreed(hand: Hand, cells: readonly Cell[]): Promise<void> {
  for (let look = 0; look < 6; look += 1) {
    let written = 0;
    for (const cell of cells) {
      const at = locate(hand.page, cell.at);
      if ((await at.inputValue()) === cell.text) continue;
      await hand.write(at, cell.text);
      written += 1;
    }
    if (written === 0) return;
  }
  throw new Error('the table never came to say what it should');
}
