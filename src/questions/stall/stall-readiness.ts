import type { Ledger } from '../../ledger/ledger.ts';
import type { RecordOf } from '../../records/record.ts';
import type { StallEntry } from '../../records/stall-entry.ts';
import { countersNotice } from '../counters.ts';
import { type ShiftCover, shiftCover } from './shift-cover.ts';

/** The points of a readiness card that are answered in words or ticked off. */
export const cardTexts = ['host', 'holder', 'stop'] as const;
export const cardTicks = ['unload', 'traffic', 'water'] as const;
export type CardText = (typeof cardTexts)[number];
export type CardTick = (typeof cardTicks)[number];

export interface StallReadiness {
  /** Two adults of two households, as far as the book can tell. */
  readonly adults: boolean;
  readonly cover: ShiftCover;
  /** Points without an answer, in the order of the card. */
  readonly missing: readonly ('adults' | 'shifts' | CardText | CardTick)[];
}

/**
 * Whether a stall is ready to open by its card. It refuses nothing: local rules and the adults who
 * are there decide.
 */
export function stallReadiness(
  ledger: Ledger,
  stall: RecordOf<'stall'>,
  ready: Pick<StallEntry, 'names' | 'card'> | undefined,
): StallReadiness {
  const [first = '', second = ''] = ready?.names ?? [];
  const adults = countersNotice(ledger, first, second) === 'two';
  const cover = shiftCover(stall);
  const card = ready?.card ?? {};
  const open = [...cardTexts, ...cardTicks].filter((point) => (card[point] ?? '').trim() === '');
  return {
    adults,
    cover,
    missing: [
      ...(adults ? [] : (['adults'] as const)),
      ...(cover.gaps.length === 0 ? [] : (['shifts'] as const)),
      ...open,
    ],
  };
}
