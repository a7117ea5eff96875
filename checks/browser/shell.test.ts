import { afterEach, expect, test } from 'vitest';
import { allSent } from './all-sent.ts';
import { BOOK, type OpenedApp, type OpenOptions, openApp, PHONE, press, WIDE } from './harness.ts';

/** What a volunteer does in the app's frame: begin, record, look, edit, take back, find. */

let opened: OpenedApp | undefined;

async function open(options: OpenOptions): Promise<OpenedApp> {
  opened = await openApp(options);
  return opened;
}

afterEach(async () => {
  const complaints = opened?.complaints ?? [];
  await opened?.close();
  opened = undefined;
  expect(complaints).toEqual([]);
});

const RECORDS = `/api/books/${BOOK.group}/${BOOK.season}/records?after=0`;

async function records(app: OpenedApp): Promise<Record<string, unknown>[]> {
  await allSent(app.page);
  const answer = (await app.api('GET', RECORDS)) as {
    records: { record: Record<string, unknown> }[];
  };
  return answer.records.map(({ record }) => record);
}

const heading = (app: OpenedApp) => app.page.getByRole('heading', { level: 1 });
const total = (app: OpenedApp) => app.page.getByRole('region', { name: 'Total' }).textContent();

test('the first run offers the made-up season, which opens on the places', async () => {
  const app = await open({ book: 'none' });
  await press(app.page, 'Try with the made-up season');
  await heading(app).getByText('Places').waitFor();
  expect(await total(app)).toMatch(/712 units in = 712 accounted for ✓/);
});

test('an empty season takes four questions, and keeps what was typed', async () => {
  const app = await open({ book: 'none' });
  await app.page.getByLabel('What is the group called?').fill('Wrenfield Young Rowers');
  await press(app.page, 'Start an empty season');
  const summary = app.page.getByRole('alert');
  expect(await summary.textContent()).toContain('Name the season.');
  expect(await app.page.evaluate(() => document.activeElement?.getAttribute('role'))).toBe('alert');
  expect(await app.page.getByLabel('What is the group called?').inputValue()).toContain('Wrenf');
  await app.page.getByLabel('What is the season called?').fill('Spring 2028');
  await app.page.getByLabel('Last day').fill('2030-04-30');
  await press(app.page, 'Start an empty season');
  await heading(app).getByText('Places').waitFor();
  expect(await total(app)).toContain('0 units in = 0 accounted for');
  expect(await app.page.title()).toBe('Places · Spring 2028 · Cratebook');
});

test('goods out: balance before and after, the line with Undo, the kind stays', async () => {
  const app = await open({ book: 'demo', viewport: PHONE });
  await press(app.page, 'Goods out');
  await heading(app).getByText('Goods out').waitFor();
  await app.page.getByLabel('Seller').selectOption({ label: 'Ada M.' });
  await app.page.getByLabel('Mint tea, singles').fill('2');
  const effect = app.page.getByRole('region', { name: 'Balances before and after' });
  await effect.getByText('Ada M., still to pay').waitFor();
  expect(await effect.textContent()).toMatch(/\$0\.00[^$]*\$10\.00 still to pay/);
  expect(await effect.textContent()).toMatch(/Stockroom15 units → ?then ?13 units/);
  const before = (await records(app)).length;
  await press(app.page, 'Save');
  const saved = app.page.getByRole('status');
  await saved.getByText('Goods out to Ada M.: 2 Mint tea, $10.00').waitFor();
  expect(await records(app)).toHaveLength(before + 1);
  expect(await heading(app).textContent()).toBe('Goods out');
  expect(await app.page.getByLabel('Mint tea, singles').inputValue()).toBe('');
  await saved.getByRole('button', { name: 'Undo' }).click();
  await saved.getByText('Removed: Goods out to Ada M.').waitFor();
  expect(await records(app)).toHaveLength(before + 2);
});

test('two taps on Save make one record', async () => {
  const app = await open({ book: 'demo', path: '/add/bank-fee' });
  const before = (await records(app)).length;
  await app.page.getByLabel('Amount').fill('3.50');
  await app.page.getByRole('button', { name: 'Save' }).dblclick();
  await app.page.getByRole('status').getByText('Bank fee: $3.50').waitFor();
  expect(await records(app)).toHaveLength(before + 1);
});

