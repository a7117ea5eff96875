import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proposeProducts, readPastedProducts } from './pasted-products.ts';
import { textCells } from './text-cells.ts';

const read = (text: string) => readPastedProducts(textCells(text));

/** `name | price | case` a row, as the preview would first show it. */
function cells(text: string): string[] {
  return read(text).rows.map((row) => `${row.name} | ${row.price} | ${row.case}`);
}

function proposed(text: string, known: Parameters<typeof proposeProducts>[1] = []) {
  return proposeProducts(read(text).rows, known, 'USD').map(
    (row) => `${row.state} ${row.product} ${row.price} ${row.case}`,
  );
}

function findings(text: string, currency = 'USD'): string[] {
  return proposeProducts(read(text).rows, [], currency).flatMap((row) =>
    row.findings.map(({ line, field, wanted }) => `${line} ${field}: ${wanted}`),
  );
}

describe('cells of a pasted price list', () => {
  it.each([
    ['tabs', 'Honey\t8.00\t6\nTea\t5.50\t12'],
    ['commas', 'Honey,8.00,6\nTea,5.50,12'],
    ['headings', 'Product,Price,Case\nHoney,8.00,6\nTea,5.50,12'],
    ['other headings', 'Units per case;Item;Price per unit\n6;Honey;8.00\n12;Tea;5.50'],
    ['Spanish headings', 'Producto;Precio;Unidades por caja\nHoney;8.00;6\nTea;5.50;12'],
    ['Chinese headings', '品名\t单价\t每箱\nHoney\t8.00\t6\nTea\t5.50\t12'],
    ['the case before the price', 'Honey,6,8.00\nTea,12,5.50'],
    ['the case before the name', '6,Honey,8.00\n12,Tea,5.50'],
    ['an item number in front', '101,Honey,8.00,6\n102,Tea,5.50,12'],
  ])('are read with %s', (_what, text) => {
    expect(cells(text)).toEqual(['Honey | 8.00 | 6', 'Tea | 5.50 | 12']);
  });

  it('keeps the columns where one row is wrong', () => {
    expect(cells('Honey,8.00,6\nTea,five,12\nJam,6.50,a dozen\n7,6.00,6')).toEqual([
      'Honey | 8.00 | 6',
      'Tea | five | 12',
      'Jam | 6.50 | a dozen',
      '7 | 6.00 | 6',
    ]);
  });

  it('never takes the price of a case for that of a unit', () => {
    const pasted = read('Product,Code,Case price,Case size\nHoney,H1,48.00,6');
    expect(pasted.rows).toEqual([{ line: 2, name: 'Honey', price: '', case: '6' }]);
    expect(pasted.notKept).toEqual(['Code', 'Case price']);
  });

  it('is empty for nothing, and for headings alone', () => {
    for (const text of ['', '\n \n', ',,\n', 'Product,Price,Case']) expect(cells(text)).toEqual([]);
  });
});

describe('what a pasted price list becomes', () => {
  // By hand: 8.00 is 800 cents; a comma before two digits or one marks decimals, before three not.
  it('reads amounts in cents, however they are written', () => {
    expect(proposed('A\t8.00\t6\nB\t$8\t6\nC\t6,5\t6\nD\t1,200\t6\nE\tUSD 7.25\t6')).toEqual([
      'new a 800 6',
      'new b 800 6',
      'new c 650 6',
      'new d 120000 6',
      'new e 725 6',
    ]);
  });

  it('takes one unit for a case where nothing is said, and tells it', () => {
    expect(proposed('Honey,8.00')).toEqual(['new honey 800 1']);
    expect(findings('Honey,8.00')).toEqual(['1 case: no units in a case: taken as 1']);
  });

  it('leaves alone what the book or an earlier row has, and gives ids that nothing has', () => {
    const known = [{ product: 'tea', name: 'Mint tea' }];
    expect(proposed('mint TEA,5.00,12\nTea,4.00,12\nJam,6.50,6\njam,9.99,6', known)).toEqual([
      'already mint-tea 500 12',
      'new tea-2 400 12',
      'new jam 650 6',
      'already jam-2 999 6',
    ]);
  });

  it('finds what a person must fix, cell by cell, and never guesses a price', () => {
    const text = 'Product,Price,Case\n,8.00,6\nTea,five,12\nJam,-6.50,6\nOats,3.999,6\nRye,3,0';
    expect(findings(text)).toEqual([
      '2 name: write the name on the pack',
      '3 price: write an amount like 12.00',
      '4 price: write an amount like 12.00',
      '5 price: write an amount like 12.00',
      '6 case: write whole units like 12, or nothing',
    ]);
    expect(findings('Tea,5.50,12', 'JPY')).toEqual(['1 price: write an amount like 1200']);
  });

  it('a list that was written comes back as it was', () => {
    const row = fc.record({
      cents: fc.integer({ min: 0, max: 99_999 }),
      units: fc.integer({ min: 1, max: 999 }),
      mark: fc.constantFrom('.', ','),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 12 }), (rows) => {
        const written = rows.map(({ cents, units, mark }, at) => {
          const price = `${Math.floor(cents / 100)}${mark}${String(cents % 100).padStart(2, '0')}`;
          return `Pack ${'x'.repeat(at + 1)}\t${price}\t${units}`;
        });
        const again = proposeProducts(read(written.join('\n')).rows, [], 'USD');
        expect(again.map((each) => [each.state, each.price, each.case])).toEqual(
          rows.map(({ cents, units }) => ['new', cents, units]),
        );
      }),
    );
  });
});
