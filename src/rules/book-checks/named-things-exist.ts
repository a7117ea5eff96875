import { fieldPath, saidOf } from '../../intake/finding.ts';
import type { FindingList } from '../../intake/finding-list.ts';
import { isOffered } from '../../records/no-prize.ts';
import type { BookRecord, RecordOf } from '../../records/record.ts';
import { tables, WORDS } from '../named-things.ts';
import { eachNamed, type NamedThing } from '../references.ts';
import { addSetUp, noThingNames, type ThingNames } from '../set-up-by.ts';
import { about, type BookCheck, type CheckedBook, lineAt } from './checked-book.ts';

/**
 * Every thing that a counting record names is in the set-up. Where it was there and was removed,
 * that is told but not refused: two copies that merge can come to it without anybody's fault.
 */
export const namedThingsExist: BookCheck = (book, findings) => {
  const { standing, setup } = book.ledger;
  const there = tables(setup);
  const removed = new RemovedThings(standing.records());
  for (let index = 0; index < book.records.length; index += 1) {
    const record = book.records[index];
    if (record === undefined || !standing.counts(record)) continue;
    eachNamed(record, (thing, id, field, isKey) => {
      if (there[thing].has(id)) return;
      const once = removed.has(thing, id);
      findings.add({
        line: lineAt(book, index),
        record: record.id,
        field: isKey ? fieldPath([field, id]) : field,
        said: saidOf(id),
        wanted: once
          ? `a ${WORDS[thing]} that was not removed`
          : `the id of a ${WORDS[thing]} of this book`,
        severity: once ? 'warning' : 'error',
      });
    });
    pointedAt(book, record, findings);
    if (record.kind === 'choice') choiceIsOffered(book, record, findings);
  }
};

/** Everything that any record of the file has ever set up; made only when first asked. */
class RemovedThings {
  readonly #records: readonly BookRecord[];
  #known: ThingNames | undefined;

  constructor(records: readonly BookRecord[]) {
    this.#records = records;
  }

  has(thing: NamedThing, id: string): boolean {
    this.#known ??= everSetUp(this.#records);
    return this.#known[thing].has(id);
  }
}

function everSetUp(records: readonly BookRecord[]): ThingNames {
  const known = noThingNames();
  for (const record of records) addSetUp(known, record);
  return known;
}

/** A bounce names a payment, a returned debit names a debit, a deposit may name what it held. */
function pointedAt(book: CheckedBook, record: BookRecord, findings: FindingList): void {
  if (record.kind === 'bounced') pointsTo(book, record, 'payment', record.payment, findings);
  else if (record.kind === 'debit-returned') {
    pointsTo(book, record, 'debit', record.debit, findings);
  } else if (record.kind === 'deposit') depositItems(book, record, findings);
}

function pointsTo(
  book: CheckedBook,
  record: BookRecord,
  kind: 'payment' | 'debit',
  id: string,
  findings: FindingList,
): void {
  const { standing } = book.ledger;
  if (standing.currentOf(id)?.kind === kind) return;
  // It was one, and another device removed it or made another kind of it: told, not refused.
  const wasOne = standing.get(id)?.kind === kind;
  const wanted = wasOne ? `a ${kind} that was not removed` : `the id of a ${kind} of this book`;
  findings.add(about(book, record, wasOne ? 'warning' : 'error', kind, id, wanted));
}

function depositItems(book: CheckedBook, record: RecordOf<'deposit'>, findings: FindingList): void {
  for (const [index, id] of (record.items ?? []).entries()) {
    const item = book.ledger.standing.currentOf(id);
    if (item?.kind === 'payment' || item?.kind === 'stall-close') continue;
    const wanted = 'the id of a payment or a stall-close of this book';
    findings.add(about(book, record, 'warning', `items.${index}`, id, wanted));
  }
}

function choiceIsOffered(
  book: CheckedBook,
  record: RecordOf<'choice'>,
  findings: FindingList,
): void {
  const level = book.ledger.setup.levels.get(record.level);
  if (level === undefined || isOffered(level, record.choice)) return;
  const offered = level.choices?.join(', ') ?? '';
  const wanted =
    offered === '' ? 'no choice: this prize step has none' : `one of its choices: ${offered}`;
  // Another device may have changed what the prize step offers.
  findings.add(about(book, record, 'warning', 'choice', record.choice, wanted));
}
