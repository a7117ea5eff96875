import type { Weighting } from '../../../questions/share/pool-weights.ts';
import type { ShareMethod } from '../../../questions/share/share-out.ts';
import type { SheetChanges } from '../../../questions/share/share-sheet.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { typedWhole } from '../../parts/typed.ts';

/** Units as typed, by seller and product; a cell that is here is locked. */
export type LockedTyped = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** A share-out sheet as a person left it. */
export interface SheetTyped {
  readonly by: Weighting | 'hand';
  readonly method: ShareMethod;
  /** Weights as typed, by seller, where they are set by hand. */
  readonly byHand: Readonly<Record<string, string>>;
  readonly locked: LockedTyped;
  /** Sellers listed beside those with a weight. */
  readonly also: readonly string[];
}

/** The sheet as numbers; what is no whole number is named and left unlocked. */
export function readSheet(typed: SheetTyped): {
  readonly changes: SheetChanges;
  readonly errors: readonly FieldError[];
} {
  const errors: FieldError[] = [];
  const whole = (text: string, field: string): number | undefined => {
    const read = typedWhole(text);
    if (!read.ok) errors.push({ field, words: read.refusal });
    return read.ok ? read.value : undefined;
  };
  const locked: Record<string, Record<string, number>> = {};
  for (const [seller, cells] of Object.entries(typed.locked)) {
    for (const [product, text] of Object.entries(cells)) {
      // A cell that was emptied to be typed anew is not locked meanwhile.
      if (text.trim() === '') continue;
      const units = whole(text, cellField(seller, product));
      if (units !== undefined) locked[seller] = { ...locked[seller], [product]: units };
    }
  }
  if (typed.by !== 'hand') return { changes: { locked, also: typed.also }, errors };
  const byHand: Record<string, number> = {};
  for (const [seller, text] of Object.entries(typed.byHand)) {
    byHand[seller] = whole(text, weightField(seller)) ?? 0;
  }
  return { changes: { locked, also: typed.also, byHand }, errors };
}

export function cellField(seller: string, product: string): string {
  return `share.${product}.${seller}`;
}

export function weightField(seller: string): string {
  return `weight.${seller}`;
}

/** The cells with one set to a text, or let go of where there is none. */
export function withCell(
  locked: LockedTyped,
  seller: string,
  product: string,
  text: string | undefined,
): LockedTyped {
  const { [product]: _before, ...others } = locked[seller] ?? {};
  return { ...locked, [seller]: text === undefined ? others : { ...others, [product]: text } };
}

export function lockedCount(locked: LockedTyped): number {
  return Object.values(locked).reduce((sum, cells) => sum + Object.keys(cells).length, 0);
}
