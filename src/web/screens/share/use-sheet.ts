import { useCallback, useMemo, useRef, useState } from 'preact/hooks';
import { type PoolShare, poolShare } from '../../../questions/share/pool-share.ts';
import { type ShareSheet, shareSheet } from '../../../questions/share/share-sheet.ts';
import { type ShareCheck, shareCheck } from '../../../questions/share-check.ts';
import { productName, sellerName } from '../../../statements/account-name.ts';
import { type ShareNames, sheetRefusalWords } from '../../../statements/share-words.ts';
import { useBook } from '../../book.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import type { OnCell } from './share-cell.tsx';
import { readSheet, type SheetTyped, withCell } from './sheet-typed.ts';

/** A share-out sheet while a person works on it. */
export interface OpenSheet {
  readonly pool: PoolShare;
  readonly typed: SheetTyped;
  readonly onTyped: (typed: SheetTyped) => void;
  /** The same function as long as the sheet is open. */
  readonly onCell: OnCell;
  /** As worked out last; what is locked may have changed since, see `refusal`. */
  readonly sheet: ShareSheet | undefined;
  /** What is left as the cells stand now. */
  readonly check: ShareCheck;
  /** Why nothing can be shared around the locked cells, in words. */
  readonly refusal: string | undefined;
  /** Cells and weights that are no whole numbers. */
  readonly errors: readonly FieldError[];
  readonly names: ShareNames;
}

export function useSheet(pool: string, start: PoolShare): OpenSheet {
  const { ledger } = useBook();
  const { by, method } = start;
  const [typed, onTyped] = useState<SheetTyped>({ by, method, byHand: {}, locked: {}, also: [] });
  const onCell = useCallback<OnCell>((seller, product, text) => {
    onTyped((now) => ({ ...now, locked: withCell(now.locked, seller, product, text) }));
  }, []);
  const chosen = useChosen(pool, typed, start);
  const { changes, errors } = readSheet(typed);
  const worked = shareSheet(chosen, changes);
  const last = useRef<ShareSheet | undefined>(undefined);
  if (worked.ok) last.current = worked.value;
  const names = {
    seller: (id: string) => sellerName(ledger.setup, id),
    product: (id: string) => productName(ledger.setup, id),
  };
  return {
    pool: chosen,
    typed,
    onTyped,
    onCell,
    sheet: last.current,
    check: worked.ok ? worked.value.check : shareCheck(chosen.products, changes.locked),
    refusal: worked.ok ? undefined : sheetRefusalWords(worked.refusal, names, say),
    errors,
    names,
  };
}

/** The pool with the weights and rule as chosen; the season's fairness is worked out only then. */
function useChosen(pool: string, { by, method }: SheetTyped, start: PoolShare): PoolShare {
  const { ledger, version } = useBook();
  return useMemo(() => {
    const chosen = poolShare(ledger, pool, { by: by === 'hand' ? undefined : by, method });
    return chosen.ok ? chosen.value : start;
  }, [ledger, version.value, pool, by, method]);
}
