import { closeSync, openSync, writeSync } from 'node:fs';
import { makeSeason } from '../simulation/season-maker.ts';
import { writeBook } from '../src/intake/write-book.ts';
import { Ledger } from '../src/ledger/ledger.ts';
import type { Header } from '../src/records/header.ts';
import { exportAccounts } from '../src/statements/export-accounts.ts';

/** Makes a large book of one association's size: hundreds of families, a season of busy days. */
export const largeHeader: Header = { book: 'cratebook/1', group: 'large', season: 'spring-2027' };

const SHAPE = { families: 400, products: 12, days: 63, changesPercent: 3 };

/** Writes the book and its exported journal; gives how many records the book has. */
export function writeLargeBook(recordCount: number, bookPath: string, journalPath: string): number {
  const records = makeSeason(1, { ...SHAPE, actsADay: recordCount / SHAPE.days });
  writePieces(bookPath, writeBook(largeHeader, records));
  writePieces(journalPath, exportAccounts(largeHeader, Ledger.of(records)));
  return records.length;
}

function writePieces(path: string, pieces: Iterable<string>): void {
  const file = openSync(path, 'w');
  let held = '';
  for (const piece of pieces) {
    held += piece;
    if (held.length < 1_000_000) continue;
    writeSync(file, held);
    held = '';
  }
  writeSync(file, held);
  closeSync(file);
}
