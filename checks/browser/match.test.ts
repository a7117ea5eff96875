import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { demoSeason } from '../../scenarios/demo/demo-season.ts';
import { Ledger } from '../../src/ledger/ledger.ts';
import { bankEntries } from '../../src/questions/match/bank-entries.ts';
import { recordsOf } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, reflowAt320, WIDE } from './harness.ts';

/** Statements against the demo season: made of its own records, with a few things off. */
const entries = bankEntries(Ledger.of(demoSeason()));
const money = (cents: number) => (cents / 100).toFixed(2);

function csv(rows: readonly (readonly [string, string, number])[]): Buffer {
  const lines = rows.map(([date, text, cents]) => `${date},${text},${money(cents)}`);
  return Buffer.from(['Date,Memo,Amount', ...lines].join('\n'));
}

const [first, second] = entries;
const rows = [
  ...entries.slice(3).map(({ date, cents }) => [date, 'line', cents] as const),
  // Keyed otherwise; a day late; missing in the book. The third is not there yet.
  [first?.date ?? '', 'DEPOSIT', (first?.cents ?? 0) + 90] as const,
  ['2027-02-17', 'CARD PAYOUT', second?.cents ?? 0] as const,
  ['2027-03-31', 'Monthly service fee', -500] as const,
];

