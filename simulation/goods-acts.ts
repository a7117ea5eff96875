import type { SeasonWorld } from './season-world.ts';

/** The acts that move goods and credit, with the prices that go with them. */

export function handInOrder(world: SeasonWorld): void {
  const lines = world.someLines(8);
  const gifts = world.random.chance(20) ? { gifts: world.someLines(3), paid: 1_500 } : {};
  world.write('order', {
    date: world.dayOfFact(),
    seller: world.random.pick(world.sellers),
    lines,
    ...gifts,
  });
}

export function orderSupply(world: SeasonWorld): void {
  world.write('supply-order', { date: world.day, lines: world.someLines(60), slip: 'W-1' });
}

export function takeDelivery(world: SeasonWorld): void {
  const lines = world.someLines(240);
  world.move(lines, 1);
  const short = world.random.chance(15) ? { short: world.someLines(4) } : {};
  world.write('delivery', { date: world.dayOfFact(), lines, slip: 'L-1', depot: 'Yard', ...short });
}

export function swapIn(world: SeasonWorld): void {
  const lines = world.someLines(24);
  world.move(lines, 1);
  world.write('swap-in', {
    date: world.dayOfFact(),
    neighbour: world.random.pick(world.neighbours),
    lines,
  });
}

export function swapOut(world: SeasonWorld): void {
  const lines = world.someLines(24, world.onShelf);
  world.move(lines, -1);
  world.write('swap-out', {
    date: world.dayOfFact(),
    neighbour: world.random.pick(world.neighbours),
    lines,
  });
}

export function exchange(world: SeasonWorld): void {
  world.write('exchange', { date: world.day, lines: world.someLines(6) });
}

export function handOut(world: SeasonWorld): void {
  const seller = world.random.pick(world.sellers);
  const lines = world.someLines(24, world.onShelf);
  world.move(lines, -1);
  world.owe(seller, world.priceOf(lines));
  world.write('handover', {
    date: world.dayOfFact(),
    seller,
    lines,
    slip: `G-${world.records.length}`,
  });
}

export function takeBack(world: SeasonWorld): void {
  const handover = world.recent('handover');
  if (handover === undefined) return;
  const lines = world.someLines(6, (product) => handover.lines[product] ?? 0);
  world.move(lines, 1);
  world.owe(handover.seller, -world.priceOf(lines));
  world.write('return', { date: world.dayOfFact(), seller: handover.seller, lines });
}

export function passOn(world: SeasonWorld): void {
  const [from, to] = world.random.shuffle(world.sellers);
  if (from === undefined || to === undefined) return;
  const lines = world.someLines(6);
  world.owe(to, world.priceOf(lines));
  world.owe(from, -world.priceOf(lines));
  world.write('pass', { date: world.dayOfFact(), from, to, lines });
}

/** A buyer pays the supplier online: posted or brought, with gifts or not, with a seller or not. */
export function orderOnline(world: SeasonWorld): void {
  const { random } = world;
  const isGift = random.chance(35);
  const lines = isGift && random.chance(50) ? {} : world.someLines(6);
  const gifts = isGift ? world.someLines(6) : {};
  const seller = random.chance(60) ? { seller: random.pick(world.sellers) } : {};
  const order = `O-${world.records.length}`;
  const paid = world.priceOf(lines) + world.priceOf(gifts);
  const sent = random.pick(['post', 'hand'] as const);
  const date = world.dayOfFact();
  const parts = isGift ? { gifts } : {};
  world.write('online', { date, order, ...seller, lines, ...parts, paid, sent });
  if (seller.seller !== undefined) world.owe(seller.seller, -paid);
  else if (sent === 'post') world.pool('post', lines);
  if (isGift && random.chance(80)) recordGift(world, gifts, seller, order);
}

export function giveGift(world: SeasonWorld): void {
  const seller = world.random.chance(50) ? { seller: world.random.pick(world.sellers) } : {};
  recordGift(world, world.someLines(6), seller);
}

