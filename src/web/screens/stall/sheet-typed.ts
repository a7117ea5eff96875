import type { Ledger } from '../../../ledger/ledger.ts';
import { tallied } from '../../../questions/denominations.ts';
import type { StallDraft } from '../../../questions/stall-settlement.ts';
import type { FieldError } from '../../parts/notice.tsx';
import { say } from '../../say.ts';
import type { SheetPart } from './sheet-form.tsx';
import { readStall, type StallTyped } from './stall-typed.ts';
import type { EntryParts } from './use-sheet.ts';

/** A step's form as numbers; minor units, units. */
export interface PartRead {
  readonly draft: StallDraft;
  readonly cash: number;
  readonly errors: readonly FieldError[];
}

export function readPart(
  part: SheetPart,
  stall: string,
  typed: StallTyped,
  ledger: Ledger,
  currency: string,
): PartRead {
  const { draft, errors } = readStall(stall, typed, ledger, currency);
  const cash = draft.tally === undefined ? (draft.cash ?? 0) : tallied(draft.tally);
  return { draft, cash, errors: [...errors, ...missing(part, draft, cash, typed)] };
}

function missing(
  part: SheetPart,
  { out }: StallDraft,
  cash: number,
  { counters }: StallTyped,
): FieldError[] {
  if (part === 'brought' && Object.keys(out).length === 0) {
    return [{ field: 'out', words: say`Write what was brought.` }];
  }
  if (part !== 'drop') return [];
  const [gave, holds] = counters.map((name) => name.trim());
  return [
    ...(cash === 0 ? [{ field: 'cash', words: say`Count the cash that is taken away.` }] : []),
    ...(gave === '' ? [{ field: 'names.0', words: say`Write who gives the cash away.` }] : []),
    ...(holds === '' || gave === holds
      ? [{ field: 'names.1', words: say`Write who holds it now: another adult.` }]
      : []),
  ];
}

/** The line of the sheet that a form without errors makes. */
export function entryOf(part: SheetPart, { draft, cash }: PartRead, typed: StallTyped): EntryParts {
  const names = typed.counters.map((name) => name.trim()).filter((name) => name !== '');
  const { tally, damaged = {}, paidout = 0, cards, cheques } = draft;
  const note = typed.note.trim();
  const money = tally === undefined ? { cents: cash } : { pieces: { ...tally } };
  return {
    ...(part === 'drop' ? {} : { lines: part === 'count' ? draft.back : draft.out }),
    ...(part === 'brought' ? {} : money),
    ...(part === 'count' ? { cards, cheques, ...(paidout > 0 ? { paidout } : {}) } : {}),
    ...(Object.keys(damaged).length > 0 ? { damaged } : {}),
    ...(names.length > 0 && part !== 'brought' ? { names } : {}),
    ...(note === '' ? {} : { note }),
  };
}
