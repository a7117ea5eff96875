import { describe, expect, it } from 'vitest';
import { testBook } from '../../../ledger/test-book.ts';
import { askedAddress, askedOf, readAsked, typedOf } from './asked.ts';

const made = testBook({ honey: 800, jam: 650 }, ['ada']);
const delivery = made.movement('delivery', { lines: { honey: 24 } });
const count = made.movement('count', { lines: { honey: 20, jam: 0 }, date: '2027-02-03' });
const ledger = made.ledger([delivery, count]);
const TODAY = '2027-03-01';

function read(address: string) {
  return readAsked(new URL(address, 'http://book').searchParams, ledger, TODAY);
}

describe('what is asked stands in the address', () => {
  it('comes back the same from the address and from what is typed', () => {
    const asked = {
      day: '2027-02-09',
      places: ['bank', 'seller:ada', 'stockroom'],
      seen: [
        { place: 'bank', units: {}, minor: -1250 },
        { place: 'seller:ada', units: { honey: 3 }, minor: 0 },
        { place: 'stockroom', units: {} },
      ],
    };
    expect(read(askedAddress(asked))).toEqual(asked);
    expect(askedOf(typedOf(asked, ledger, 'USD'), ledger, 'USD')).toEqual({
      ok: true,
      value: asked,
    });
  });

  it('takes a saved count with its day and its figures', () => {
    expect(read(`/why?count=${count.id}`)).toEqual({
      day: '2027-02-03',
      places: ['stockroom'],
      seen: [{ place: 'stockroom', units: { honey: 20, jam: 0 } }],
    });
  });

  it('lets be what it does not know', () => {
    const odd = '/why?about=cellar&about=bank&bank=1e9&day=2027-02-31&stockroom.honey=3';
    expect(read(odd)).toEqual({ day: TODAY, places: ['bank'], seen: [] });
  });
});

describe('what is typed', () => {
  const asked = read('/why?about=bank&about=stockroom');

  it('says which figure does not fit', () => {
    const places = {
      bank: { units: {}, money: 'ten', below: false, agrees: false },
      stockroom: { units: { honey: 'x', jam: '' }, money: '', below: false, agrees: false },
    };
    const said = askedOf({ day: '', places }, ledger, 'USD');
    const fields = said.ok ? [] : said.refusal.map(({ field }) => field);
    expect(fields).toEqual(['day', 'bank', 'stockroom.honey']);
  });

  it('wants a figure at all', () => {
    expect(askedOf(typedOf(asked, ledger, 'USD'), ledger, 'USD')).toEqual({
      ok: false,
      refusal: [{ field: '', words: 'Write at least one figure that was seen.' }],
    });
  });
});
