import type { Ledger } from '../ledger/ledger.ts';
import { isOffered } from '../records/no-prize.ts';
import { type BookRecord, isMovement } from '../records/record.ts';
import { largestAmount } from './largest-amount.ts';
import { movedBy } from './moved-by.ts';
import { tables, WORDS } from './named-things.ts';
import { eachNamed } from './references.ts';
import { type Refusal, refusal } from './refusals.ts';

/** What a record names is in the book: set-up, the payment that bounced, the debit sent back. */
export function namesRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  return (
    setupRefusal(ledger, record) ?? choiceRefusal(ledger, record) ?? pointingRefusal(ledger, record)
  );
}

function setupRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  const there = tables(ledger.setup);
  let found: Refusal | undefined;
  eachNamed(record, (thing, id, field, isKey) => {
    if (found !== undefined || there[thing].has(id)) return;
    const message = `The book has no ${WORDS[thing]} ${id}; add it first, or choose another.`;
    found = refusal(record, `unknown_${thing}`, isKey ? `${field}.${id}` : field, message);
  });
  return found;
}

function choiceRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  if (record.kind !== 'choice') return undefined;
  const level = ledger.setup.levels.get(record.level);
  if (level === undefined || isOffered(level, record.choice)) return undefined;
  const offered = level.choices?.join(', ') ?? 'nothing to choose';
  const message = `The prize step ${record.level} offers ${offered}; choose from these.`;
  return refusal(record, 'choice_is_not_offered', 'choice', message);
}

function pointingRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  if (record.kind === 'bounced') {
    if (ledger.standing.currentOf(record.payment)?.kind === 'payment') return undefined;
    const message = 'The payment that bounced is not in the book; record the payment first.';
    return refusal(record, 'payment_is_not_here', 'payment', message);
  }
  if (record.kind === 'debit-returned') {
    if (ledger.standing.currentOf(record.debit)?.kind === 'debit') return undefined;
    const message = 'The debit that came back is not in the book; record the debit first.';
    return refusal(record, 'debit_is_not_here', 'debit', message);
  }
  return undefined;
}

/** A sum beyond the exact whole numbers would make every balance doubtful. */
export function amountRefusal(ledger: Ledger, record: BookRecord): Refusal | undefined {
  if (!isMovement(record)) return undefined;
  // A thousandth of what is exact leaves room for a season of such records.
  if (movedBy(ledger, record) <= Number.MAX_SAFE_INTEGER / 1000) return undefined;
  const message =
    'The amounts of this record are too large to be added up exactly; check each number.';
  return refusal(record, 'amount_is_too_large', largestAmount(record)[0], message);
}
