import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Hand } from '../speed/hand.ts';
import { type FlowName, flowOf, grown } from '../speed/hand-flows.ts';
import { recordsOf, sendRecords } from './book-records.ts';
import { axeFindings, type OpenedApp, openApp, PHONE, reflowAt320, WIDE } from './harness.ts';

/** The flows done most, tap by tap and key by key: one that grows fails. */

function holds(name: FlowName, hand: Hand): void {
  const flow = flowOf(name);
  expect(hand.operators).toBe(flow.app);
  expect(grown(flow, hand.operators)).toEqual([]);
}

describe('by thumb', () => {
  let app: OpenedApp;

  beforeAll(async () => {
    app = await openApp({ book: 'demo', viewport: PHONE });
    const goods = { date: '2027-04-02', kind: 'handover' };
    await sendRecords(
      app,
      { ...goods, seller: 'ada', lines: { honey: 3 } },
      { ...goods, seller: 'petr', lines: { honey: 1 } },
      { date: '2027-04-02', kind: 'order', seller: 'ada', lines: { honey: 5, jam: 40 } },
    );
    await app.goto('/closing');
  });
  afterAll(() => app.close());

  const button = (name: string | RegExp) => app.page.getByRole('button', { name }).first();
  const verb = (name: string) =>
    app.page.getByRole('navigation', { name: 'Record' }).getByRole('link', { name });
  const heading = (name: string | RegExp) =>
    app.page.getByRole('heading', { level: 1, name }).waitFor();
  const saved = (words: string | RegExp) => app.page.getByRole('status').getByText(words).waitFor();

  it('takes a payment of what is due, and the next one', async () => {
    const first = new Hand(app.page);
    await first.decide().tap(verb('Payment'));
    await heading('Payment');
    await first.decide().tap(button(/^Ada M\. \$/));
    await first.decide().tap(button(/still to pay$/));
    await first.tap(button('Save'));
    await saved(/^Payment from Ada M\.: \$25\.50 in cash/);
    holds('payment-due', first);
    const next = new Hand(app.page);
    await next.decide().tap(button(/^Petr N\. \$/));
    await next.decide().tap(button(/still to pay$/));
    await next.tap(button('Save'));
    await saved(/^Payment from Petr N\.: \$\d+\.\d\d in cash/);
    holds('payment-next', next);
  });

  it('takes the last record back', async () => {
    const hand = new Hand(app.page);
    await hand.decide().tap(button('Undo'));
    await saved(/^Removed: Payment from Petr N\./);
    holds('undo', hand);
  });

  it('takes a payment of another amount', async () => {
    await app.goto('/closing');
    const hand = new Hand(app.page);
    await hand.decide().tap(verb('Payment'));
    await heading('Payment');
    await hand.decide().tap(button(/^Petr N\. \$/));
    await hand.tap(app.page.getByLabel('Amount'));
    await hand.decide().type('20');
    await hand.tap(button('Save'));
    await saved(/^Payment from Petr N\.: \$20\.00 in cash/);
    holds('payment-typed', hand);
  });

  it('hands out what was ordered', async () => {
    await app.goto('/closing');
    const hand = new Hand(app.page);
    await hand.decide().tap(verb('Goods out'));
    await heading('Goods out');
    await hand.decide().tap(button(/^Ada M\. \d+ units/));
    await hand.decide().tap(button(/^Fill in the/));
    await hand.tap(button('Save'));
    await saved(/^Goods out to Ada M\./);
    holds('goods-out', hand);
  });

  it.each(['/', '/closing', '/add/payment', '/set-up/sellers'])(
    'says who still owes, from %s',
    async (path) => {
      await app.goto(path);
      const hand = new Hand(app.page);
      const shortcuts = app.page.getByRole('navigation', { name: 'Shortcuts' });
      await hand.decide().tap(shortcuts.getByRole('link', { name: 'Still to pay' }));
      await heading('Families');
      expect(await app.page.getByRole('radio', { name: 'Still to pay' }).isChecked()).toBe(true);
      expect(await app.page.getByRole('row', { name: /in credit/ }).count()).toBe(0);
      expect(await app.page.getByRole('row', { name: /still to pay/ }).count()).toBeGreaterThan(0);
      holds('still-to-pay', hand);
    },
  );

  it('takes a sale at a stall, keeps it over a reload, and takes it back', async () => {
    await app.goto('/stalls/garden-0327/sell');
    const hand = new Hand(app.page);
    await hand.tap(button(/^Wildflower honey/));
    await saved('1 sold');
    holds('stall-sale', hand);
    await hand.tap(button(/^Wildflower honey/));
    await saved('2 sold');
    await app.page.reload();
    await saved('2 sold');
    const undo = new Hand(app.page);
    await undo.decide().tap(button('Undo Wildflower honey'));
    await saved('1 sold');
    holds('undo', undo);
    expect(await axeFindings(app.page)).toEqual([]);
    expect((await reflowAt320(app.page)).overflow).toBe(0);
  });

  it('counts nine products', async () => {
    await sendRecords(app, { kind: 'product', product: 'zest', name: 'Zest', price: 500, case: 6 });
    await app.goto('/closing');
    const hand = new Hand(app.page);
    await hand.decide().tap(verb('Count'));
    await heading('Count');
    for (let product = 0; product < 9; product += 1) {
      const isBoth = product >= 5;
      await app.page
        .getByText(`${product + 1} of 9`)
        .first()
        .waitFor();
      hand.decide();
      if (isBoth) await hand.type('2');
      await hand.tap(app.page.getByLabel('Singles', { exact: true }));
      await hand.type('10');
      await hand.tap(button('Next'));
    }
    await hand.decide().tap(button('Save the count'));
    await heading(/^Count of /);
    holds('count', hand);
    const counted = async () => (await recordsOf(app, 'count')).at(-1)?.lines ?? {};
    await expect.poll(async () => Object.keys(await counted()).length).toBe(9);
  });

  it('counts nine products without leaving the digits', async () => {
    await app.goto('/closing');
    const hand = new Hand(app.page);
    await hand.decide().tap(verb('Count'));
    await heading('Count');
    await hand.tap(app.page.getByLabel(/^Full cases of/));
    for (let product = 0; product < 9; product += 1) {
      await app.page
        .getByText(`${product + 1} of 9`)
        .first()
        .waitFor();
      hand.decide();
      if (product >= 5) await hand.type('2');
      await hand.key('Enter');
      await hand.type('10');
      await hand.key('Enter');
    }
    await hand.decide().tap(button('Save the count'));
    await heading(/^Count of /);
    holds('count-keys', hand);
    const tens = async () =>
      Object.values((await recordsOf(app, 'count')).at(-1)?.lines ?? {}).filter((u) => u === 10);
    await expect.poll(async () => (await tens()).length).toBe(5);
    expect(app.complaints).toEqual([]);
  });
});

describe('by keyboard', () => {
  it('takes a payment in one line of twelve keys', async () => {
    const app = await openApp({ book: 'demo', viewport: WIDE, path: '/closing' });
    const hand = new Hand(app.page);
    await hand.decide().key('/');
    await app.page.getByRole('combobox', { name: 'What happened' }).waitFor();
    await hand.decide().type('pay mars 36');
    await app.page.getByRole('option', { selected: true }).getByText('Ada M.: $36.00').waitFor();
    await hand.key('Enter');
    await app.page.getByRole('dialog').getByText('Saved').first().waitFor();
    holds('quick-line', hand);
    await expect
      .poll(async () => (await recordsOf(app, 'payment')).at(-1))
      .toMatchObject({ seller: 'ada', cents: 3600 });
    expect(app.complaints).toEqual([]);
    await app.close();
  });
});