describe('the bank’s statement', () => {
  let app: OpenedApp;
  const take = (name: string, buffer: Buffer) =>
    app.page
      .getByLabel('Statement from the bank')
      .setInputFiles({ name, mimeType: 'text/csv', buffer });

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE, path: '/match/bank' });
  });
  afterAll(() => app.close());

  it('shows what is left on top, what to look at, and what is sure', async () => {
    const { page } = app;
    await take('march.csv', csv(rows));
    await page.getByRole('heading', { name: 'Left at the bank (2)' }).waitFor();
    await page.getByText('▲ Differs: $201.90 there, $201.00 in the book.').waitFor();
    await page.getByRole('heading', { name: 'Not yet at the bank (1)' }).waitFor();
    await page.getByRole('heading', { name: 'To look at (1)' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('takes sure matches together, one by a key, and records what is missing', async () => {
    const { page } = app;
    await page.getByRole('button', { name: /^Accept \d+ sure matches$/ }).click();
    await page.getByRole('heading', { name: /^Accepted/ }).waitFor();
    const cleared = async () =>
      (await recordsOf(app, 'deposit')).filter((record) => 'cleared' in record).length;
    await expect.poll(cleared).toBeGreaterThan(3);
    const accept = page.getByRole('button', { name: /^Accept line/ });
    await expect.poll(() => accept.isEnabled()).toBe(true);
    await accept.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { name: 'To look at (1)' }).waitFor({ state: 'detached' });
    await page.getByRole('button', { name: /^Record it: Bank fee/ }).click();
    await expect
      .poll(async () => (await recordsOf(app, 'bank-fee')).at(-1))
      .toMatchObject({
        cents: 500,
        date: '2027-03-31',
      });
    await page.getByRole('heading', { name: 'Left at the bank (1)' }).waitFor();
  });

  it('marks what the bank itself got wrong, and it is not for the book', async () => {
    const { page } = app;
    const wrong = ['2027-03-30', 'Cheque of somebody else', -4200] as const;
    await app.goto('/match/bank');
    await take('march.csv', csv([...rows, wrong]));
    await page.getByRole('heading', { name: 'Left at the bank (2)' }).waitFor();
    await page
      .getByRole('button', { name: `The bank’s own error: line ${rows.length + 1}` })
      .click();
    await page.getByRole('heading', { name: 'The bank’s own errors (1)' }).waitFor();
    await page.getByRole('heading', { name: 'Left at the bank (1)' }).waitFor();
    expect((await recordsOf(app, 'season')).at(-1)?.bankErrors).toEqual([
      { date: '2027-03-30', cents: -4200, text: 'Cheque of somebody else' },
    ]);
    await page.getByRole('link', { name: 'Reconciliation' }).click();
    const errors = page.getByRole('table', { name: 'The bank’s own errors' });
    await errors.getByText('Cheque of somebody else').waitFor();
    expect(await axeFindings(page)).toEqual([]);
  });

  it('changes nothing when the same file comes again', async () => {
    const { page } = app;
    await app.goto('/match/bank');
    await take('march.csv', csv(rows));
    await page.getByRole('heading', { name: `Accepted (${rows.length - 2})` }).waitFor();
    // Only the fee, which was recorded meanwhile, is new.
    await page.getByRole('button', { name: 'Accept 1 sure match' }).waitFor();
  });

  it('prints the reconciliation of a day, and the same later', async () => {
    const { page } = app;
    await page.getByRole('link', { name: 'Reconciliation' }).click();
    await page.getByRole('heading', { name: 'Bank reconciliation' }).waitFor();
    const address = page.getByRole('link', { name: 'Address of this reconciliation' });
    const kept = (await address.getAttribute('href')) ?? '';
    await app.goto(kept);
    const before = await page.locator('.match-sums').textContent();
    expect(await axeFindings(page)).toEqual([]);
    await app.api('POST', '/api/books/wrenfield/spring-2027/records', {
      records: [
        {
          id: '01a5f3c2-7d1a-7c3e-9a41-1f0c6e2b9d10',
          at: '2027-05-20T18:00:00.000Z',
          by: 'treasurer',
          kind: 'bank-fee',
          cents: 777,
          date: '2027-03-01',
        },
      ],
    });
    await app.goto(kept);
    expect(await page.locator('.match-sums').textContent()).toBe(before);
    await app.goto(kept.replace(/&written=.*/, ''));
    expect(await page.locator('.match-sums').textContent()).not.toBe(before);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
  });

  it('asks for the columns where they cannot be told, and remembers them', async () => {
    const { page } = app;
    await app.goto('/match/bank');
    const text = Buffer.from('When,Note,Change\n03/04/2027,fee,-5.00\n');
    await take('other.csv', text);
    await page.getByText('other.csv, line 1').waitFor();
    await page.getByLabel('Day', { exact: true }).selectOption('When');
    await page.getByLabel('Amount, with sign').selectOption('Change');
    await page.getByLabel('How days are written').selectOption('month-day-year');
    await page.getByRole('button', { name: 'Read the file so' }).click();
    await page.getByText('4 Mar 2027').first().waitFor();
    await app.goto('/match/bank');
    await take('other.csv', text);
    await page.getByRole('heading', { name: 'Left at the bank (1)' }).waitFor();
  });

  it('says in one line what is wrong with a file, and takes nothing of it', async () => {
    const { page } = app;
    await app.goto('/match/bank');
    await take('cut.ofx', Buffer.from('OFXHEADER:100\n\n<OFX><BANKMSGSRSV1><STMTTRNRS><STMT'));
    await page.getByText('Nothing of this file was taken.').waitFor();
    await page.getByText('cut.ofx, OFX: it says "tags that do not close"').waitFor();
    expect(app.complaints).toEqual([]);
  });
});

describe('the supplier’s statement', () => {
  let app: OpenedApp;
  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE, path: '/match/supplier' });
  });
  afterAll(() => app.close());

  it('falls into three piles; what is missing opens its form filled in', async () => {
    const { page } = app;
    const text = [
      'Date,Type,Slip,Product,Units',
      '2027-03-12,Delivery,LG-1102,jam,21',
      '2027-03-12,Delivery,LG-1102,chutney,12',
      '2027-03-12,Delivery,LG-1102,granola,16',
      '2027-03-12,Delivery,LG-1102,tea-mint,20',
      '2027-03-20,Transfer from Millbrook,S-77,jam,6',
    ].join('\n');
    await page.getByLabel('Statement from the supplier').setInputFiles({
      name: 'statement.csv',
      mimeType: 'text/csv',
      buffer: Buffer.from(text),
    });
    await page.getByRole('heading', { name: 'Differ (1)' }).waitFor();
    await page.getByText('Strawberry jam: 21 there, 12 in the book.').waitFor();
    await page.getByRole('heading', { name: 'Agree (3)' }).waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    await page.getByRole('link', { name: 'Record it: swap in' }).click();
    await page.getByRole('heading', { name: 'Swap in' }).waitFor();
    expect(app.complaints).toEqual([]);
  });
});

