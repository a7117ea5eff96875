import { canonicalText } from '../../src/base/canonical-text.ts';
import type { Journal } from '../../src/journal/journal.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import type { BookRecord } from '../../src/records/record.ts';
import type { OnPhone } from '../../src/web/on-phone.ts';
import type { Phone } from './phone.ts';

/** What is wrong at the end of a history, one line each; empty when all is well. */
export type Verdict = readonly string[];

/** What a phone shows in the end. */
export interface PhoneSeen {
  /** Ids of records that the person was told are saved. */
  readonly told: ReadonlySet<string>;
  readonly onPhone: OnPhone;
  /** Records that count there, and the balances and open choices that it shows. */
  readonly records: number;
  readonly shows: string;
  /** Those of its records that the server did not take, or that were taken back. */
  readonly kept: readonly BookRecord[];
}

export function seenOn({ book, told }: Pick<Phone, 'book' | 'told'>): PhoneSeen {
  const onPhone = book.onPhone.value;
  return {
    told,
    onPhone,
    records: book.ledger.standing.records().length,
    shows: shownBy(book.ledger),
    kept: keptIds(onPhone).flatMap((id) => book.recordHere(id) ?? []),
  };
}

function keptIds({ held, takenBack }: OnPhone): string[] {
  return [...held, ...takenBack].flatMap(({ ids }) => ids);
}

export async function verdictOn(
  server: { readonly journal: Pick<Journal, 'readSince'> },
  phones: readonly PhoneSeen[],
): Promise<Verdict> {
  const there = (await server.journal.readSince(0)).map(({ record }) => record);
  const wrong = [...doubles(there), ...receiptsWrong(there, phones)];
  // Last first: the sum must not depend on the order.
  const shows = shownBy(Ledger.of(there.toReversed()));
  for (const [at, phone] of phones.entries()) {
    wrong.push(...phoneWrong(phone, there).map((line) => `phone ${at}: ${line}`));
    if (phone.shows !== shows) wrong.push(`phone ${at}: other balances`);
  }
  return wrong;
}

function shownBy(ledger: Ledger): string {
  const conflicts = ledger.standing
    .conflicts()
    .map(({ on, counts, kept }) => [on, counts.id, ...kept.map(({ id }) => id)].join(' '));
  return canonicalText({
    accounts: ledger.balances.toAccounts(),
    conflicts: conflicts.sort(),
    names: [...ledger.setup.families.values()].map((family) => family.name),
  });
}

/** A tap writes each of its records once, whatever became of the sending. */
function doubles(records: readonly BookRecord[]): string[] {
  const seen = new Set<string>();
  const wrong: string[] = [];
  for (const record of records) {
    const note = record.kind === 'void' ? record.reason : record.note;
    if (!note?.startsWith('tap ')) continue;
    if (seen.has(note)) wrong.push(`doubled: ${note}`);
    seen.add(note);
  }
  return wrong;
}

function phoneWrong(phone: PhoneSeen, there: readonly BookRecord[]): string[] {
  const wrong: string[] = [];
  const onServer = new Set(there.map(({ id }) => id));
  const { waiting, held, aside } = phone.onPhone;
  const kept = new Set(keptIds(phone.onPhone));
  for (const id of phone.told) {
    if (!onServer.has(id) && !kept.has(id)) wrong.push(`lost: ${id} was told to be saved`);
  }
  if (waiting.length > 0) wrong.push(`${waiting.length} still wait`);
  if (aside.length > 0) wrong.push('a record was kept aside');
  const unsaid = held.filter((entry) => (entry.held?.message ?? '') === '');
  if (unsaid.length > 0) wrong.push('something is held back without a reason');
  if (phone.records !== there.length) wrong.push(`${phone.records} of ${there.length} records`);
  return wrong;
}

/** Each series runs 1, 2, 3… with no gap and no double, what is held back included. */
function receiptsWrong(there: readonly BookRecord[], phones: readonly PhoneSeen[]): string[] {
  const byId = new Map(there.map((record) => [record.id, record]));
  for (const record of phones.flatMap(({ kept }) => kept)) byId.set(record.id, record);
  const bySeries = new Map<string, number[]>();
  for (const record of byId.values()) {
    if (record.kind !== 'payment' || record.receipt === undefined) continue;
    const [, series = '', number = ''] = /^(.*-)(\d+)$/.exec(record.receipt) ?? [];
    bySeries.set(series, [...(bySeries.get(series) ?? []), Number(number)]);
  }
  return [...bySeries].flatMap(([series, numbers]) => {
    const sorted = numbers.sort((a, b) => a - b);
    const gapless = sorted.every((number, at) => number === at + 1);
    return gapless ? [] : [`receipts of ${series}: ${sorted.join(' ')}`];
  });
}