test('an answer that never came: saved on this phone, sent again later, one record', async () => {
  const app = await open({ book: 'demo', path: '/add/bank-fee' });
  const before = (await records(app)).length;
  let lost = false;
  await app.page.route('**/records', async (route) => {
    if (lost) return route.continue();
    lost = true;
    // The server gets it and writes it; its answer is lost on the way.
    await route.fetch();
    return route.abort();
  });
  await app.page.getByLabel('Amount').fill('4.25');
  await press(app.page, 'Save');
  const saved = app.page.getByRole('status');
  await saved.getByText('Saved on this phone').waitFor();
  await saved.getByText('Bank fee: $4.25').waitFor();
  await app.page.evaluate(() => dispatchEvent(new Event('online')));
  await saved.getByText('Saved', { exact: true }).waitFor();
  expect(await records(app)).toHaveLength(before + 1);
  app.complaints.length = 0;
});

test('a payment offers the amount due and the next receipt number', async () => {
  const app = await open({ book: 'demo', path: '/add/payment' });
  await app.page.getByLabel('Seller').selectOption({ label: 'Réka F.' });
  await press(app.page, /\$102\.00 still to pay/);
  expect(await app.page.getByLabel('Amount').inputValue()).toBe('102.00');
  expect(await app.page.getByLabel('Receipt number').inputValue()).toMatch(/^[A-Z]\d[A-Z]-001$/);
  await press(app.page, 'Save');
  await app.page.getByRole('status').getByText('Payment from Réka F.: $102.00').waitFor();
});

test('what does not fit is said on top and beside the field, and nothing is written', async () => {
  const app = await open({ book: 'demo', path: '/add/payment' });
  const before = (await records(app)).length;
  await app.page.getByLabel('Amount').fill('twelve');
  await press(app.page, 'Save');
  const summary = app.page.getByRole('alert');
  await summary.getByRole('link', { name: 'Seller: Choose one.' }).click();
  expect(await app.page.evaluate(() => document.activeElement?.id)).toBe('field-seller');
  expect(await app.page.getByLabel('Amount').getAttribute('aria-invalid')).toBe('true');
  expect(await app.page.getByLabel('Amount').inputValue()).toBe('twelve');
  expect(await records(app)).toHaveLength(before);
});

test('what the server refuses is shown in the form', async () => {
  const app = await open({ book: 'demo', path: '/add/bank-fee' });
  await app.page.getByLabel('Amount').fill('1');
  await app.page.getByLabel('Note').fill('card 4111 1111 1111 1111');
  await press(app.page, 'Save');
  await app.page
    .getByRole('alert')
    .getByText(/card number/i)
    .waitFor();
  app.complaints.length = 0;
});

test('every number opens into its records, to be edited where they are found', async () => {
  const app = await open({ book: 'demo', viewport: WIDE });
  await app.page.getByRole('link', { name: /^Stockroom \d/ }).click();
  await heading(app).getByText('Stockroom').waitFor();
  const rows = app.page.getByRole('region', { name: 'Records behind this figure' });
  expect(await rows.getByRole('row').nth(1).textContent()).toMatch(/15$/);
  await app.page.getByRole('link', { name: /^Mint tea/ }).click();
  await heading(app).getByText('Mint tea: Stockroom').waitFor();
  await app.page
    .getByRole('link', { name: /^Goods (?:out|back)/ })
    .last()
    .click();
  await heading(app)
    .getByText(/^Goods (?:out|back)$/)
    .waitFor();
  await app.goto('/find');
  await app.page.getByLabel('Words or amount').fill('jun r-0');
  await app.page.getByLabel('Kind').selectOption({ label: 'Payment' });
  const found = app.page.getByRole('region', { name: /records?$/ });
  await found
    .getByRole('link', { name: /^Edit: Payment from Jun L/ })
    .first()
    .click();
  await heading(app).getByText('Edit: Payment').waitFor();
  await app.page.getByLabel('Amount').fill('1.00');
  await press(app.page, 'Save the edit');
  await heading(app).getByText('Payment', { exact: true }).waitFor();
  expect(await app.page.getByRole('region', { name: 'History' }).textContent()).toContain('Edited');
  await press(app.page, /^Undo: Payment from Jun L/);
  const status = app.page.getByRole('status');
  await status.getByText(/Payment from Jun L\.: \$(?!1\.00)/).waitFor();
});

