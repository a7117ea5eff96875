import { prizes } from '../prizes.ts';
import type { ClosingContext, ClosingItem } from './closing-item.ts';

/** Every earned prize step with choices has its choice. */
export function prizeChoices(context: ClosingContext): readonly ClosingItem[] {
  const { sellers } = prizes(context.ledger, context.movements);
  const missing = sellers.filter((seller) => seller.missing.length > 0);
  const base = { item: 'prize-choices', group: 'prizes' } as const;
  if (missing.length === 0) {
    const state = sellers.some((seller) => seller.steps.length > 0) ? 'done' : 'not-needed';
    return [{ ...base, state, left: {}, records: [], next: 'nothing' }];
  }
  const left = Object.fromEntries(
    missing.map((seller) => [`choices:${seller.seller}`, seller.missing.length]),
  );
  const levels = new Set(missing.flatMap((seller) => seller.missing));
  const records = [...levels].flatMap((level) => context.ledger.setup.levels.get(level)?.id ?? []);
  return [{ ...base, state: 'open', left, records, next: 'ask_for_the_choices' }];
}

/** Two records that claim to stand for the same one. */
export function conflictsSettled(context: ClosingContext): readonly ClosingItem[] {
  const conflicts = context.ledger.standing.conflicts();
  const base = { item: 'conflicts', group: 'records' } as const;
  if (conflicts.length === 0) {
    return [{ ...base, state: 'not-needed', left: {}, records: [], next: 'nothing' }];
  }
  const records = conflicts.flatMap(({ on, counts, kept }) => [
    on,
    counts.id,
    ...kept.map((record) => record.id),
  ]);
  const left = { conflicts: conflicts.length };
  return [{ ...base, state: 'open', left, records, next: 'choose_which_record_stands' }];
}

/** The season's deadlines, ahead or passed. A date by itself never holds the closing up. */
export function deadlines(context: ClosingContext): readonly ClosingItem[] {
  const season = context.ledger.setup.season;
  if (season === undefined) return [];
  return (season.deadlines ?? []).map((deadline) => ({
    item: `deadline:${deadline.deadline}`,
    group: 'dates',
    state: deadline.date < context.today ? 'done' : 'not-needed',
    left: {},
    records: [season.id],
    next: deadline.date < context.today ? 'nothing' : 'mind_the_date',
  }));
}
