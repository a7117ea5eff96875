import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Ledger } from '../ledger/ledger.ts';
import { FIRST_DAY, testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { partSign } from './account-entries.ts';
import { type FamilyAccount, familyAccount, familyAccounts } from './family-account.ts';

const book = testBook({ honey: 600, jam: 650 }, ['ada', 'ben']);

function accountIn(ledger: Ledger, family = 'home', asOf?: string): FamilyAccount {
  const account = familyAccount(ledger, family, asOf);
  if (!account.ok) throw new Error(account.refusal.name);
  return account.value;
}

describe('the account of a family', () => {
  it('adds up goods out and payments (the example of the issue)', () => {
    const account = accountIn(
      book.ledger([
        book.movement('handover', { seller: 'ada', lines: { honey: 60 } }),
        book.movement('payment', { seller: 'ada', tender: 'cash', cents: 20000, receipt: 'A-1' }),
      ]),
    );
    expect(account.totals.taken).toEqual({ units: 60, minor: 36000 });
    expect(account.totals.paid.minor).toBe(20000);
    expect(account.stillToPay).toBe(16000);
    expect(account.lines.map((line) => [line.event, line.minor, line.stillToPay])).toEqual([
      ['goods-out', 36000, 36000],
      ['payment', -20000, 16000],
    ]);
    expect(account.lines[1]?.reference).toBe('A-1');
    expect(account.lastRecord).toBe(account.lines[1]?.record);
  });

  it('shows a pass within the family twice, and owes the same', () => {
    const account = accountIn(
      book.ledger([
        book.movement('handover', { seller: 'ada', lines: { honey: 10 } }),
        book.movement('pass', { from: 'ada', to: 'ben', lines: { honey: 4 } }),
      ]),
    );
    expect(account.lines.map((line) => [line.event, line.seller, line.stillToPay])).toEqual([
      ['goods-out', 'ada', 6000],
      ['passed-on', 'ada', 3600],
      ['received', 'ben', 6000],
    ]);
    expect(
      account.sellers.map((seller) => [seller.stillToPay, seller.held, seller.credit]),
    ).toEqual([
      [3600, { honey: 6 }, { honey: 6 }],
      [2400, { honey: 4 }, { honey: 4 }],
    ]);
  });

  it('takes a bounced cheque and its fee back onto the account', () => {
    const paid = book.movement('payment', { seller: 'ben', tender: 'cheque', cents: 5000 });
    const bounced = book.movement('bounced', { payment: paid.id, fee: 1200, charge: true });
    const account = accountIn(book.ledger([paid, bounced]));
    expect(account.totals.bounced.minor).toBe(5000);
    expect(account.totals.bankFees.minor).toBe(1200);
    expect(account.stillToPay).toBe(1200);
  });

  it('reads online orders of each sort, gift units, refunds and what was given up', () => {
    const account = accountIn(
      book.ledger([
        book.movement('online', {
          order: 'W1',
          seller: 'ada',
          lines: { honey: 2 },
          gifts: { jam: 1 },
          paid: 1850,
          sent: 'post',
        }),
        book.movement('online', {
          order: 'W2',
          seller: 'ada',
          lines: { jam: 2 },
          paid: 1300,
          sent: 'hand',
        }),
        book.movement('gift', { seller: 'ada', lines: { jam: 1 }, from: 'supplier', order: 'W1' }),
        book.movement('refund', { seller: 'ada', cents: 300, tender: 'cash' }),
        book.movement('loss', { seller: 'ada', cents: 100, reason: 'moved away' }),
        book.movement('shareout', { pool: 'post', lines: { ada: { jam: 3 } } }),
      ]),
    );
    expect(account.totals.posted).toEqual({ units: 2, minor: 1200 });
    expect(account.totals.paidOnline.minor).toBe(3150);
    expect(account.totals.gifts).toEqual({ units: 1, minor: 650 });
    expect(account.totals.refunded.minor).toBe(300);
    expect(account.totals.givenUp.minor).toBe(100);
    expect(account.stillToPay).toBe(-1100);
    expect(account.sellers[0]?.credit).toEqual({ honey: 2, jam: 4 });
  });

  it('as of a day leaves later lines out', () => {
    const ledger = book.ledger([
      book.movement('handover', { seller: 'ada', lines: { honey: 2 } }),
      book.movement('payment', { date: '2027-02-03', seller: 'ada', tender: 'cash', cents: 500 }),
    ]);
    expect(accountIn(ledger, 'home', FIRST_DAY).stillToPay).toBe(1200);
    expect(accountIn(ledger, 'home', '2027-02-03').stillToPay).toBe(700);
  });

  it('keeps families apart and names one that is not there', () => {
    const other = [
      book.setting('family', { family: 'hill', name: 'Noor Hill', language: 'ar' }),
      book.setting('seller', { seller: 'ivo', name: 'Ivo H.', family: 'hill', active: false }),
      book.movement('handover', { seller: 'ivo', lines: { jam: 1 } }),
    ];
    const ledger = book.ledger(other);
    const accounts = familyAccounts(ledger);
    expect(
      accounts.ok && [...accounts.value].map(([id, { stillToPay }]) => [id, stillToPay]),
    ).toEqual([
      ['hill', 650],
      ['home', 0],
    ]);
    expect(familyAccount(ledger, 'nobody')).toEqual({
      ok: false,
      refusal: { name: 'no_such_family', family: 'nobody' },
    });
  });

  it('refuses sums that cannot be exact', () => {
    const lines = { honey: Number.MAX_SAFE_INTEGER };
    const ledger = book.ledger([book.movement('handover', { seller: 'ada', lines })]);
    expect(familyAccount(ledger, 'home')).toEqual({
      ok: false,
      refusal: { name: 'sums_too_large' },
    });
  });
});

describe('in any book', () => {
  const seller = fc.constantFrom('ada', 'ben');
  const lines = fc.dictionary(fc.constantFrom('honey', 'jam'), fc.integer({ min: 1, max: 40 }), {
    minKeys: 1,
    noNullPrototype: true,
  });
  const cents = fc.integer({ min: 0, max: 90_000 });
  const day = fc.constantFrom(FIRST_DAY, '2027-02-08', '2027-02-15');
  const record: fc.Arbitrary<BookRecord> = fc.oneof(
    fc.record({ date: day, seller, lines }).map((said) => book.movement('handover', said)),
    fc.record({ date: day, seller, lines }).map((said) => book.movement('return', said)),
    fc
      .record({ date: day, from: seller, to: seller, lines })
      .map((said) => book.movement('pass', said)),
    fc
      .record({
        date: day,
        order: fc.constant('W'),
        seller,
        lines,
        paid: cents,
        sent: fc.constantFrom('post' as const, 'hand' as const),
      })
      .map((said) => book.movement('online', said)),
    fc
      .record({
        date: day,
        seller,
        lines,
        from: fc.constantFrom('supplier' as const, 'stockroom' as const),
      })
      .map((said) => book.movement('gift', said)),
    fc
      .record({ date: day, seller, tender: fc.constant('cheque' as const), cents })
      .map((said) => book.movement('payment', said)),
    fc
      .record({ date: day, seller, tender: fc.constant('cash' as const), cents })
      .map((said) => book.movement('refund', said)),
    fc
      .record({ date: day, seller, cents, reason: fc.constant('gone') })
      .map((said) => book.movement('loss', said)),
    fc
      .record({ date: day, lines: fc.dictionary(seller, lines, { noNullPrototype: true }) })
      .map((said) => book.movement('shareout', { ...said, pool: 'post' })),
  );
  const records = fc.array(record, { maxLength: 12 }).chain((made) =>
    fc.record({
      made: fc.constant(made),
      bounces: fc.subarray(made.filter((one) => one.kind === 'payment')),
      removed: fc.subarray(made, { maxLength: Math.min(2, made.length) }),
      newPrice: fc.integer({ min: 1, max: 900 }),
    }),
  );
  const bookOf = fc.record({ parts: records }).map(({ parts }) => [
    ...parts.made,
    ...parts.bounces.map((payment) =>
      book.movement('bounced', { payment: payment.id, fee: 700, charge: true }),
    ),
    ...parts.removed.map((one) => book.remove(one.id)),
    book.setting('product', {
      product: 'honey',
      name: 'honey',
      price: parts.newPrice,
      case: 12,
      from: '2027-02-08',
    }),
  ]);

  it('every total is the balance of the ledger, on every day', () => {
    fc.assert(
      fc.property(bookOf, day, (records, asOf) => {
        const ledger = book.ledger(records);
        for (const date of [undefined, asOf]) {
          const account = accountIn(ledger, 'home', date);
          const balances = date === undefined ? ledger.balances : ledger.asOf(date);
          const owed = balances.moneyOf('owed:ada') + balances.moneyOf('owed:ben');
          expect(account.stillToPay).toBe(owed);
          expect(sentence(account, partSign)).toBe(owed);
        }
      }),
    );
  });

  it('would be caught adding passes the wrong way round', () => {
    const wrong = { ...partSign, passedOn: 1 as const };
    const checked = fc.check(
      fc.property(bookOf, (records) => {
        const account = accountIn(book.ledger(records));
        return sentence(account, wrong) === account.stillToPay;
      }),
      { seed: 1 },
    );
    expect(checked.failed).toBe(true);
  });
});

function sentence(account: FamilyAccount, signs: Record<keyof typeof partSign, 1 | -1>): number {
  const parts = Object.keys(partSign) as (keyof typeof partSign)[];
  return parts.reduce((sum, part) => sum + signs[part] * account.totals[part].minor, 0);
}