test('a removal needs a reason, and its undo takes the removal back', async () => {
  const app = await open({ book: 'demo', path: '/find?kind=deposit' });
  await app.page
    .getByRole('link', { name: /^Deposit at the bank/ })
    .first()
    .click();
  await heading(app).getByText('Deposit').waitFor();
  await press(app.page, 'Remove');
  const dialog = app.page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Remove' }).click();
  await dialog.getByRole('alert').getByText('Write why it is removed.').waitFor();
  await dialog.getByLabel('Why is it removed?').fill('keyed twice');
  await dialog.getByRole('button', { name: 'Remove' }).click();
  await app.page.getByText('This record no longer counts.').waitFor();
  await app.page.getByRole('status').getByRole('button', { name: 'Undo' }).click();
  await app.page
    .getByRole('status')
    .getByText(/^Removal taken back: Deposit at the bank/)
    .waitFor();
});

test('two edits made apart are shown, and a person chooses which one stands', async () => {
  const app = await open({ book: 'demo' });
  const all = await records(app);
  const deposit = all.find((record) => record.kind === 'deposit' && !record.replaces);
  const edit = (cents: number, minute: number) => ({
    ...deposit,
    id: `01a40000-0000-7000-8000-00000000000${minute}`,
    at: `2027-05-01T10:0${minute}:00.000Z`,
    cents,
    replaces: deposit?.id,
  });
  const path = `/api/books/${BOOK.group}/${BOOK.season}/records`;
  await app.api('POST', path, { records: [edit(111, 1), edit(222, 2)] });
  await app.goto(`/records/${deposit?.id}`);
  await app.page.getByText('This record was changed twice').waitFor();
  await press(app.page, /^Keep: Deposit at the bank: \$1\.11/);
  await app.page.getByText('This record was changed twice').waitFor({ state: 'detached' });
  await app.page.getByText(/What counts now is Deposit at the bank: \$1\.11/).waitFor();
});

test('the keyboard alone is enough to record a payment', async () => {
  const app = await open({ book: 'demo', viewport: WIDE });
  const { keyboard } = app.page;
  await keyboard.press('Tab');
  expect(await app.page.evaluate(() => document.activeElement?.textContent)).toBe(
    'Skip to the page',
  );
  await tabTo(app, 'Payment');
  await keyboard.press('Enter');
  await heading(app).getByText('Payment').waitFor();
  expect(await app.page.evaluate(() => document.activeElement?.tagName)).toBe('H1');
  await tabTo(app, 'Seller');
  await keyboard.type('Layla');
  await tabTo(app, 'Amount');
  await keyboard.type('5');
  expect(await outlineOfFocused(app)).toBeGreaterThanOrEqual(2);
  await keyboard.press('Enter');
  await app.page.getByRole('status').getByText('Payment from Layla H.: $5.00').waitFor();
});

/** Presses Tab until the focused control has the given label or text. */
async function tabTo(app: OpenedApp, name: string): Promise<void> {
  for (let presses = 0; presses < 60; presses += 1) {
    await app.page.keyboard.press('Tab');
    const focused = await app.page.evaluate(() => {
      const element = document.activeElement;
      const labels = element && 'labels' in element ? (element as HTMLInputElement).labels : null;
      return [...(labels ?? [])].map((label) => label.textContent).join() || element?.textContent;
    });
    if (focused === name) return;
  }
  throw new Error(`Tab never reached ${name}`);
}

function outlineOfFocused(app: OpenedApp): Promise<number> {
  return app.page.evaluate(() => {
    const focused = document.activeElement ?? document.body;
    const style = getComputedStyle(focused);
    return style.outlineStyle === 'none' ? 0 : Number.parseFloat(style.outlineWidth);
  });
}

test('what another window wrote is there when this one is looked at again', async () => {
  const app = await open({ book: 'demo' });
  const other = await app.context.newPage();
  await other.goto(`${app.origin}/add/bank-fee`);
  await other.getByLabel('Amount').fill('9.75');
  await other.getByRole('button', { name: 'Save' }).click();
  await other.getByRole('status').getByText('Bank fee: $9.75').waitFor();
  await app.page.evaluate(() => dispatchEvent(new Event('focus')));
  await app.page.getByText('Bank fee: $9.75').first().waitFor();
});
