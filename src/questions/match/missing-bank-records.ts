import { sum } from '../../base/sum.ts';
import type { Ledger } from '../../ledger/ledger.ts';
import type { MovementRecord, RecordOf } from '../../records/record.ts';
import { sumsTo } from '../../solvers/match/sums-to.ts';
import { notYetBanked } from '../not-yet-banked.ts';
import { type BankKind, dayNumber } from './bank-entries.ts';
import type { LineToMatch } from './bank-window.ts';
import { cardsWaiting } from './cards-waiting.ts';

/** What a record of a kind says beyond its id and who wrote it. */
export type Drafted<K extends MovementRecord['kind']> = Omit<RecordOf<K>, 'id' | 'at' | 'by'>;

type BankDraft = { readonly [K in BankKind]: Drafted<K> }[BankKind];

/** The record that most likely stands for a line that only the bank has, filled in. */
export interface MissingRecord {
  readonly line: number;
  readonly record: BankDraft;
}

/** Days in which a bank sends a cheque or a debit back (common practice). */
const BACK_WITHIN = 21;
const FEE_MOST = 6000;
const DEPOSIT_LIMITS = { members: 10, found: 2, steps: 60_000 };

/**
 * Offers, for lines that the book does not have, the record that is missing: what came back, a fee,
 * a debit; the payout of card takings less a fee; the deposit of receipts that wait. Nothing is
 * offered where it would be a guess among several.
 */
export function missingBankRecords(ledger: Ledger, lines: readonly LineToMatch[]): MissingRecord[] {
  const movements = ledger.movements();
  return lines.flatMap((line) => {
    const record = line.cents < 0 ? wentOut(movements, line) : cameIn(ledger, movements, line);
    return record === undefined ? [] : [{ line: line.line, record }];
  });
}

function wentOut(movements: readonly MovementRecord[], line: LineToMatch): BankDraft | undefined {
  const cents = -line.cents;
  const { date } = line;
  if (!FEE_WORDS.test(line.text) || RETURN_WORDS.test(line.text)) {
    const bounced = bouncedCheque(movements, line);
    if (bounced !== undefined) return bounced;
  }
  if (FEE_WORDS.test(line.text)) return { kind: 'bank-fee', date, cents };
  const [like] = movements.filter((each) => each.kind === 'debit' && each.cents === cents);
  const isDebit = like !== undefined || DEBIT_WORDS.test(line.text);
  return isDebit ? { kind: 'debit', date, cents } : undefined;
}

const FEE_WORDS = /\b(?:fees?|charges?|service|maintenance)\b/i;
const RETURN_WORDS = /\b(?:return(?:ed)?|nsf|unpaid|bounced?|reversal|chargeback|refer)\b/i;
const DEBIT_WORDS = /\b(?:debit|ach|draft|withdrawal|collection|dd|direct)\b/i;

/** The one cheque of that amount, or of a little less where the line's words say it came back. */
function bouncedCheque(
  movements: readonly MovementRecord[],
  { date, cents, text }: LineToMatch,
): BankDraft | undefined {
  const gone = new Set(movements.flatMap((each) => (each.kind === 'bounced' ? each.payment : [])));
  const cheques = movements.filter(
    (each): each is RecordOf<'payment'> =>
      each.kind === 'payment' &&
      each.tender === 'cheque' &&
      !gone.has(each.id) &&
      isWithin(each.date, date, BACK_WITHIN * 2),
  );
  const same = cheques.filter((each) => each.cents === -cents);
  const [only] = same;
  if (only !== undefined && same.length === 1) return { kind: 'bounced', date, payment: only.id };
  if (!RETURN_WORDS.test(text)) return undefined;
  const less = cheques.filter((each) => each.cents < -cents && -cents - each.cents <= FEE_MOST);
  const [lesser] = less;
  if (lesser === undefined || less.length > 1) return undefined;
  return { kind: 'bounced', date, payment: lesser.id, fee: -cents - lesser.cents };
}

function cameIn(
  ledger: Ledger,
  movements: readonly MovementRecord[],
  line: LineToMatch,
): BankDraft | undefined {
  return (
    returnedDebit(movements, line) ??
    depositOf(ledger, line) ??
    (DEPOSIT_WORDS.test(line.text) ? undefined : cardPayout(ledger, line))
  );
}

const DEPOSIT_WORDS = /\b(?:deposit|cash|cheques?|checks?)\b/i;

function returnedDebit(
  movements: readonly MovementRecord[],
  { date, cents }: LineToMatch,
): BankDraft | undefined {
  const gone = new Set(
    movements.flatMap((each) => (each.kind === 'debit-returned' ? each.debit : [])),
  );
  const debit = movements.findLast(
    (each) =>
      each.kind === 'debit' &&
      !gone.has(each.id) &&
      isWithin(each.date, date, BACK_WITHIN) &&
      each.cents >= cents &&
      each.cents - cents <= (each.cents === cents ? 0 : FEE_MOST),
  );
  if (debit?.kind !== 'debit' || (debit.cents !== cents && cents * 2 < debit.cents)) {
    return undefined;
  }
  const fee = debit.cents - cents;
  return { kind: 'debit-returned', date, debit: debit.id, ...(fee === 0 ? {} : { fee }) };
}

/** All receipts that waited that day, or the only set of them that comes to the line. */
function depositOf(ledger: Ledger, { date, cents }: LineToMatch): BankDraft | undefined {
  const waiting = notYetBanked(ledger).filter(({ record }) => record.date <= date);
  const all = sum(waiting.map((receipt) => receipt.cents));
  const { sets, isComplete } = sumsTo(
    waiting.map((receipt) => receipt.cents),
    cents,
    DEPOSIT_LIMITS,
  );
  const [only] = sets;
  if (all !== cents && (only === undefined || sets.length > 1 || !isComplete)) return undefined;
  const chosen = all === cents ? waiting : (only ?? []).flatMap((at) => waiting[at] ?? []);
  return { kind: 'deposit', date, cents, items: chosen.map(({ record }) => record.id) };
}

/** Card takings of one day or of several in a row, less what is left of them as a fee. */
function cardPayout(ledger: Ledger, { date, cents }: LineToMatch): BankDraft | undefined {
  const fee = cardsWaiting(ledger, date)
    .map((waiting) => waiting - cents)
    .find((left) => left >= 0 && left * 100 <= (cents + left) * CARD_FEE_PERCENT_MOST);
  return fee === undefined ? undefined : { kind: 'card-settle', date, cents, fee, to: 'bank' };
}

const CARD_FEE_PERCENT_MOST = 6;

function isWithin(from: string, to: string, days: number): boolean {
  const apart = dayNumber(to) - dayNumber(from);
  return apart >= 0 && apart <= days;
}
