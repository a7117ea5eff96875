import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { proposeSellers, readPastedSellers } from './pasted-sellers.ts';
import { freeId, idFromName } from './short-id.ts';
import { textCells } from './text-cells.ts';

const read = (text: string) => readPastedSellers(textCells(text));

const NOBODY = { families: [], sellers: [] };

/** `seller | family | goal` a row, as the preview would first show it. */
function cells(text: string): string[] {
  return read(text).rows.map((row) => `${row.seller} | ${row.family} | ${row.goal}`);
}

function proposed(text: string, known = NOBODY as Parameters<typeof proposeSellers>[1]) {
  return proposeSellers(read(text).rows, known).map(
    (row) => `${row.state} ${row.seller.seller} ${row.family.family} ${row.goal ?? '-'}`,
  );
}

function findings(text: string): string[] {
  return proposeSellers(read(text).rows, NOBODY).flatMap((row) =>
    row.findings.map((finding) => `${finding.line} ${finding.field} ${finding.severity}`),
  );
}

describe('cells of a pasted list', () => {
  it.each([
    ['tabs', 'Ada L.\tRobin Lind\t120\nBen L.\tRobin Lind\t'],
    ['commas', 'Ada L.,Robin Lind,120\nBen L.,Robin Lind,'],
    ['semicolons', 'Ada L.;Robin Lind;120\nBen L.;Robin Lind;'],
    [
      'Windows line ends and a byte order mark',
      '\uFEFFAda L.,Robin Lind,120\r\nBen L.,Robin Lind,',
    ],
    [
      'blank lines and rows of separators',
      '\n\nAda L.\tRobin Lind\t120\n\t\t\nBen L.\tRobin Lind\n',
    ],
    ['headings', 'Seller\tAdult\tGoal\nAda L.\tRobin Lind\t120\nBen L.\tRobin Lind\t'],
    [
      'headings in another order',
      'Goal;Family name;Child\n120;Robin Lind;Ada L.\n;Robin Lind;Ben L.',
    ],
    ['a column of numbers first', '120,Ada L.,Robin Lind\n,Ben L.,Robin Lind'],
    ['quotes', '"Ada L.","Robin Lind","120"\n"Ben L.","Robin Lind",""'],
    ['spaces around and inside', ' Ada  L. ,  Robin Lind,120 \nBen L.,Robin Lind,'],
  ])('are read with %s', (_what, text) => {
    expect(cells(text)).toEqual(['Ada L. | Robin Lind | 120', 'Ben L. | Robin Lind | ']);
  });

  it('reads a comma inside quotes (RFC 4180 section 2) as part of the cell', () => {
    expect(cells('"Lind, Ada","Lind ""the quay""",5')).toEqual(['Lind, Ada | Lind "the quay" | 5']);
  });

  it('joins first and last name, and names the columns it does not keep', () => {
    const pasted = read(
      'First name\tLast name\tBirthday\tParent\tPhone\nAda\tLind\t2016-04-01\tRobin Lind\t555',
    );
    expect(pasted.rows.map((row) => [row.seller, row.family])).toEqual([
      ['Ada Lind', 'Robin Lind'],
    ]);
    expect(pasted.notKept).toEqual(['Birthday', 'Phone']);
  });

  it('keeps the row number of the pasted text', () => {
    expect(read('Seller,Family\n\nAda L.,Lind').rows[0]?.line).toBe(3);
  });

  it('is empty for nothing', () => {
    for (const text of ['', '\n \n', ',,,\n', 'Seller,Family,Goal'])
      expect(cells(text)).toEqual([]);
  });
});

