import { seeded } from '../../src/base/seeded.ts';
import { testBook } from '../../src/ledger/test-book.ts';
import { draftsOf, SELLERS } from './drafts.ts';
import { type Fate, serverWith } from './link.ts';
import { type Fault, Phone } from './phone.ts';
import { seenOn, type Verdict, verdictOn } from './verdict.ts';

/** One thing that happens in a history; numbers choose among what is there at that moment. */
export interface Step {
  readonly phone: number;
  readonly does:
    | 'pay'
    | 'hand out'
    | 'edit'
    | 'remove'
    | 'rename'
    | 'drop seller'
    | 'exchange'
    | 'reopen'
    | 'wipe'
    | 'late mail'
    | 'clock';
  readonly fate: Fate;
  readonly pick: number;
  /** The phone is killed at so many changes of its store into this step; 0: it is not. */
  readonly killAt: number;
}

export interface History {
  readonly seed: number;
  readonly phones: number;
  readonly steps: readonly Step[];
}

const YEAR_MS = 365 * 24 * 3_600_000;
export const CLOCKS_MS = [0, YEAR_MS, -YEAR_MS, 3 * 24 * 3_600_000, -60_000];

/** Plays a history on real books of the app and a real server, then says what is wrong. */
export async function play(history: History, fault: Fault = {}): Promise<Verdict> {
  const server = await serverWith(testBook({ honey: 800, jam: 650 }, SELLERS).setup);
  const random = seeded(history.seed);
  const phones = Array.from(
    { length: history.phones },
    (_, number) => new Phone(server, number, random, fault),
  );
  for (const phone of phones) await phone.open();
  for (const [at, step] of history.steps.entries()) {
    const phone = phones[step.phone % phones.length];
    if (phone !== undefined) await take(phone, step, at);
  }
  // In the end everybody has a connection, twice round: the first that read knows the last that
  // wrote.
  for (const round of [1, 2]) {
    for (const phone of phones) {
      phone.link.fate = 'answered';
      if (round === 1) {
        await phone.link.deliverLate();
        await phone.open();
      }
      await phone.book.refresh();
    }
  }
  return verdictOn(server, phones.map(seenOn));
}

async function take(phone: Phone, step: Step, at: number): Promise<void> {
  phone.link.fate = step.fate;
  const killAfter = step.killAt || Number.POSITIVE_INFINITY;
  switch (step.does) {
    case 'exchange':
      await phone.exchange(killAfter);
      return;
    case 'reopen':
      await phone.open();
      return;
    case 'wipe':
      phone.link.fate = 'answered';
      await phone.wipe();
      return;
    case 'late mail':
      await phone.link.deliverLate();
      return;
    case 'clock':
      phone.skewMs = CLOCKS_MS[step.pick % CLOCKS_MS.length] ?? 0;
      return;
    default: {
      const drafts = draftsOf(phone.book, step, at);
      if (drafts.length > 0) await phone.write(drafts, killAfter);
    }
  }
}
