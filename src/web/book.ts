import { computed, signal } from '@preact/signals';
import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import { assert } from '../base/assert.ts';
import { canonicalText } from '../base/canonical-text.ts';
import { done, type Outcome, refused } from '../base/outcome.ts';
import type { ErrorAnswer, RecordsAnswer } from '../contract/api.ts';
import { PAGE_MAX_RECORDS } from '../contract/limits.ts';
import type { BookCopy, CopyState, CopyStore } from '../journal/book-copy.ts';
import type { Arrived } from '../journal/journal.ts';
import { Ledger } from '../ledger/ledger.ts';
import {
  balancesAfter,
  type ChangedBalance,
  changedBalances,
} from '../questions/changed-balances.ts';
import { nextReceipt } from '../questions/next-receipt.ts';
import { workingDay } from '../questions/working-day.ts';
import { type BookRecord, isMovement } from '../records/record.ts';
import { isAboutRecords } from './about-records.ts';
import type { BookAddress, Connection } from './connection.ts';
import { type Draft, Stamp } from './draft.ts';
import { readServer, sendOutbox } from './exchange.ts';
import type { Machine } from './machine.ts';
import { type OnPhone, onPhone, phoneTrouble, TAKEN_BACK } from './on-phone.ts';
import { say } from './say.ts';

export type { Draft } from './draft.ts';
export type { Machine } from './machine.ts';

/**
 * The open book: the device's copy of it folded into a ledger, and the one way to add to it.
 * In a screen: `const book = useBook()`, then `book.ledger`, `book.currency`, `book.workingDay()`.
 * The screen is drawn again whenever a record arrives. What is added is first kept on the device,
 * then sent; what the server has is read into the copy.
 */
export type Appending = Outcome<readonly BookRecord[], ErrorAnswer>;

/** A save waits so long for the server's word before it stands as saved on this phone. */
export const PATIENCE_MS = 400;

/** What was read for the first time is on the screen before the device begins to keep it. */
const SCREEN_FIRST_MS = 300;

/** Taking a book off a phone waits so long for the server to end the session. */
const SIGN_OUT_MS = 3000;

const STORE_FAILED: ErrorAnswer = {
  name: 'phone_store_failed',
  message: say`The copy on this phone cannot be read just now. Load the app again.`,
};

