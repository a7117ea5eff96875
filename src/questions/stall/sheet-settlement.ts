import { sum } from '../../base/sum.ts';
import type { RecordOf } from '../../records/record.ts';
import { unitsOf } from '../../records/units-of.ts';
import { tallied } from '../denominations.ts';
import type { StallDraft } from '../stall-settlement.ts';
import { addedLines, type StallSheet } from './stall-sheet.ts';

/** Why a sheet cannot fill in a settlement yet, by what is to do. */
export type NotYet = 'count-first' | 'choose-first';

/**
 * The settlement that follows from a sheet's counts: out is the opening count with what was
 * brought, cash the box with the drops, since both were taken at the stall. What was tapped as sold
 * fills nothing in: it stands beside.
 */
export function sheetSettlement(
  sheet: StallSheet,
  stall: string,
  date: string,
): StallDraft | NotYet {
  const { opening, closing, drops } = sheet;
  if (closing.entries.length === 0) return 'count-first';
  if (opening.toChoose || closing.toChoose) return 'choose-first';
  const inPieces = [...closing.entries, ...drops].every(({ cents }) => cents === undefined);
  const last = (part: 'cards' | 'cheques' | 'paidout') =>
    sum(closing.entries.map((entry) => entry[part] ?? 0));
  return {
    stall,
    date,
    out: sheet.out,
    back: closing.lines,
    damaged: closing.damaged,
    float: opening.cash,
    cards: last('cards'),
    cheques: last('cheques'),
    paidout: last('paidout'),
    ...(inPieces
      ? {
          tally: addedLines([
            { lines: closing.pieces },
            ...drops.map(({ pieces }) => ({ lines: pieces })),
          ]),
        }
      : { cash: closing.cash + sheet.dropped }),
  };
}

/**
 * True where a settled stall and its sheet say different goods or cash: a phone may have handed in
 * more after the settling, or a person knew better than the sheet.
 */
export function sheetSaysElse(sheet: StallSheet, close: RecordOf<'stall-close'>): boolean {
  const draft = sheetSettlement(sheet, close.stall, close.date);
  if (typeof draft === 'string') return false;
  const cash = draft.tally === undefined ? draft.cash : tallied(draft.tally);
  const differs = (part: 'out' | 'back' | 'damaged') =>
    [...Object.keys(draft[part] ?? {}), ...Object.keys(close[part] ?? {})].some(
      (product) => unitsOf(draft[part], product) !== unitsOf(close[part], product),
    );
  return cash !== close.cash || differs('out') || differs('back') || differs('damaged');
}
