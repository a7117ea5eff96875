import { describe, expect, it, test } from 'vitest';
import { demoSeason } from '../../../../scenarios/demo/demo-season.ts';
import { makeSeason, smallSeason } from '../../../../simulation/season-maker.ts';
import { Ledger } from '../../../ledger/ledger.ts';
import { testBook } from '../../../ledger/test-book.ts';
import { type BookRecord, movementKinds, setupKinds } from '../../../records/record.ts';
import { draftOf, readForm, typeRecord } from './form-values.ts';
import { kindForms, kindGroups } from './kind-forms.ts';

/** Typing a record into its form and reading it back must give the same record. */
function throughForm(record: BookRecord, ledger: Ledger): unknown {
  if (record.kind === 'void') return record;
  const context = { ledger, currency: ledger.setup.season?.currency ?? '' };
  const { values, errors } = readForm(record.kind, typeRecord(record, context), context);
  if (errors.length > 0) return errors;
  return draftOf(record.kind, values, context, record);
}

function asEdit(record: BookRecord): unknown {
  const { id, at: _at, by: _by, ...content } = record;
  return { ...content, replaces: id };
}

/**
 * A book may hold goods out of nothing at all; the form asks for goods and lets nobody write it.
 */
function namesNoGoods(record: BookRecord): boolean {
  const asks = !['online', 'count'].includes(record.kind);
  return asks && 'lines' in record && Object.keys(record.lines ?? {}).length === 0;
}

describe('an edit that changes nothing says what the record said', () => {
  it.each([
    ['demo season', demoSeason()],
    ['made-up season', makeSeason(11, { ...smallSeason, days: 40 })],
  ])('for every record of the %s', (_name, records) => {
    const ledger = Ledger.of(records);
    for (const record of records) {
      if (record.kind === 'void' || namesNoGoods(record)) continue;
      expect(throughForm(record, ledger)).toEqual(asEdit(record));
    }
  });

  it('has been seen with every kind', () => {
    const kinds = new Set([...demoSeason(), ...makeSeason(11)].map((record) => record.kind));
    expect([...movementKinds, ...setupKinds].filter((kind) => !kinds.has(kind))).toEqual([]);
  });
});

test('every kind has a form and a place in the list of forms', () => {
  const listed = kindGroups.flatMap(([, kinds]) => kinds).sort();
  expect(listed).toEqual([...movementKinds, ...setupKinds].sort());
  expect(Object.keys(kindForms).sort()).toEqual(listed);
});

const ledger = testBook({ honey: 800 }, ['ada']).ledger([]);
const context = { ledger, currency: 'USD' };

test('an empty form names every field that is missing, in the order of the form', () => {
  const { errors } = readForm('payment', { date: '2027-02-03' }, context);
  expect(errors.map((error) => error.field)).toEqual(['seller', 'cents', 'tender']);
});

test('cash follows from the notes and coins, and must agree with them', () => {
  const typed = {
    date: '2027-02-03',
    stall: 'quay',
    float: '20',
    cards: '0',
    cheques: '0',
    'tally.2000': '3',
    'tally.25': '4',
  };
  expect(readForm('stall-close', typed, context)).toMatchObject({
    errors: [],
    values: { cash: 6100, tally: { 2000: 3, 25: 4 } },
  });
  const other = readForm('stall-close', { ...typed, cash: '60' }, context);
  expect(other.errors).toEqual([
    { field: 'cash', words: 'Cash at the end: the notes and coins are $61.00.' },
  ]);
});

test('a new thing gets a short id from its name that nobody has', () => {
  const { values } = readForm('seller', { name: 'Ada', family: 'home', active: 'yes' }, context);
  expect(draftOf('seller', values, context, undefined)).toMatchObject({
    kind: 'seller',
    seller: 'ada-2',
  });
});