describe('the days of debits and of the bank', () => {
  it('are asked for in set-up, and tell the morning', async () => {
    const app = await openApp({ book: 'demo', viewport: WIDE, path: '/match/debits' });
    const { page } = app;
    await page.getByRole('link', { name: 'season’s deadlines' }).last().click();
    await page.getByRole('button', { name: 'Add a deadline' }).click();
    const form = page.getByRole('form', { name: 'Add a deadline' });
    await form.getByLabel('What is due').fill('Late collection');
    await form.getByLabel('Day', { exact: true }).fill('2027-04-13');
    await form.getByLabel('Amount that the supplier said it will take').fill('9000');
    await form.getByRole('button', { name: 'Add the deadline' }).click();
    await page.getByRole('cell', { name: '$9,000.00' }).waitFor();
    await app.goto('/set-up/banking');
    const days = page.getByLabel('Days without banks');
    await days.fill('12/04/2027');
    await page.getByRole('button', { name: 'Save the bank’s days' }).click();
    await page.getByRole('alert').getByText('“12/04/2027” is no day.').waitFor();
    await days.fill('2027-04-12');
    await page.getByRole('button', { name: 'Save the bank’s days' }).click();
    await expect
      .poll(async () => (await recordsOf(app, 'season')).at(-1)?.banking?.holidays)
      .toEqual(['2027-04-12']);
    expect((await recordsOf(app, 'season')).at(-1)?.deadlines).toContainEqual(
      expect.objectContaining({ name: 'Late collection', announced: 900_000 }),
    );
    await app.goto('/match/debits');
    await page.getByRole('heading', { name: 'Late collection, 13 Apr 2027' }).waitFor();
    await page.getByText('Cash helps if it is at the bank by 9 Apr 2027').waitFor();
    expect(app.complaints).toEqual([]);
    await app.close();
  });
});

describe('debits to come', () => {
  it('tell what is missing, what helps, and an amount not announced', async () => {
    const app = await openApp({ book: 'demo', viewport: WIDE });
    const { page } = app;
    await app.goto('/set-up/season');
    const season = (await recordsOf(app, 'season')).at(-1);
    const next = { deadline: 'debit-4', name: 'Late debit', date: '2027-04-09' };
    const { id, at: _at, ...said } = season ?? { id: '', at: '' };
    const deadlines = [...(season?.deadlines ?? []), { ...next, announced: 900_000 }];
    const common = { by: 'treasurer', at: '2027-04-04T18:00:00.000Z' };
    await app.api('POST', '/api/books/wrenfield/spring-2027/records', {
      records: [
        { ...said, ...common, id: '01a4f3c2-7d1a-7c3e-9a41-1f0c6e2b9d11', replaces: id, deadlines },
        {
          ...common,
          id: '01a4f3c2-7d1a-7c3e-9a41-1f0c6e2b9d12',
          kind: 'debit',
          cents: 500,
          announced: 400,
          date: '2027-04-03',
        },
      ],
    });
    await app.goto('/match/debits');
    await page.getByText('$4.00 was announced, $5.00 was taken.').waitFor();
    await page.getByRole('heading', { name: 'Late debit, 9 Apr 2027' }).waitFor();
    await page.getByText('Cash helps if it is at the bank by 8 Apr 2027').waitFor();
    expect(await axeFindings(page)).toEqual([]);
    expect(await reflowAt320(page)).toEqual({ overflow: 0, widest: [] });
    expect(app.complaints).toEqual([]);
    await app.close();
  });
});
