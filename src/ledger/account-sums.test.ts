import fc from 'fast-check';
import { expect, it } from 'vitest';
import { AccountSums, type PackedSums } from './account-sums.ts';
import { Balances } from './balances.ts';
import type { Mover } from './posting.ts';

/** Sums of parts of a book, put together, are the sums of the whole. */

interface Move {
  readonly ledger: 'stock' | 'money' | 'credit';
  readonly product: string;
  readonly amount: number;
  readonly from: string;
  readonly to: string;
}

const name = fc.constantFrom('stockroom', 'seller:ada', 'seller:bo', 'lost');
const move: fc.Arbitrary<Move> = fc.record({
  ledger: fc.constantFrom('stock', 'money', 'credit'),
  product: fc.constantFrom('honey', 'jam', 'tea'),
  amount: fc.integer({ min: -1000, max: 1000 }),
  from: name,
  to: name,
});

function take(into: Mover, { ledger, product, amount, from, to }: Move): void {
  if (ledger === 'money') into.money(amount, from, to);
  else into[ledger](product, amount, from, to);
}

/** @param handOver what becomes of a part's sums on their way */
const addsUp = (handOver: (packed: PackedSums) => PackedSums) =>
  fc.property(fc.array(move), fc.array(move), (one, other) => {
    const [whole, own, part] = [new Balances(), new AccountSums(), new AccountSums()];
    for (const each of [...one, ...other]) take(whole, each);
    for (const each of one) take(own, each);
    for (const each of other) take(part, each);
    own.add(handOver(structuredClone(part.packed())));
    expect(Balances.of(own).toAccounts()).toEqual(whole.toAccounts());
    expect(own.moved).toBe(
      [...one, ...other].reduce((sum, { amount }) => sum + Math.abs(amount), 0),
    );
  });

it('sums of two parts, put together, are those of all their moves', () => {
  fc.assert(addsUp((packed) => packed));
});

it('teeth: a part that names its products in another order is caught', () => {
  const turned = addsUp((packed) => ({ ...packed, products: [...packed.products].reverse() }));
  expect(fc.check(turned).failed).toBe(true);
});