describe('what a pasted list becomes', () => {
  it('makes one family of rows that name the same adult', () => {
    expect(proposed('Ada L.,Robin Lind,120\nBen L.,robin lind,80\nCai M.,Max Mora,')).toEqual([
      'new ada-l lind 120',
      'new ben-l lind 80',
      'new cai-m mora -',
    ]);
  });

  it('gives ids that nobody has', () => {
    const known = {
      families: [{ family: 'lind', name: 'Jo Lind' }],
      sellers: [{ seller: 'ada-l', name: 'Ada L.', family: 'lind' }],
    };
    expect(proposed('Ada L.,Robin Lind,\nAda L.,Sam Lind,', known)).toEqual([
      'new ada-l-2 lind-2 -',
      'new ada-l-3 lind-3 -',
    ]);
  });

  it('uses a family of the book again and leaves its sellers alone', () => {
    const known = {
      families: [{ family: 'quay', name: 'Robin Lind' }],
      sellers: [{ seller: 'a1', name: 'Ada L', family: 'quay' }],
    };
    expect(
      proposed('ADA L.,Robin Lind,9\nBen L.,Robin Lind,9\nBen L.,Robin Lind,9', known),
    ).toEqual(['already ada-l quay 9', 'new ben-l quay 9', 'already ben-l-2 quay 9']);
  });

  it('drops accents from ids and numbers names without Latin letters', () => {
    expect(proposed('Zoë Ø.,Łukasz Őry,\n李明,王伟,\nنور,王伟,\n明,陈,')).toEqual([
      'new zoe-o ory -',
      'new seller-1 family-1 -',
      'new seller-2 family-1 -',
      'new seller-3 family-2 -',
    ]);
  });

  it('cuts a last name down to its initial and says so', () => {
    const rows = proposeSellers(read('Ada Lind,Robin Lind\n"Mora, Cai",Max').rows, NOBODY);
    expect(rows.map((row) => [row.seller.name, row.state])).toEqual([
      ['Ada L.', 'new'],
      ['Cai M.', 'new'],
    ]);
    expect(findings('Ada Lind,Robin Lind')).toEqual(['1 seller warning']);
    expect(findings('Ada L.,Robin Lind\nMary Ann L,Sam Lind')).toEqual([]);
  });

  it('finds what a person must fix, cell by cell, and never guesses a goal', () => {
    expect(
      findings('Seller,Family,Goal\n,Lind,5\nAda L.,,5\nBen L.,Mora,12.5\nCai M.,Mora,many'),
    ).toEqual(['2 seller error', '3 family error', '4 goal error', '5 goal error']);
    expect(proposed('Seller,Family,Goal\nAda L.,Lind,"1,200"\nBen L.,Mora,1.200')).toEqual([
      'new ada-l lind 1200',
      'fix ben-l mora -',
    ]);
  });

  it('gives a family of a row to be fixed no id that a good row then misses', () => {
    expect(proposed('Seller,Family,Goal\nAda L.,Robin Lind,x\nBen L.,Robin Lind,5')).toEqual([
      'fix ada-l lind -',
      'new ben-l lind 5',
    ]);
  });
});

describe('whatever is pasted', () => {
  const rowsOf = (propose: typeof proposeSellers) =>
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.string({ unit: 'grapheme' }), fc.constantFrom('A', 'b ü', '李', ''))),
        (names) => {
          const rows = names.map(([seller, family], at) => ({
            line: at + 1,
            seller: seller.trim(),
            family,
            goal: '',
          }));
          const taken = propose(rows, {
            families: [{ family: 'a', name: 'Other' }],
            sellers: [{ seller: 'seller-1', name: 'X', family: 'a' }],
          }).filter((row) => row.state === 'new');
          const ids = taken.map((row) => row.seller.seller);
          expect(new Set([...ids, 'seller-1']).size).toBe(ids.length + 1);
          for (const id of ids) expect(id).toMatch(/^[a-z0-9-]{1,64}$/);
          const families = new Set(taken.map((row) => row.family.family));
          expect(families.size).toBe(new Set(taken.map((row) => row.family.name)).size);
          expect(families.has('a')).toBe(false);
        },
      ),
      { seed: 5, numRuns: 300 },
    );

  it('has unique ids in the letters that ids have', () => rowsOf(proposeSellers));

  it('is told apart from ids made without looking at those taken', () => {
    const careless: typeof proposeSellers = (rows, known) =>
      proposeSellers(rows, known).map((row) => ({
        ...row,
        seller: { ...row.seller, seller: freeId(row.seller.name, 'seller', new Set()) },
      }));
    expect(() => rowsOf(careless)).toThrow();
  });

  it('reading never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        for (const row of proposeSellers(read(text).rows, NOBODY)) {
          expect(['new', 'already', 'fix']).toContain(row.state);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });
});

describe('an id for a name', () => {
  it.each([
    ['Robin Lind', 'robin-lind'],
    ['  Ñandú & Söhne ', 'nandu-sohne'],
    ['Weiß', 'weiss'],
    ['中', ''],
    ['---', ''],
  ])('%s: %s', (name, id) => expect(idFromName(name)).toBe(id));

  it('stays within 64 characters with its number', () => {
    const long = 'a'.repeat(80);
    const first = freeId(long, 'seller', new Set());
    expect(first.length).toBe(64);
    expect(freeId(long, 'seller', new Set([first])).length).toBeLessThanOrEqual(64);
  });
});