export class Book {
  readonly address: BookAddress;
  /** Grows with every record that arrives; reading it makes a screen follow. */
  readonly version = signal(0);
  /** What was saved last on this device, offered with Undo at the top of the page. */
  readonly saved = signal<readonly BookRecord[]>([]);
  /** What is being saved just now, of which `saved` will tell. */
  readonly saving = signal<readonly BookRecord[]>([]);
  /** What is only on this device yet, and why. */
  readonly onPhone = signal<OnPhone>({ waiting: [], held: [], takenBack: [], aside: [] });
  /** Why nothing was sent or read at the last try; undefined when all went well. */
  readonly trouble = signal<ErrorAnswer | undefined>(undefined);
  readonly #connection: Connection;
  readonly #machine: Machine;
  readonly #copy: BookCopy;
  readonly #stamp: Stamp;
  #ledger = Ledger.of([]);
  /** Every record the device has, also those that are held back. */
  readonly #here = new Map<string, BookRecord>();
  /** The working day and what it was asked for: every screen asks, and that reads the book. */
  #day = { asked: '', day: '' };
  /** The next receipt, and of how many records that goes: forms ask at every letter typed. */
  #receipt = { of: -1, number: '' };
  /** Local arrival number up to which the copy was read. */
  #seen = 0;
  /** Ids that do not count, as the server did not take them. */
  #held: ReadonlySet<string> = new Set();
  /** Stamped records that are nowhere for sure, by their drafts: sent again under the same ids. */
  readonly #unsure = new Map<string, readonly BookRecord[]>();
  readonly #sending = new Map<string, Promise<Appending>>();
  #turn: Promise<unknown> = Promise.resolve();
  #reading: Promise<unknown> = Promise.resolve();
  readonly #season = computed(() => {
    this.version.value;
    return this.#ledger.setup.season;
  });

  private constructor(
    address: BookAddress,
    connection: Connection,
    machine: Machine,
    copy: BookCopy,
  ) {
    this.address = address;
    this.#connection = connection;
    this.#machine = machine;
    this.#copy = copy;
    this.#stamp = new Stamp(machine);
  }

  /** Opens the device's copy, or reads the book from the server where there is none yet. */
  static async open(
    address: BookAddress,
    connection: Connection,
    machine: Machine,
  ): Promise<Outcome<Book, ErrorAnswer>> {
    const copy = await machine.copies.openCopy(address);
    const book = new Book(address, connection, machine, copy);
    if (!isWhole(await copy.state())) {
      const read = await book.#firstReading();
      return read.ok ? done(book) : read;
    }
    await book.#catchUp();
    void book.refresh();
    return done(book);
  }

  /** The folded book. Reading it ties the screen to every later change. */
  get ledger(): Ledger {
    this.version.value;
    return this.#ledger;
  }

  /** ISO 4217 code of the season; empty until the season has been set up. */
  get currency(): string {
    return this.#season.value?.currency ?? '';
  }

  get name(): string {
    return this.#season.value?.name ?? this.address.season;
  }

  /** The day a screen is about and a form begins with (`YYYY-MM-DD`): mostly today. */
  workingDay(): string {
    const today = this.#machine.today();
    const asked = `${this.version.value} ${today}`;
    if (this.#day.asked !== asked) this.#day = { asked, day: workingDay(this.ledger, today) };
    return this.#day.day;
  }

  /** The next number of this device's own receipts, without a gap or a double. */
  nextReceipt(): string {
    this.version.value;
    if (this.#receipt.of !== this.#here.size) {
      const number = nextReceipt(this.#here.values(), this.#machine.receiptSeries);
      this.#receipt = { of: this.#here.size, number };
    }
    return this.#receipt.number;
  }

  /** This device's own three signs, on its receipts and on its lines of a stall's sheet. */
  get signs(): string {
    return this.#machine.receiptSeries.slice(0, 3);
  }

  /** False where this device can keep nothing of the book. */
  get keeps(): boolean {
    return this.#machine.keeps;
  }

  /** The copies of every book on this device, for what is about the device as a whole. */
  get copies(): CopyStore {
    return this.#machine.copies;
  }

  /** Resolves when nothing that was begun is on its way any more. */
  async atRest(): Promise<void> {
    await Promise.all([this.#turn, this.#reading]).catch(() => undefined);
  }

  /** Ends this browser's session; false where the server was not reached within a moment. */
  async signOut(): Promise<boolean> {
    const ended = this.#connection
      .endSession()
      .then((answer) => answer.ok || answer.refusal.name === 'not_signed_in');
    return Promise.race([ended, this.#machine.pause(SIGN_OUT_MS).then(() => false)]);
  }

  /** A record that is on this device, whether it counts or is held back. */
  recordHere(id: string): BookRecord | undefined {
    return this.#here.get(id);
  }

  /**
   * Adds records: all of them or none. Resolves when the device has them for good and the server
   * has answered, or has been silent for a moment; `onPhone` tells which. The same drafts while
   * they are being saved are the same records, so a second tap never makes a double.
   *
   * @param isQuiet true where the screen itself says what was saved, and how to take it back
   */
  append(drafts: readonly Draft[], isQuiet = false): Promise<Appending> {
    const said = canonicalText(drafts);
    const running = this.#sending.get(said);
    if (running !== undefined) return running;
    const sending = this.#add(said, drafts, isQuiet).finally(() => {
      this.#sending.delete(said);
      this.saving.value = [];
    });
    this.#sending.set(said, sending);
    return sending;
  }

  /** Sends what waits and takes over what others have written since. */
  refresh(): Promise<Outcome<void, ErrorAnswer>> {
    const mine = this.#turn.then(() => this.#exchange()).catch((error) => this.#storeFailed(error));
    this.#turn = mine.catch(() => undefined);
    return mine;
  }

  /** Takes over what another window of this device has changed in the copy. */
  async follow(): Promise<void> {
    await this.#catchUp();
  }

  /** Lets a held entry of the outbox go to the server again. */
  async sendAgain(number: number): Promise<void> {
    await this.#copy.hold(number, undefined);
    await this.#changed();
    await this.refresh();
  }

  /** Takes a held entry back: it is kept on this device, and never sent. */
  async takeBack(number: number): Promise<void> {
    await this.#copy.hold(number, TAKEN_BACK);
    await this.#changed();
  }

  /** The balances that change with a draft, as they are and as they would be. */
  changesBy(draft: Draft): readonly ChangedBalance[] {
    const record = this.#stamp.on(draft);
    const { balances, standing } = this.ledger;
    if (isMovement(record) && record.replaces === undefined) {
      return balancesAfter(balances, this.#ledger.movesOf(record));
    }
    return changedBalances(balances, Ledger.of([...standing.records(), record]).balances);
  }

  async #add(said: string, drafts: readonly Draft[], isQuiet: boolean): Promise<Appending> {
    const records = this.#unsure.get(said) ?? drafts.map((draft) => this.#stamp.on(draft));
    if (!isQuiet) this.saving.value = records;
    const refusal = await this.#refusalHere(records);
    if (refusal !== undefined) return refused(refusal);
    const kept = await this.#copy.keep(records);
    if (!kept.ok) return this.#straightToServer(said, records);
    await this.#changed();
    await Promise.race([this.refresh(), this.#machine.pause(PATIENCE_MS)]);
    const entry = this.onPhone.value.held.find(({ ids }) => ids.includes(records[0]?.id ?? ''));
    if (entry?.held !== undefined) {
      // The form that asked is still open and says why: there is nothing left to keep.
      await this.takeBack(entry.number);
      return refused(entry.held);
    }
    if (!isQuiet) this.saved.value = records;
    return done(records);
  }

  /** The rules, where their chunk is at hand; the server asks them again in any case. */
  async #refusalHere(records: readonly BookRecord[]): Promise<ErrorAnswer | undefined> {
    const rules = await import('./rules-here.ts').catch(() => undefined);
    return rules?.refusalHere(this.#ledger, records, this.#machine.today());
  }

  /** The device can keep nothing more: what is saved goes to the server, or stays in the form. */
  async #straightToServer(said: string, records: readonly BookRecord[]): Promise<Appending> {
    const answer = await this.#connection.append(this.address, records);
    if (!answer.ok && !isAboutRecords(answer.refusal)) this.#unsure.set(said, records);
    else this.#unsure.delete(said);
    if (!answer.ok) return refused(phoneTrouble(answer.refusal));
    this.#count(records);
    this.saved.value = records;
    return done(records);
  }

  /** Resolves as soon as the book was read: keeping it on the device goes on behind the screen. */
  async #firstReading(): Promise<Outcome<void, ErrorAnswer>> {
    const first = await this.#connection.recordsAfter(this.address, 0);
    if (!first.ok) return first;
    // A part of a book would show balances that are none.
    if (first.value.records.length >= PAGE_MAX_RECORDS) return this.refresh();
    this.#count(first.value.records.map(({ record }) => record));
    this.#turn = this.#machine
      .pause(SCREEN_FIRST_MS)
      .then(() => this.#exchange(first.value))
      .catch((error) => this.#storeFailed(error));
    return done(undefined);
  }

  /** @param first what was read and counted already, and is only to be kept */
  async #exchange(first?: RecordsAnswer): Promise<Outcome<void, ErrorAnswer>> {
    const exchange = {
      copy: this.#copy,
      connection: this.#connection,
      address: this.address,
    };
    const sent = await sendOutbox(exchange);
    if (sent.ok && sent.value) await this.#changed();
    const read = sent.ok ? await readServer(exchange, first) : sent;
    if (read.ok && first !== undefined) this.#skip(read.value.kept);
    await this.#changed();
    this.trouble.value = read.ok ? undefined : read.refusal;
    if (!read.ok) return read;
    if (read.value.unkept.length > 0) this.#count(read.value.unkept);
    return done(undefined);
  }

  /** What was counted when it was read is not read out of the copy once more. */
  #skip(kept: readonly Arrived[]): void {
    const [first] = kept;
    // Another window may have kept something before it, which is still to be read.
    if (first?.arrival === this.#seen + 1) this.#seen = kept.at(-1)?.arrival ?? this.#seen;
  }

  /** The browser took its store away, or its disk failed; what was kept is still there. */
  #storeFailed(error: unknown): Outcome<void, ErrorAnswer> {
    assert(error instanceof DOMException, `only the browser's store fails here: ${error}`);
    this.trouble.value = STORE_FAILED;
    return refused(STORE_FAILED);
  }

  /** Counts records that could not be kept on this device. */
  #count(records: readonly BookRecord[]): void {
    for (const record of records) this.#here.set(record.id, record);
    if (this.#ledger.size === 0) this.#ledger = Ledger.of(records);
    else for (const record of records) this.#ledger.add(record);
    this.version.value += 1;
  }

  async #changed(): Promise<void> {
    if (await this.#catchUp()) this.#machine.windows.tell();
  }

  /** Brings ledger and outbox up to date with the copy; true where it had changed. */
  #catchUp(): Promise<boolean> {
    // One after another, so that what was read first never overwrites what was read later.
    const mine = this.#reading.then(() => this.#readCopy());
    this.#reading = mine.catch(() => undefined);
    return mine;
  }

  async #readCopy(): Promise<boolean> {
    const [arrived, state] = await Promise.all([
      this.#copy.journal.readSince(this.#seen),
      this.#copy.state(),
    ]);
    const before = this.onPhone.value;
    const now = onPhone(state);
    const held = new Set([...now.held, ...now.takenBack].flatMap(({ ids }) => ids));
    for (const { arrival, record } of arrived) {
      this.#seen = Math.max(this.#seen, arrival);
      this.#here.set(record.id, record);
    }
    const sameHeld = held.size === this.#held.size && [...held].every((id) => this.#held.has(id));
    this.#held = held;
    if (sameHeld && this.#ledger.size > 0) {
      for (const { record } of arrived) if (!held.has(record.id)) this.#ledger.add(record);
    } else if (arrived.length > 0 || !sameHeld) {
      const counting = [...this.#here.values()].filter(({ id }) => !held.has(id));
      this.#ledger = Ledger.of(counting);
    }
    const changed = arrived.length > 0 || canonicalText(before) !== canonicalText(now);
    if (changed) {
      this.onPhone.value = now;
      this.version.value += 1;
    }
    return changed;
  }
}

/** The place moves when all was kept: without it the device has a part, or nothing, of the book. */
export function isWhole({ place }: CopyState): boolean {
  return place !== undefined;
}

export const BookContext = createContext<Book | undefined>(undefined);

/** The open book; only screens below the app's frame may ask, which always has one. */
export function useBook(): Book {
  const book = useContext(BookContext);
  assert(book !== undefined, 'a screen is drawn only while a book is open');
  // Reading the version ties this screen to later records.
  book.version.value;
  return book;
}
