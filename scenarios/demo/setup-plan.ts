import type { PlannedDay, PlannedRecord } from '../planned.ts';

/** Who and what the demo season is about: everything here is invented. */

const season: PlannedRecord[] = [
  {
    kind: 'season',
    name: 'Spring 2027',
    currency: 'USD',
    starts: '2027-02-01',
    ends: '2027-04-04',
    group: 'Wrenfield Young Rowers',
    ask: 'Jo Penrose',
    sharing: { weights: 'minutes', method: 'remainder', lift: true },
    deadlines: [
      { deadline: 'orders', name: 'First orders handed in', date: '2027-02-04' },
      { deadline: 'debit-1', name: 'First debit by the supplier', date: '2027-03-05' },
      { deadline: 'debit-2', name: 'Second debit by the supplier', date: '2027-03-26' },
      { deadline: 'money-in', name: 'Last day for families to pay', date: '2027-03-29' },
      { deadline: 'choices', name: 'Prize choices handed in', date: '2027-03-30' },
      { deadline: 'debit-3', name: 'Last debit by the supplier', date: '2027-04-01' },
    ],
  },
  {
    kind: 'proceeds',
    basis: 'average',
    steps: [
      { from: 0, cents: 90 },
      { from: 40, cents: 105 },
      { from: 60, cents: 120 },
    ],
    waiver: { cents: 10 },
  },
];

const JAR = 'Cool and dark; glass, carry upright';
const DRY = 'Dry and closed; keep off the floor';

const products: PlannedRecord[] = [
  {
    kind: 'product',
    product: 'honey',
    name: 'Wildflower honey',
    price: 800,
    case: 12,
    storage: JAR,
  },
  { kind: 'product', product: 'jam', name: 'Strawberry jam', price: 650, case: 12, storage: JAR },
  {
    kind: 'product',
    product: 'marmalade',
    name: 'Bitter orange marmalade',
    price: 675,
    case: 12,
    storage: JAR,
  },
  { kind: 'product', product: 'chutney', name: 'Apple chutney', price: 600, case: 6, storage: JAR },
  { kind: 'product', product: 'granola', name: 'Oat granola', price: 950, case: 8, storage: DRY },
  {
    kind: 'product',
    product: 'granola-nut',
    name: 'Hazelnut granola',
    price: 1050,
    case: 8,
    storage: `${DRY}; contains nuts`,
  },
  {
    kind: 'product',
    product: 'tea-mint',
    name: 'Mint tea',
    price: 500,
    case: 20,
    returnable: true,
    storage: DRY,
  },
  { kind: 'product', product: 'tea-berry', name: 'Berry tea', price: 525, case: 20, storage: DRY },
];

const families: PlannedRecord[] = [
  { kind: 'family', family: 'adeyemi', name: 'Folasade Adéyẹmí', contact: 'adeyemi@example.org' },
  { kind: 'family', family: 'bergstrom', name: 'Zoë Bergström', language: 'sv' },
  { kind: 'family', family: 'castillo', name: 'Nuño Castillo', language: 'es' },
  { kind: 'family', family: 'farkas', name: 'Ödön Farkas', language: 'hu' },
  { kind: 'family', family: 'li', name: '李明', language: 'zh-Hans' },
  { kind: 'family', family: 'haddad', name: 'عمر حداد', language: 'ar' },
  { kind: 'family', family: 'okafor', name: 'Chidi Okafor', contact: 'okafor@example.org' },
  { kind: 'family', family: 'marsh', name: 'Robin Marsh', contact: 'marsh@example.org' },
  { kind: 'family', family: 'novak', name: 'Jana Nováková', language: 'cs' },
  { kind: 'family', family: 'pereira', name: 'João Pereira', language: 'pt' },
  { kind: 'family', family: 'winter', name: 'Sam Winter', contact: 'winter@example.org' },
];

const sellers: PlannedRecord[] = [
  { kind: 'seller', seller: 'tobi', name: 'Tobi A.', family: 'adeyemi', goal: 70, active: true },
  {
    kind: 'seller',
    seller: 'linnea',
    name: 'Linnea B.',
    family: 'bergstrom',
    goal: 40,
    active: true,
  },
  { kind: 'seller', seller: 'otto', name: 'Otto B.', family: 'bergstrom', goal: 40, active: true },
  { kind: 'seller', seller: 'ines', name: 'Inés C.', family: 'castillo', goal: 70, active: true },
  { kind: 'seller', seller: 'reka', name: 'Réka F.', family: 'farkas', goal: 70, active: true },
  { kind: 'seller', seller: 'mei', name: 'Mei L.', family: 'li', goal: 70, active: true },
  { kind: 'seller', seller: 'jun', name: 'Jun L.', family: 'li', active: true },
  { kind: 'seller', seller: 'layla', name: 'Layla H.', family: 'haddad', goal: 70, active: true },
  {
    kind: 'seller',
    seller: 'chidera',
    name: 'Chidera O.',
    family: 'okafor',
    goal: 40,
    active: true,
  },
  { kind: 'seller', seller: 'ada', name: 'Ada M.', family: 'marsh', goal: 110, active: true },
  { kind: 'seller', seller: 'petr', name: 'Petr N.', family: 'novak', active: true },
  { kind: 'seller', seller: 'bia', name: 'Bia P.', family: 'pereira', goal: 40, active: true },
  { kind: 'seller', seller: 'rui', name: 'Rui P.', family: 'pereira', goal: 40, active: true },
  { kind: 'seller', seller: 'noa', name: 'Noa W.', family: 'winter', goal: 70, active: true },
];

const places: PlannedRecord[] = [
  { kind: 'host', host: 'market', name: 'Wrenfield market hall' },
  { kind: 'host', host: 'bakery', name: 'Fenn Street bakery' },
  { kind: 'host', host: 'garden', name: 'Orchard Road garden shop' },
  { kind: 'neighbour', neighbour: 'fernhill', name: 'Fernhill Young Rowers' },
  { kind: 'neighbour', neighbour: 'millbrook', name: 'Millbrook Young Sailors' },
];

const prizes: PlannedRecord[] = [
  { kind: 'level', level: 'patch', units: 15, prize: 'Season patch' },
  { kind: 'level', level: 'bottle', units: 40, prize: 'Water bottle', choices: ['Blue', 'Green'] },
  {
    kind: 'level',
    level: 'shirt',
    units: 60,
    prize: 'Club shirt',
    choices: ['Youth S', 'Youth M', 'Youth L', 'Adult S'],
  },
  {
    kind: 'level',
    level: 'day',
    units: 100,
    prize: 'Day on the lake, in place of the others',
    each: false,
  },
];

/** The first evening: the season is set up. */
export const setupDay: PlannedDay = {
  day: '2027-02-01',
  records: [...season, ...products, ...families, ...sellers, ...places, ...prizes],
};
