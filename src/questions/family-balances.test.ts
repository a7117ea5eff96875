import { describe, expect, it } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { familyBalances } from './family-balances.ts';

const book = testBook({ honey: 800 }, ['ada', 'ben']);
const others = [
  book.setting('family', { family: 'hill', name: 'Anna Hill' }),
  book.setting('seller', { seller: 'cai', name: 'Cai H.', family: 'hill', active: true }),
];

describe('what families have out and still have to pay', () => {
  const ledger = book.ledger([
    ...others,
    book.movement('handover', { seller: 'ada', lines: { honey: 5 } }),
    book.movement('payment', { seller: 'ben', tender: 'cash', cents: 1000 }),
    book.movement('payment', { seller: 'cai', tender: 'cash', cents: 500 }),
  ]);
  const answer = familyBalances(ledger);

  it('adds sellers up to families, by the name of the adult', () => {
    expect(answer.families.map((one) => [one.name, one.unitsOut, one.owes])).toEqual([
      ['Anna Hill', 0, -500],
      ['Robin Home', 5, 3000],
    ]);
    expect(answer.families[1]?.sellers.map((one) => [one.seller, one.owes])).toEqual([
      ['ada', 4000],
      ['ben', -1000],
    ]);
  });

  it('keeps what is to pay apart from what is in credit, and comes to the ledger', () => {
    expect([answer.stillToPay, answer.inCredit, answer.owes]).toEqual([3000, 500, 2500]);
    const owed = ['ada', 'ben', 'cai'].map((id) => ledger.balances.moneyOf(`owed:${id}`));
    expect(owed.reduce((all, one) => all + one, 0)).toBe(answer.owes);
  });

  it('says what stands under sellers that no family has', () => {
    const stray = book.movement('payment', { seller: 'dee', tender: 'cash', cents: 300 });
    const strays = familyBalances(book.ledger([stray]));
    expect([strays.unplaced, strays.owes, strays.inCredit]).toEqual([-300, -300, 0]);
  });
});
