import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { recordsOf } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, WIDE } from './harness.ts';

/** The demo's planted faults on the closing list, and the end of the season all the same. */
describe('closing the season', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: WIDE, path: '/closing' });
  });
  afterAll(() => app.close());

  it('lists what is open with what is left, and the link to the next step', async () => {
    const { page } = app;
    await page.getByRole('heading', { name: 'Closing list', level: 1 }).waitFor();
    const item = (title: string) =>
      page.getByRole('listitem').filter({ has: page.getByText(title, { exact: true }) });
    // Mint tea left over and counted short, a bounced cheque, a payment too many, gift units
    // not recorded, and a stall not shared out: as scenarios/demo says.
    const open = [
      ['Stockroom counted', 'Mint tea 9 short', 'Count again'],
      ['Goods on the shelf', 'Mint tea 9', 'Pass on to a neighbour group'],
      ['Mei L.', '$21.00 in credit', 'Record gift units'],
      ['Noa W.', '$45.00 in credit', 'Record a refund'],
      ['Réka F.', '$102.00 still to pay', 'Open the family, record its payment'],
      ['Orchard Road garden shop, 27 Mar 2027', 'not yet shared', 'Share out'],
    ] as const;
    for (const [title, left, next] of open) {
      const row = item(title);
      expect(await row.innerText()).toContain(left);
      expect(await row.innerText()).toContain('open');
      await row.getByRole('link', { name: next }).waitFor();
    }
    await item('Réka F.').getByText('records behind it').click();
    await item('Réka F.')
      .getByRole('link', { name: /^Bounced cheque/ })
      .waitFor();
  });

  it('does not close with items open unless a reason and a second person are given', async () => {
    const { page } = app;
    await page.getByRole('link', { name: 'Check before closing' }).click();
    await page.getByRole('button', { name: 'Close with items open' }).click();
    const alert = page.getByRole('alert');
    await alert.getByText('Write the name of the second person.').waitFor();
    await alert.getByText('Write why it closes with items open.').waitFor();
    expect((await recordsOf(app, 'season')).some((season) => season.closed)).toBe(false);
  });

  it('closes by a new version of the season, and is read-only from then on', async () => {
    const { page } = app;
    const before = (await recordsOf(app, 'season')).at(-1);
    await page.getByLabel('Second person').fill('Sam Winter');
    await page.getByLabel('Reason').fill('The rest is written off');
    await page.getByRole('button', { name: 'Close with items open' }).click();
    await page
      .getByText(/^The season was closed on/)
      .first()
      .waitFor();
    const { replaces, closed } = (await recordsOf(app, 'season')).at(-1) ?? {};
    expect(replaces).toBe(before?.id);
    expect(closed).toMatchObject({ second: 'Sam Winter', reason: 'The rest is written off' });
    for (const path of ['/set-up/sellers', '/products', '/stalls/market-0213', '/set-up/season']) {
      await app.goto(path);
      await page.getByRole('heading', { level: 1 }).waitFor();
      const verbs = page.getByRole('button', { name: /^(Edit|Add|New price|Save)/ });
      expect([path, await verbs.count()]).toEqual([path, 0]);
    }
  });

  it('shows set-up and earlier records read-only, with the sentence why', async () => {
    const { page } = app;
    const payment = (await recordsOf(app, 'payment')).at(-1)?.id;
    for (const path of [
      '/set-up/season',
      '/set-up/proceeds',
      '/add/host',
      `/records/${payment}/edit`,
    ]) {
      await app.goto(path);
      await page.getByText('Set-up and earlier records are read-only.').waitFor();
      const fields = page.locator('main :is(input, select, textarea)');
      expect(await fields.count()).toBeGreaterThan(0);
      expect([path, await fields.locator('visible=true').locator(':enabled').count()]).toEqual([
        path,
        0,
      ]);
      expect(await axeFindings(page)).toEqual([]);
    }
    await app.goto(`/records/${payment}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await page.getByRole('button', { name: /^(Remove|Undo)/ }).count()).toBe(0);
    expect(await page.getByRole('link', { name: 'Edit' }).count()).toBe(0);
  });

  it('still takes a record that comes late and says why', async () => {
    const { page } = app;
    await app.goto('/families/farkas');
    await page.getByLabel('Amount').fill('102');
    await page.getByRole('button', { name: 'Save the payment' }).click();
    await page.getByRole('alert').getByText('Write why this record comes late.').waitFor();
    await page.getByLabel('Why it comes late').fill('Paid at the prize evening');
    await page.getByRole('button', { name: 'Save the payment' }).click();
    await page.getByText('still to pay $0.00').waitFor();
    expect((await recordsOf(app, 'payment')).at(-1)).toMatchObject({
      late: 'Paid at the prize evening',
      cents: 10200,
    });
    expect(app.complaints).toEqual([]);
  });
});
