import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testBook } from '../ledger/test-book.ts';
import { type TestServer, testServer } from './test-server.ts';

const book = testBook({ honey: 800 }, ['ada']);
const goodsOut = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });
const payment = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000 });
const refund = book.movement('refund', { seller: 'ada', tender: 'cash', cents: 500 });
const papers = '/api/books/wrenfield/spring/papers';

let server: TestServer;
beforeAll(async () => {
  server = await testServer({ demo: [...book.setup, goodsOut, payment, refund] });
  await server.post('/api/books', { group: 'wrenfield', season: 'spring', start: 'demo' });
});
afterAll(() => server.stop());

describe('papers', () => {
  test.each([
    '/statement/home.pdf',
    `/goods-slip/${goodsOut.id}.pdf`,
    `/payment-receipt/${payment.id}.pdf`,
    '/count-sheet.pdf',
    `/refund-receipt/${refund.id}.pdf`,
    '/season-proof.pdf?paper=letter',
    '/statements.pdf',
    '/prize-order.pdf',
    '/hand-out-list.pdf?paper=letter',
    '/host-report/market.pdf',
  ])('%s is a tagged PDF', async (path) => {
    const { status, headers, bytes } = await server.get(papers + path);
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('application/pdf');
    expect(headers['content-disposition']).toMatch(/^inline; filename="[a-z0-9-]+\.pdf"$/);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bytes.toString('latin1')).toContain('/StructTreeRoot');
  });

  test.each([
    '/statement/nobody.pdf',
    '/statement.pdf',
    '/statements/home.pdf',
    '/host-report/nobody.pdf',
    '/host-report.pdf',
    `/goods-slip/${payment.id}.pdf`,
    `/payment-receipt/${goodsOut.id}.pdf`,
    '/constructor.pdf',
    '/poster.pdf',
  ])('%s is 404 with what to do', async (path) => {
    const answer = await server.get(papers + path);
    expect(answer.status).toBe(404);
    expect((answer.json as { message: string }).message).toMatch(/\.$/);
  });

  test.each(['/statement/..%2f..%2fx.pdf', '/statement/a/b.pdf', '/count-sheet.png'])(
    '%s is no address',
    async (path) => {
      expect((await server.get(papers + path)).status).toBe(404);
    },
  );

  test('another size than A4 and Letter is refused', async () => {
    expect((await server.get(`${papers}/count-sheet.pdf?paper=a5`)).status).toBe(400);
  });
});