function recordGift(
  world: SeasonWorld,
  lines: Record<string, number>,
  seller: { readonly seller?: string },
  order?: string,
): void {
  const from = world.random.pick(['supplier', 'stockroom'] as const);
  if (from === 'stockroom') world.move(lines, -1);
  if (seller.seller !== undefined) world.owe(seller.seller, world.priceOf(lines));
  else world.pool('gift', lines);
  const about = order === undefined ? {} : { order };
  world.write('gift', { date: world.dayOfFact(), ...seller, lines, from, ...about });
}

/** A stall's count and takings: mostly right to the cent, now and then short or over. */
export function closeStall(world: SeasonWorld): void {
  const { random } = world;
  const stall = world.stallsOpen.shift();
  if (stall === undefined) return;
  const out = world.someLines(24, world.onShelf);
  const back: Record<string, number> = {};
  const damaged: Record<string, number> = {};
  const sold: Record<string, number> = {};
  for (const product in out) {
    const taken = out[product] ?? 0;
    damaged[product] = random.chance(10) ? Math.min(1, taken) : 0;
    back[product] = random.whole(0, taken - (damaged[product] ?? 0));
    sold[product] = taken - (back[product] ?? 0) - (damaged[product] ?? 0);
  }
  world.move(sold, -1);
  world.move(damaged, -1);
  world.pool(`stall:${stall}`, sold);
  world.write('stall-close', {
    date: world.day,
    stall,
    out,
    back,
    ...(random.chance(50) ? { damaged } : {}),
    ...stallTakings(world, world.priceOf(sold)),
    counters: ['Robin Marsh', 'Zoë Bergström'],
  });
}

function stallTakings(world: SeasonWorld, value: number) {
  const { random } = world;
  const float = random.pick([0, 2_000, 5_000]);
  const cards = random.whole(0, Math.floor(value / 2));
  const cheques = random.chance(30) ? random.whole(0, value - cards) : 0;
  const paidout = random.chance(15) ? random.whole(0, value - cards - cheques) : 0;
  const slip = random.chance(25) ? random.whole(-300, 300) : 0;
  const cash = Math.max(0, float + value - cards - cheques - paidout + slip);
  world.cashboxMinor += cash - float + cheques;
  world.cardsMinor += cards;
  const tally = random.chance(50) ? { tally: tallyOf(cash) } : {};
  return { float, cash, cards, cheques, ...(paidout > 0 ? { paidout } : {}), ...tally };
}

function tallyOf(cash: number): Record<string, number> {
  const tally: Record<string, number> = {};
  let left = cash;
  for (const worth of [2_000, 500, 100, 25, 1]) {
    tally[worth] = Math.floor(left / worth);
    left %= worth;
  }
  return tally;
}

/** Gives a pool's credit to sellers in turn; sometimes not all of it. */
export function shareOut(world: SeasonWorld): void {
  const names = [...world.pools.keys()];
  if (names.length === 0) return;
  const pool = world.random.pick(names);
  const lines: Record<string, Record<string, number>> = {};
  const sellers = world.random.shuffle(world.sellers).slice(0, 4);
  let turn = 0;
  for (const [product, units] of Object.entries(world.pools.get(pool) ?? {})) {
    for (let unit = 0; unit < units; unit += 1) {
      turn += 1;
      const seller = sellers[turn % sellers.length] ?? '';
      const own = lines[seller] ?? {};
      own[product] = (own[product] ?? 0) + 1;
      lines[seller] = own;
    }
  }
  world.pools.delete(pool);
  world.write('shareout', { date: world.dayOfFact(), pool, lines });
}

export function loseStock(world: SeasonWorld): void {
  const lines = world.someLines(4, world.onShelf);
  world.move(lines, -1);
  world.write('loss', { date: world.dayOfFact(), lines, reason: 'Crushed in the van' });
}

export function findStock(world: SeasonWorld): void {
  const lines = world.someLines(3);
  world.move(lines, 1);
  world.write('found', { date: world.dayOfFact(), lines, reason: 'Behind the shelf' });
}

export function countShelf(world: SeasonWorld): void {
  const counted = world.products.map((product): [string, number] => [
    product,
    Math.max(0, world.onShelf(product) + (world.random.chance(10) ? 1 : 0)),
  ]);
  world.write('count', { date: world.day, lines: Object.fromEntries(counted) });
}
