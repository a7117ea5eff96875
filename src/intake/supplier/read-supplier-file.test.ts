import { describe, expect, it } from 'vitest';
import writeXlsxFile from 'write-excel-file/universal';
import { testBook } from '../../ledger/test-book.ts';
import { readSupplierFile } from './read-supplier-file.ts';
import { sortOfWords } from './sort-words.ts';

const { setup } = (() => {
  const book = testBook({ honey: 800, jam: 650 }, ['ada']);
  return book.ledger([]);
})();

async function read(text: string) {
  return readSupplierFile(new TextEncoder().encode(text), 'USD', setup);
}

async function lines(text: string) {
  const file = await read(text);
  if (!file.ok) throw new Error(JSON.stringify(file.refusal));
  return file.value.lines;
}

describe('what sort of line its words tell', () => {
  it.each([
    ['Delivery', 'delivery'],
    ['Picked up at depot', 'delivery'],
    ['Transfer in', 'swap-in'],
    ['Transfer from Hill group', 'swap-in'],
    ['Swap to Hill group', 'swap-out'],
    ['Transfer', 'swap'],
    ['Damaged goods exchanged', 'exchange'],
    ['Bank debit', 'debit'],
    ['ACH debit returned', 'debit-returned'],
    ['Returned payment', 'debit-returned'],
    ['Credit card payments', 'card'],
    ['Shipped order', 'posted'],
    ['Online payment', 'online'],
    ['Gift units', 'gift'],
    ['Group proceeds', 'proceeds'],
    ['Something else', undefined],
  ])('%s: %s', (words, sort) => {
    expect(sortOfWords(words)).toBe(sort);
  });
});

describe('a supplier’s statement', () => {
  it('by product, with names or ids, cases or units', async () => {
    const text =
      'Date,Type,Slip,Group,Product,Cases,Units,Amount\n' +
      '2027-02-08,Delivery,L-1,,honey,2,,192.00\n' +
      '2027-02-08,Delivery,L-1,,Jam,,5,32.50\n' +
      '2027-02-09,Transfer,S-1,Hill group,jam,,4,-26.00\n';
    expect(await lines(text)).toMatchObject([
      { line: 1, sort: 'delivery', goods: { honey: 24 }, cents: 19_200, reference: 'L-1' },
      { line: 2, sort: 'delivery', goods: { jam: 5 }, cents: 3250 },
      { line: 3, sort: 'swap-out', goods: { jam: 4 }, neighbour: 'hill', cents: 2600 },
    ]);
  });

  it('with a column a product, and money in lines of its own', async () => {
    const text =
      'Day;Entry;honey;jam;Charge;Credit;Balance\n' +
      '2027-02-08;Delivery;24;12;270.00;;270.00\n' +
      '2027-03-01;Bank debit;;;;100.00;170.00\n' +
      ';Closing balance;;;;;170.00\n';
    const file = await read(text);
    expect(file).toMatchObject({
      ok: true,
      value: {
        owed: 17_000,
        lines: [
          { sort: 'delivery', goods: { honey: 24, jam: 12 }, cents: 27_000 },
          { sort: 'debit', goods: {}, cents: 10_000 },
        ],
      },
    });
  });

  it('as a workbook', async () => {
    const rows = [
      ['Date', 'Type', 'Product', 'Units'],
      ['2027-02-08', 'Delivery', 'honey', 24],
    ];
    const cells = rows.map((row) => row.map((value) => ({ value })));
    const bytes = new Uint8Array(await (await writeXlsxFile(cells).toBlob()).arrayBuffer());
    const file = await readSupplierFile(bytes, 'USD', setup);
    expect(file).toMatchObject({ value: { lines: [{ goods: { honey: 24 }, sort: 'delivery' }] } });
    expect(await readSupplierFile(bytes.slice(0, 400), 'USD', setup)).toMatchObject({
      ok: false,
      refusal: { said: 'a file that is cut off or damaged' },
    });
  });

  it('with formulas in cells is refused, with the cell', async () => {
    const cells = [[{ value: 'Date' }, { value: 'Units' }], [{ type: 'Formula', value: '=1+1' }]];
    // The library's types want one cell type a column.
    const bytes = new Uint8Array(
      await (await writeXlsxFile(cells as never).toBlob()).arrayBuffer(),
    );
    expect(await readSupplierFile(bytes, 'USD', setup)).toMatchObject({
      ok: false,
      refusal: { line: 2, field: 'A2', said: 'a formula' },
    });
  });

  it.each([
    ['Date,Type,Product,Units\n2027-02-08,Delivery,tea,4', 'Product', 'tea'],
    ['Date,Type,Product,Units\n2027-02-08,Delivery,jam,4.5', 'Units', '4.5'],
    ['Date,Type,Product,Units\n2027-02-30,Delivery,jam,4', 'Date', '2027-02-30'],
    ['Date,Type,Amount\n2027-02-08,Bank debit,=A1', 'Amount', '=A1'],
    ['Type,Product,Units\nDelivery,jam,4', '', 'Type, Product, Units'],
  ])('%j is refused', async (text, field, said) => {
    expect(await read(text)).toMatchObject({ ok: false, refusal: { field, said } });
  });
});
