import type { Locator, Page } from 'playwright-core';

/** A hand that works the app and writes down what it did, as operators of the model. */
export class Hand {
  readonly #page: Page;
  operators = '';

  constructor(page: Page) {
    this.#page = page;
  }

  /** Makes up the mind about what comes next. */
  decide(): this {
    this.operators += 'M';
    return this;
  }

  async tap(target: Locator): Promise<void> {
    await target.click();
    this.operators += 'P';
  }

  /** One key after the other, as they are typed. */
  async type(text: string): Promise<void> {
    for (const letter of text) await this.key(letter === ' ' ? 'Space' : letter);
  }

  async key(name: string): Promise<void> {
    await this.#page.keyboard.press(name);
    this.operators += 'K';
  }
}
