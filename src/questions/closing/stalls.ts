import type { RecordOf } from '../../records/record.ts';
import {
  type ClosingCause,
  type ClosingContext,
  type ClosingItem,
  idsBehind,
  type NextStep,
  unitsLeft,
} from './closing-item.ts';

/** Every stall is settled once, and its credit is shared out. */
export function stallsSettled(context: ClosingContext): readonly ClosingItem[] {
  const closes = context.movements.filter((record) => record.kind === 'stall-close');
  const stalls = new Set([
    ...context.ledger.setup.stalls.keys(),
    ...closes.map((record) => record.stall),
  ]);
  return [...stalls].sort().map((stall) => {
    const own = closes.filter((record) => record.stall === stall);
    return stallItem(context, stall, own);
  });
}

function stallItem(
  context: ClosingContext,
  stall: string,
  closes: readonly RecordOf<'stall-close'>[],
): ClosingItem {
  const base = { item: `stall:${stall}`, group: 'stalls' } as const;
  if (closes.length === 1) return { ...base, ...poolLeft(context, `pool:stall:${stall}`) };
  const settled = closes.length > 1;
  const setup = context.ledger.setup.stalls.get(stall);
  return {
    ...base,
    state: 'open',
    left: poolLeft(context, `pool:stall:${stall}`).left,
    records: settled ? closes.map((record) => record.id) : setup === undefined ? [] : [setup.id],
    cause: { kind: settled ? 'settled_twice' : 'not_settled' },
    next: settled ? 'remove_one_of_the_settlings' : 'settle_the_stall',
  };
}

/** Posted orders and gift units without a seller: their credit is shared out. */
export function poolsShared(context: ClosingContext): readonly ClosingItem[] {
  return ['pool:post', 'pool:gift'].map((pool) => ({
    item: pool,
    group: 'stalls',
    ...poolLeft(context, pool),
  }));
}

function poolLeft(context: ClosingContext, pool: string): Omit<ClosingItem, 'item' | 'group'> {
  const lines = context.ledger.balances.linesOf('credit', pool);
  const records = idsBehind(context, 'credit', pool);
  if (Object.keys(lines).length === 0) {
    const stall = pool.startsWith('pool:stall:');
    const state = records.length === 0 && !stall ? 'not-needed' : 'done';
    return { state, left: {}, records, next: 'nothing' };
  }
  const tooMuch = Object.values(lines).some((units) => units < 0);
  const cause: ClosingCause = { kind: tooMuch ? 'shared_too_much' : 'not_shared' };
  const next: NextStep = tooMuch ? 'correct_the_share_out' : 'share_out_the_pool';
  return { state: 'open', left: { [pool]: unitsLeft(lines) }, lines, records, cause, next };
}
