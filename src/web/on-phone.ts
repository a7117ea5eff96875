import type { ErrorAnswer } from '../contract/api.ts';
import type { CopyState, Held, OutboxEntry } from '../journal/book-copy.ts';
import type { BookRecord } from '../records/record.ts';
import { isAboutRecords } from './about-records.ts';
import { say } from './say.ts';

/** What of a book is only on this device, told apart for people. */
export interface OnPhone {
  /** Written here, to be sent. */
  readonly waiting: readonly OutboxEntry[];
  /** Not taken by the server, with the reason: somebody has to look. */
  readonly held: readonly OutboxEntry[];
  /** Taken back by the person: kept here, never sent. */
  readonly takenBack: readonly OutboxEntry[];
  /** The server's records whose ids stand for other content here. */
  readonly aside: readonly BookRecord[];
}

export const TAKEN_BACK: Held = {
  name: 'taken_back',
  message: say`Taken back on this phone before the server had it.`,
};

export function onPhone({ outbox, aside }: CopyState): OnPhone {
  return {
    waiting: outbox.filter(({ held }) => held === undefined),
    held: outbox.filter(({ held }) => held !== undefined && held.name !== TAKEN_BACK.name),
    takenBack: outbox.filter(({ held }) => held?.name === TAKEN_BACK.name),
    aside,
  };
}

/** Said where the device cannot keep a record and the server did not take it either. */
export function phoneTrouble(refusal: ErrorAnswer): ErrorAnswer {
  if (isAboutRecords(refusal)) return refusal;
  return {
    name: 'not_kept',
    message: say`This phone could not save it (mostly it is full), and the server was not reached.
      What you typed stays here: free some space on the phone or get a connection, then save
      again.`,
  };
}
