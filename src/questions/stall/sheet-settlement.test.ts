import { describe, expect, it } from 'vitest';
import { testBook } from '../../ledger/test-book.ts';
import { stallSettlement } from '../stall-settlement.ts';
import { sheetEntries } from './sheet-entries.ts';
import { sheetSaysElse, sheetSettlement } from './sheet-settlement.ts';
import { stallReadiness } from './stall-readiness.ts';
import { stallSheet } from './stall-sheet.ts';
import { pen } from './test-entries.ts';

const on = pen('K7M');
const opening = on.write('open', { lines: { honey: 10, jam: 6 }, pieces: { '500': 4 } });
const brought = on.write('brought', { lines: { jam: 6 } });
const drop = on.write('drop', { pieces: { '2000': 2 }, names: ['Ann Holt', 'Sam Winter'] });
const closing = on.write('count', {
  lines: { honey: 3, jam: 7 },
  damaged: { jam: 1 },
  pieces: { '500': 5, '2000': 1 },
  cards: 4000,
  cheques: 0,
  names: ['Ann Holt', 'Sam Winter'],
});
const book = testBook({ honey: 800, jam: 650 }, ['ada']);

describe('a settlement from the sheet of a stall', () => {
  it('takes goods brought into what was out, and drops into the cash', () => {
    const draft = sheetSettlement(
      stallSheet([opening, brought, drop, closing]),
      'quay',
      '2027-02-01',
    );
    if (typeof draft === 'string') throw new Error(draft);
    expect(draft).toMatchObject({
      out: { honey: 10, jam: 12 },
      back: { honey: 3, jam: 7 },
      damaged: { jam: 1 },
      float: 2000,
      cards: 4000,
      tally: { '500': 5, '2000': 3 },
    });
    // Sold honey 7 and jam 4: 8200. Cash 8500 less float 2000 and cards 4000: 10500.
    const settled = stallSettlement(book.ledger([]), draft);
    expect([settled.should, settled.have, settled.difference]).toEqual([8200, 10500, 2300]);
  });

  it('is held against what was settled, for lines that came in later', () => {
    const settled = book.movement('stall-close', {
      stall: 'quay',
      out: { honey: 10, jam: 6 },
      back: { honey: 3, jam: 7 },
      damaged: { jam: 1 },
      float: 2000,
      cash: 8500,
      cards: 4000,
      cheques: 0,
    });
    const before = [opening, drop, closing];
    expect(sheetSaysElse(stallSheet(before), settled)).toBe(false);
    expect(sheetSaysElse(stallSheet([...before, brought]), settled)).toBe(true);
    expect(sheetSaysElse(stallSheet([...before, { ...drop, id: 'P3D-1' }]), settled)).toBe(true);
    expect(sheetSaysElse(stallSheet([opening]), settled)).toBe(false);
  });

  it('waits for the closing count, and for a choice between two', () => {
    expect(sheetSettlement(stallSheet([opening]), 'quay', '')).toBe('count-first');
    const again = on.write('count', { lines: {}, cents: 0 });
    const two = stallSheet([opening, closing, again]);
    expect(sheetSettlement(two, 'quay', '')).toBe('choose-first');
    const both = on.write('both', { of: [closing.id, again.id] });
    const added = sheetSettlement(stallSheet([opening, closing, again, both]), 'quay', '');
    // One was counted as a sum: the cash is then a sum as well.
    expect(added).toMatchObject({ cash: 4500 });
    expect(added).not.toHaveProperty('tally');
  });
});

describe('the lines of a sheet', () => {
  const handedIn = book.movement('count', {
    lines: {},
    sheet: { stall: 'quay', entries: [opening, brought] },
  });

  it('come from the book and from this phone, each once', () => {
    const ledger = book.ledger([handedIn]);
    const here = [opening, drop, drop];
    expect(sheetEntries(ledger, 'quay', here)).toEqual({
      entries: [opening, brought, drop],
      onlyHere: [drop],
    });
    expect(sheetEntries(ledger, 'gate', [])).toEqual({ entries: [], onlyHere: [] });
  });

  it('do not come back from the phone once their record was removed', () => {
    const ledger = book.ledger([handedIn, book.remove(handedIn.id)]);
    expect(sheetEntries(ledger, 'quay', [opening])).toEqual({ entries: [], onlyHere: [] });
  });

  it('move nothing', () => {
    const stock = book.movement('delivery', { lines: { honey: 24 } });
    const units = (records: Parameters<typeof book.ledger>[0]) =>
      book.ledger(records).balances.stockOf('stockroom', 'honey');
    expect(units([stock, handedIn])).toBe(units([stock]));
  });
});

describe('the readiness card', () => {
  const stall = book.ledger([]).setup.stalls.get('quay');
  if (stall === undefined) throw new Error('the test book has a stall');

  it('wants two adults of two households, covered hours and every point', () => {
    const bare = stallReadiness(book.ledger([]), stall, undefined);
    expect(bare.missing).toEqual([
      'adults',
      'shifts',
      'host',
      'holder',
      'stop',
      'unload',
      'traffic',
      'water',
    ]);
    const card = { host: 'Kim, 555 0100', holder: 'Ann Holt', stop: 'above 32 °C' };
    const ticks = { unload: 'yes', traffic: 'yes', water: 'yes' };
    const covered = { ...stall, shifts: [{ seller: 'ada', from: '09:00', to: '12:00' }] };
    const full = { names: ['Ann Holt', 'Sam Winter'], card: { ...card, ...ticks } };
    expect(stallReadiness(book.ledger([]), covered, full).missing).toEqual([]);
    const oneHome = { ...full, names: ['Ann Holt', 'Bo Holt'] };
    expect(stallReadiness(book.ledger([]), covered, oneHome).missing).toEqual(['adults']);
  });
});
