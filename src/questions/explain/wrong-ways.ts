import { addDays } from '../../base/day.ts';
import type { MovementRecord } from '../../records/record.ts';
import { errorModel, type Sort } from './error-model.ts';
import type { Taking } from './hypothesis.ts';
import { numberFields } from './number-fields.ts';
import { NEAR_DAYS, type Situation } from './situation.ts';

/** Names and numbers are right, and the record is of the wrong kind, tender, source or day. */
export function wrongWays(situation: Situation, taking: Taking): void {
  for (const record of situation.entries) {
    if (taking.isWhole && GOODS.has(record.kind) && situation.isSettled(record)) continue;
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

function otherWays(record: MovementRecord, situation: Situation): Way[] {
  switch (record.kind) {
    case 'handover':
    case 'return':
      return goodsWays(record);
    case 'swap-in':
      return [['wrong-way', { ...record, kind: 'swap-out' }]];
    case 'swap-out':
      return [['wrong-way', { ...record, kind: 'swap-in' }]];
    case 'delivery':
      return [...situation.ledger.setup.neighbours.keys()].map((neighbour) => [
        'wrong-way',
        {
          ...bare(record, ['depot', 'lots', 'short']),
          kind: 'swap-in',
          neighbour,
        } as MovementRecord,
      ]);
    case 'pass':
      return [['wrong-way', { ...record, from: record.to, to: record.from }]];
    case 'payment':
      return [
        ...otherTenders(record),
        ['wrong-way', { ...bare(record, ['receipt']), kind: 'refund' } as MovementRecord],
      ];
    case 'refund':
      return [...otherTenders(record), ['wrong-way', { ...record, kind: 'payment' }]];
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
    case 'found':
      return [['wrong-way', { ...record, kind: 'loss' }]];
    case 'loss':
      return record.lines === undefined
        ? []
        : [['wrong-way', { ...record, kind: 'found', lines: record.lines } as MovementRecord]];
    case 'stall-close':
      return [
        [
          'wrong-way',
          { ...record, cash: record.cards + record.float, cards: record.cash - record.float },
        ],
        ['wrong-tender', { ...record, cheques: record.cards, cards: record.cheques }],
      ].filter(([, becomes]) => (becomes as { cards: number }).cards >= 0) as unknown as Way[];
    default:
      return [];
  }
}

function goodsWays(record: MovementRecord & { kind: 'handover' | 'return' }): Way[] {
  if (record.kind === 'return') return [['wrong-way', { ...record, kind: 'handover' }]];
  return [['wrong-way', { ...bare(record, ['slip']), kind: 'return' } as MovementRecord]];
}

/** The record without fields that its other kind does not have. */
function bare(record: MovementRecord, fields: readonly string[]): object {
  return Object.fromEntries(Object.entries(record).filter(([field]) => !fields.includes(field)));
}

function otherTenders(record: MovementRecord & { kind: 'payment' | 'refund' }): Way[] {
  const tenders = (['cash', 'cheque', 'card'] as const).filter((each) => each !== record.tender);
  return tenders.map((tender) => ['wrong-tender', { ...record, tender }]);
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
      if (record.date < from || record.date > to) continue;
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
