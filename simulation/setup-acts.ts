import { addDays } from '../src/base/day.ts';
import type { SeasonShape, SeasonWorld } from './season-world.ts';

/** The acts that set a season up, and those that change set-up while it runs. */

const NAMES = ['Zoë', 'Nuño', 'Ödön', 'Mei', 'Tobi', 'Inés', 'Réka', 'Jun', 'Ada', 'Petr', 'Rui'];
const FAMILY_NAMES = [
  'Adéyẹmí',
  'Bergström',
  'Farkas',
  '李',
  'حداد',
  'Marsh',
  'Nováková',
  "O'Hara",
];
const CASES = [6, 8, 12, 20, 24];

export function setUp(world: SeasonWorld, shape: SeasonShape): void {
  const { random } = world;
  const last = world.days.at(-1) ?? world.day;
  world.write('season', {
    name: 'Made season',
    currency: random.pick(['USD', 'EUR', 'JPY', 'KWD']),
    starts: world.day,
    ends: last,
    deadlines: [{ deadline: 'debit', name: 'First debit', date: addDays(world.day, 20) }],
  });
  for (let index = 1; index <= shape.products; index += 1) addProduct(world, `product-${index}`);
  for (const host of world.hosts) world.write('host', { host, name: `Shop ${host}` });
  for (const neighbour of world.neighbours) {
    world.write('neighbour', { neighbour, name: `Group of ${neighbour}` });
  }
  for (let index = 1; index <= shape.families; index += 1) addFamily(world, index);
  world.write('level', { level: 'patch', units: 20, prize: 'Patch' });
  world.write('level', { level: 'shirt', units: 60, prize: 'Shirt', choices: ['S', 'M', 'L'] });
  world.write('proceeds', {
    steps: [
      { from: 0, cents: 80 },
      { from: 50, cents: 100 },
    ],
    basis: random.pick(['average', 'total']),
    waiver: { cents: 5 },
  });
}

function addProduct(world: SeasonWorld, product: string): void {
  const { random } = world;
  const price = random.whole(2, 40) * 25;
  world.priceByProduct.set(product, price);
  world.products.push(product);
  const from = random.chance(15) ? { from: addDays(world.day, random.whole(-5, 10)) } : {};
  world.write('product', { product, name: product, price, case: random.pick(CASES), ...from });
}

function addFamily(world: SeasonWorld, index: number): void {
  const { random } = world;
  const family = `family-${index}`;
  world.write('family', { family, name: `${random.pick(NAMES)} ${random.pick(FAMILY_NAMES)}` });
  const children = random.whole(1, 2);
  for (let child = 1; child <= children; child += 1) {
    const seller = `seller-${index}-${child}`;
    world.sellers.push(seller);
    world.write('seller', {
      seller,
      name: `${random.pick(NAMES)} ${String.fromCharCode(65 + (index % 26))}.`,
      family,
      goal: random.whole(20, 120),
      active: true,
    });
  }
}

export function planStall(world: SeasonWorld): void {
  const { random } = world;
  const stall = `stall-${world.records.length}`;
  const shifts = random
    .shuffle(world.sellers)
    .slice(0, random.whole(1, 4))
    .map((seller) => ({ seller, from: '09:00', to: random.pick(['11:00', '12:30', '14:00']) }));
  world.stallsOpen.push(stall);
  world.write('stall', {
    stall,
    host: random.pick(world.hosts),
    starts: `${world.day}T09:00`,
    ends: `${world.day}T14:00`,
    shifts,
  });
}

/** A new price from a day on: mostly ahead, sometimes today or in the past, sometimes the same. */
export function changePrice(world: SeasonWorld): void {
  const { random } = world;
  const product = random.pick(world.products);
  const old = world.priceByProduct.get(product) ?? 0;
  const price = random.chance(20) ? old : Math.max(1, old + random.whole(-3, 3) * 25);
  world.priceByProduct.set(product, price);
  const days = random.pick([0, 0, 1, 3, 7, -4]);
  const from = addDays(world.day, days);
  world.write('product', { product, name: product, price, case: random.pick(CASES), from });
}

/** Set-up that is written again: by id the latest counts, whether or not it says `replaces`. */
export function rewriteSetup(world: SeasonWorld): void {
  const { random } = world;
  const seller = world.recent('seller');
  const product = world.recent('product');
  const season = world.recent('season');
  const level = world.recent('level');
  if (random.chance(10) && level !== undefined) {
    world.edit(level, { units: level.units + 5, choices: ['S', 'L'] });
  } else if (random.chance(60) && seller !== undefined) {
    world.edit(seller, { active: random.chance(80), goal: random.whole(10, 90) });
  } else if (random.chance(70) && product !== undefined) {
    world.edit(product, { price: Math.max(1, product.price + random.whole(-2, 2) * 25) });
  } else if (season !== undefined) {
    const starts = addDays(season.starts, random.whole(0, 3));
    if (random.chance(50)) world.edit(season, { starts });
    else
      world.write('season', {
        name: 'Made season',
        currency: season.currency,
        starts,
        ends: season.ends,
      });
  }
}

export function choosePrize(world: SeasonWorld): void {
  const seller = world.random.pick(world.sellers);
  world.write('choice', { seller, level: 'shirt', choice: world.random.pick(['S', 'M', 'L']) });
}

export function holdProduct(world: SeasonWorld): void {
  const product = world.random.pick(world.products);
  const lot = world.random.chance(50) ? { lot: `L-${world.random.whole(1, 9)}` } : {};
  const hold = world.write('hold', { product, reason: 'The supplier asks to wait', ...lot });
  if (world.random.chance(70)) world.edit(hold, { lifted: true });
}
