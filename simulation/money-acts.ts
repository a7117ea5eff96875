import type { SeasonWorld } from './season-world.ts';

/** The acts that move money alone. */

export function pay(world: SeasonWorld): void {
  const { random } = world;
  const seller = random.pick(world.sellers);
  const owed = world.owedBySeller.get(seller) ?? 0;
  const cents = owed > 0 && random.chance(70) ? owed : random.whole(1, 80) * 100;
  const tender = random.pick(['cash', 'cash', 'cheque', 'card'] as const);
  world.owe(seller, -cents);
  if (tender === 'card') world.cardsMinor += cents;
  else world.cashboxMinor += cents;
  world.write('payment', {
    date: world.dayOfFact(),
    seller,
    tender,
    cents,
    receipt: `R-${world.records.length}`,
  });
}

export function refund(world: SeasonWorld): void {
  const seller = world.random.pick(world.sellers);
  const cents = world.random.whole(1, 20) * 50;
  world.owe(seller, cents);
  const tender = world.random.pick(['cash', 'cheque', 'card'] as const);
  world.write('refund', { date: world.day, seller, cents, tender });
}

export function deposit(world: SeasonWorld): void {
  const cents = Math.max(0, world.cashboxMinor);
  world.cashboxMinor = 0;
  const payment = world.recent('payment');
  const items = payment === undefined ? {} : { items: [payment.id] };
  world.write('deposit', { date: world.dayOfFact(), cents, ...items });
}

export function settleCards(world: SeasonWorld): void {
  const all = Math.max(0, world.cardsMinor);
  const fee = Math.floor(all / 50);
  world.cardsMinor = 0;
  const to = world.random.pick(['bank', 'bank', 'supplier'] as const);
  world.write('card-settle', { date: world.dayOfFact(), cents: all - fee, fee, to });
}

export function takeDebit(world: SeasonWorld): void {
  const cents = world.random.whole(10, 900) * 100;
  const announced = world.random.chance(60) ? { announced: cents } : {};
  world.write('debit', { date: world.day, cents, ...announced });
}

export function returnDebit(world: SeasonWorld): void {
  const debit = world.recent('debit');
  if (debit === undefined) return;
  const fee = world.random.chance(60) ? { fee: 1_500 } : {};
  world.write('debit-returned', { date: world.day, debit: debit.id, ...fee });
}

export function chargeBankFee(world: SeasonWorld): void {
  world.write('bank-fee', { date: world.day, cents: world.random.whole(1, 30) * 10 });
}

/** A cheque comes back, with or without a fee, charged to the family or not. */
export function bounce(world: SeasonWorld): void {
  const payment = world.recent('payment');
  if (payment === undefined) return;
  const fee = world.random.chance(60) ? { fee: 1_200 } : {};
  const charge = world.random.chance(50) ? { charge: world.random.chance(70) } : {};
  world.write('bounced', { date: world.day, payment: payment.id, ...fee, ...charge });
}

export function giveUpDebt(world: SeasonWorld): void {
  world.write('loss', {
    date: world.day,
    seller: world.random.pick(world.sellers),
    cents: world.random.whole(1, 40) * 25,
    reason: 'Moved away, agreed by two',
  });
}

export function settleProceeds(world: SeasonWorld): void {
  world.write('settle', { date: world.day, proceeds: world.random.whole(0, 900) * 100 });
}
