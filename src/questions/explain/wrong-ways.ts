import { addDays } from '../../base/day.ts';
import type { MovementRecord, RecordOf } from '../../records/record.ts';
import { errorModel, type Sort } from './error-model.ts';
import type { Taking } from './hypothesis.ts';
import { numberFields } from './number-fields.ts';
import { NEAR_DAYS, type Situation } from './situation.ts';
import { isPassedOver } from './taking.ts';

/** Names and numbers are right, and the record is of the wrong kind, tender, source or day. */
export function wrongWays(situation: Situation, taking: Taking): void {
  for (const record of situation.entries) {
    if (situation.isApart(record)) continue;
    if (GOODS.has(record.kind) && isPassedOver(situation, taking, record)) continue;
    if (taking.isWhole && situation.isLineSettled(record)) continue;
    const ways = otherWays(record, situation);
    for (const [sort, becomes] of ways) {
      const effect = situation.effects.change(record, becomes);
      const chance = errorModel[sort].rate / ways.length;
      taking.take(effect, 1, { sort, chance, record, becomes });
    }
  }
  wrongDays(situation, taking);
}

const GOODS: ReadonlySet<string> = new Set(['handover', 'return', 'pass', 'swap-in', 'swap-out']);

type Way = readonly [sort: Sort, becomes: MovementRecord];

/** What a record may have been instead, where its names and numbers are right. */
function otherWays(record: MovementRecord, situation: Situation): Way[] {
  switch (record.kind) {
    case 'payment':
    case 'refund':
      return moneyWays(record);
    case 'gift': {
      const from = record.from === 'supplier' ? 'stockroom' : 'supplier';
      return [['wrong-source', { ...record, from }]];
    }
    case 'online':
      return [['wrong-source', { ...record, sent: record.sent === 'post' ? 'hand' : 'post' }]];
    case 'card-settle':
      return [['wrong-source', { ...record, to: record.to === 'bank' ? 'supplier' : 'bank' }]];
    case 'bounced':
      return [['wrong-source', { ...record, charge: record.charge !== true }]];
    case 'stall-close':
      return stallWays(record);
    default:
      return goodsWays(record, situation);
  }
}

function goodsWays(record: MovementRecord, situation: Situation): Way[] {
  switch (record.kind) {
    case 'handover': {
      const { seller, lines } = record;
      return [['wrong-way', { ...written(record), kind: 'return', seller, lines }]];
    }
    case 'return':
      return [['wrong-way', { ...record, kind: 'handover' }]];
    case 'swap-in':
      return [['wrong-way', { ...record, kind: 'swap-out' }]];
    case 'swap-out':
      return [['wrong-way', { ...record, kind: 'swap-in' }]];
    case 'pass':
      return [['wrong-way', { ...record, from: record.to, to: record.from }]];
    case 'found':
      return [['wrong-way', { ...record, kind: 'loss' }]];
    case 'loss': {
      const { lines, reason } = record;
      if (lines === undefined) return [];
      return [['wrong-way', { ...written(record), kind: 'found', lines, reason }]];
    }
    case 'delivery': {
      const neighbours = [...situation.ledger.setup.neighbours.keys()];
      const says = { ...written(record), kind: 'swap-in', lines: record.lines } as const;
      return neighbours.map((neighbour): Way => ['wrong-way', { ...says, neighbour }]);
    }
    default:
      return [];
  }
}

/** What every record has, for one that becomes another kind. */
function written({ id, at, by, date }: MovementRecord) {
  return { id, at, by, date };
}

function moneyWays(record: RecordOf<'payment'> | RecordOf<'refund'>): Way[] {
  const { seller, tender, cents } = record;
  const kind = record.kind === 'payment' ? 'refund' : 'payment';
  const others = (['cash', 'cheque', 'card'] as const).filter((each) => each !== tender);
  return [
    ...others.map((other): Way => ['wrong-tender', { ...record, tender: other }]),
    ['wrong-way', { ...written(record), kind, seller, tender, cents }],
  ];
}

/** Cash and cards, or cards and cheques, stand in each other's place. */
function stallWays(record: RecordOf<'stall-close'>): Way[] {
  const { cash, float, cards, cheques } = record;
  const ways: Way[] = [['wrong-tender', { ...record, cheques: cards, cards: cheques }]];
  if (cash < float) return ways;
  return [...ways, ['wrong-tender', { ...record, cash: cards + float, cards: cash - float }]];
}

/**
 * A movement that belongs on the other side of the day of the observation, or of a new price.
 */
function wrongDays(situation: Situation, taking: Taking): void {
  const { rate } = errorModel['wrong-day'];
  const records = [...situation.entries, ...situation.later];
  for (const [cut, products] of cutsOf(situation)) {
    const [from, to, before] = [
      addDays(cut, -NEAR_DAYS),
      addDays(cut, NEAR_DAYS),
      addDays(cut, -1),
    ];
    for (const record of records) {
      if (record.date < from || record.date > to || situation.isApart(record)) continue;
      if (products !== undefined && !namesAny(record, products)) continue;
      const becomes = { ...record, date: record.date < cut ? cut : before };
      const effect = situation.effects.change(record, becomes);
      taking.take(effect, 1, { sort: 'wrong-day', chance: rate / 2, record, becomes });
    }
  }
}

/**
 * First days of new prices with the products that get them, and the day after the observation, on
 * which everything counts.
 */
function cutsOf({ day, ledger }: Situation): Map<string, Set<string> | undefined> {
  const cuts = new Map<string, Set<string> | undefined>();
  for (const [product, steps] of ledger.prices) {
    for (const { from } of steps.slice(1)) {
      cuts.set(from, (cuts.get(from) ?? new Set()).add(product));
    }
  }
  if (day !== undefined) cuts.set(addDays(day, 1), undefined);
  return cuts;
}

function namesAny(record: MovementRecord, products: ReadonlySet<string>): boolean {
  return numberFields(record).some(({ product }) => product !== undefined && products.has(product));
}
