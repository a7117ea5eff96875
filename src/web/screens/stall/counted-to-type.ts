import type { Ledger } from '../../../ledger/ledger.ts';
import { sheetSettlement } from '../../../questions/stall/sheet-settlement.ts';
import type { StallSheet } from '../../../questions/stall/stall-sheet.ts';
import type { RecordOf } from '../../../records/record.ts';
import { type StallTyped, stallToType } from './stall-typed.ts';

/** What the stall's counts come to, in the settle sheet's form; undefined before they are there. */
export function countedToType(
  sheet: StallSheet,
  { stall, starts }: RecordOf<'stall'>,
  ledger: Ledger,
  currency: string,
): StallTyped | undefined {
  const draft = sheetSettlement(sheet, stall, starts.slice(0, 10));
  if (typeof draft === 'string') return undefined;
  const last = sheet.closing.entries.at(-1);
  const [first, second] = last?.names ?? [];
  const close = { id: '', at: '', by: '', kind: 'stall-close' as const, cash: 0, ...draft };
  const typed = stallToType(close, ledger, currency);
  const notes = sheet.closing.entries.flatMap(({ note }) => note ?? []);
  return {
    ...typed,
    cash: draft.tally === undefined ? typed.cash : '',
    counters: [first ?? '', second ?? ''],
    note: notes.join(' ').slice(0, 500),
  };
}
