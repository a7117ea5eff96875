import type { MovementKind, RecordOf } from '../../records/record.ts';
import { type Adding, REASON } from './adding.ts';
import { circumstances } from './error-model.ts';
import { centsFrom } from './readings.ts';

/** A movement of money that should be in the book and is not. */
export function missingMoney(adding: Adding): void {
  // Amounts are read off money that differs.
  if (!adding.situation.isMoneyOff) return;
  for (const seller of adding.sellers) payments(adding, seller);
  deposits(adding);
  cardPayouts(adding);
  ofBankAndSupplier(adding);
  sentBack(adding);
}

function payments(adding: Adding, seller: string): void {
  const { situation, habits } = adding;
  const owed = `owed:${seller}`;
  const share = 1 / situation.sellers.length;
  const stillToPay = situation.ledger.balances.moneyOf(owed);
  for (const tender of ['cash', 'cheque', 'card'] as const) {
    const into = tender === 'card' ? 'cards' : 'cashbox';
    for (const cents of centsFrom(situation, [
      [owed, -1],
      [into, 1],
    ])) {
      const chance = allOrUsual(adding, 'payment', cents, stillToPay);
      adding.usual('payment', { seller, tender, cents }, (share * chance) / 3);
    }
    for (const cents of centsFrom(situation, [
      [owed, 1],
      [into, -1],
    ])) {
      const chance = habits.chanceOf('refund', 'cents', cents);
      adding.usual('refund', { seller, tender, cents }, (share * chance) / 3);
    }
  }
  for (const cents of centsFrom(situation, [['losses', 1]])) {
    const chance = allOrUsual(adding, 'loss', cents, stillToPay);
    adding.usual('loss', { seller, cents, reason: REASON }, share * chance);
  }
}

/** Chance of an amount: often it is all that there is, as far as that is a usual amount. */
function allOrUsual(adding: Adding, kind: MovementKind, cents: number, all: number): number {
  const usual = adding.habits.chanceOf(kind, 'cents', cents);
  if (cents !== all) return usual;
  return Math.max(usual, ALL_CHANCE * adding.habits.likeness(kind, 'cents', cents));
}

function deposits(adding: Adding): void {
  const all = adding.situation.ledger.balances.moneyOf('cashbox');
  for (const cents of centsFrom(adding.situation, [
    ['cashbox', -1],
    ['bank', 1],
  ])) {
    adding.usual('deposit', { cents }, allOrUsual(adding, 'deposit', cents, all));
  }
}

function cardPayouts(adding: Adding): void {
  const { situation, habits } = adding;
  for (const to of ['bank', 'supplier'] as const) {
    const arrived = centsFrom(situation, [[to, 1]]);
    const left = centsFrom(situation, [['cards', -1]]);
    const fees = centsFrom(situation, [['fees', 1]]);
    const pairs: [cents: number, fee: number][] = [];
    for (const cents of arrived) {
      pairs.push([cents, 0], ...fees.map((fee): [number, number] => [cents, fee]));
      for (const gross of left) if (gross > cents) pairs.push([cents, gross - cents]);
    }
    for (const gross of left) {
      pairs.push([gross, 0]);
      for (const fee of fees) if (gross > fee) pairs.push([gross - fee, fee]);
    }
    for (const [cents, fee] of pairs) {
      const chance = habits.chanceOf('card-settle', 'cents', cents);
      const isUsualFee = fee === 0 ? 1 : Math.max(0.05, fee / cents < 0.06 ? 1 : 0);
      adding.usual('card-settle', { cents, fee, to }, (chance * isUsualFee) / 2);
    }
  }
}

function ofBankAndSupplier(adding: Adding): void {
  const { situation, habits } = adding;
  for (const cents of centsFrom(situation, [
    ['bank', -1],
    ['supplier', 1],
  ])) {
    adding.usual('debit', { cents }, habits.chanceOf('debit', 'cents', cents));
  }
  for (const cents of centsFrom(situation, [
    ['bank', -1],
    ['fees', 1],
  ])) {
    adding.usual('bank-fee', { cents }, habits.chanceOf('bank-fee', 'cents', cents));
  }
  for (const proceeds of centsFrom(situation, [
    ['supplier', 1],
    ['proceeds', -1],
  ])) {
    const chance = habits.chanceOf('settle', 'proceeds', proceeds);
    adding.usual('settle', { proceeds }, chance);
  }
}

/** Cheques that came back and debits that were sent back, known to the bank alone. */
function sentBack(adding: Adding): void {
  const { entries, ledger } = adding.situation;
  const known = new Set<string | undefined>();
  const fees = new Set([0, ...centsFrom(adding.situation, [['fees', 1]])]);
  for (const record of entries) {
    if (record.kind === 'bounced') known.add(ledger.standing.currentOf(record.payment)?.id);
    if (record.kind === 'debit-returned') known.add(ledger.standing.currentOf(record.debit)?.id);
    if (isSentBack(record) && record.fee !== undefined) fees.add(record.fee);
  }
  for (const record of entries) {
    if (known.has(record.id)) continue;
    if (record.kind === 'payment') bounced(adding, record, fees);
    if (record.kind === 'debit') debitReturned(adding, record, fees);
  }
}

function isSentBack(
  record: RecordOf<MovementKind>,
): record is RecordOf<'bounced'> | RecordOf<'debit-returned'> {
  return record.kind === 'bounced' || record.kind === 'debit-returned';
}

/** With each fee that is usual, or that the bank or the family shows on top of the cheque. */
function bounced(adding: Adding, record: RecordOf<'payment'>, usual: ReadonlySet<number>): void {
  const { situation } = adding;
  const onTop = [
    -situation.off('money', 'bank') - record.cents,
    situation.off('money', `owed:${record.seller}`) - record.cents,
  ];
  const fees = new Set([...usual, ...onTop.filter((fee) => fee > 0)]);
  for (const fee of fees) {
    const says = { payment: record.id, ...(fee === 0 ? {} : { fee }) };
    const tender = record.tender === 'cheque' ? 1 : circumstances.wasCheque.rate;
    const chance = tender * circumstances.sentBack.rate * (feeChance(fee, usual) / usual.size);
    adding.add('bounced', says, chance, record.id);
    if (fee > 0) adding.add('bounced', { ...says, charge: true }, chance / 2, record.id);
  }
}

function debitReturned(
  adding: Adding,
  record: RecordOf<'debit'>,
  usual: ReadonlySet<number>,
): void {
  const short = record.cents - adding.situation.off('money', 'bank');
  const fees = new Set([...usual, ...(short > 0 && short < record.cents ? [short] : [])]);
  for (const fee of fees) {
    const says = { debit: record.id, ...(fee === 0 ? {} : { fee }) };
    const chance = circumstances.sentBack.rate * (feeChance(fee, usual) / usual.size);
    adding.add('debit-returned', says, chance, record.id);
  }
}

/**
 * A fee that the book knows is likely. Any other is worth as little as one amount among many: what
 * is over beyond some cheque could else be called its fee, whatever it is.
 */
function feeChance(fee: number, usual: ReadonlySet<number>): number {
  if (usual.has(fee)) return 1;
  const isUsual = fee % WHOLE === 0 && fee >= FEE_LEAST && fee <= FEE_MOST;
  return isUsual ? circumstances.unknownWholeFee.rate : circumstances.unknownOddFee.rate;
}

/** Minor units that make a whole amount, and what banks take for a returned item. */
const WHOLE = 100;
const FEE_LEAST = 500;
const FEE_MOST = 5000;

/** Chance, assumed, that a payment or deposit is just all there is. */
const ALL_CHANCE = 0.3;
