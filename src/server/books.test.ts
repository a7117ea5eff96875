import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { refused } from '../base/outcome.ts';
import { APPEND_MAX_RECORDS } from '../contract/limits.ts';
import { BOOK_FILE_TYPE } from '../contract/route-table.ts';
import type { AppendRefusal, Journal } from '../journal/journal.ts';
import { memoryStore } from '../journal/memory-store.ts';
import type { Store } from '../journal/store.ts';
import { testBook } from '../ledger/test-book.ts';
import type { BookRecord } from '../records/record.ts';
import { type TestServer, testServer } from './test-server.ts';

/** Books over HTTP: what is read, what is taken, and that a refused request changes nothing. */
const book = testBook({ honey: 800, jam: 650 }, ['ada', 'ben']);
const goodsOut = book.movement('handover', { seller: 'ada', lines: { honey: 5 } });
const payment = book.movement('payment', { seller: 'ada', tender: 'cash', cents: 3000 });
const { setup } = book;

let server: TestServer;
beforeAll(async () => {
  server = await testServer({ demo: setup });
});
afterAll(() => server.stop());

let season = 0;
let path = '';
beforeEach(async () => {
  season += 1;
  path = `/api/books/wrenfield/s${season}`;
  const started = { group: 'wrenfield', season: `s${season}`, start: 'demo' };
  expect((await server.post('/api/books', started)).status).toBe(201);
});

const append = (...records: unknown[]) => server.post(`${path}/records`, { records });
const ids = async () => {
  const { json } = await server.get(`${path}/records`);
  return (json as { records: { record: BookRecord }[] }).records.map(({ record }) => record.id);
};
const setupIds = setup.map((record) => record.id);

describe('starting a book', () => {
  test('lists it, and refuses the same name again', async () => {
    const again = { group: 'wrenfield', season: `s${season}`, start: 'empty' };
    const answer = await server.post('/api/books', again);
    expect(answer.status).toBe(409);
    expect(answer.json).toMatchObject({ name: 'book_exists' });
    const { json } = await server.get('/api/books');
    expect(json).toMatchObject({ damage: [] });
    expect((json as { books: object[] }).books).toContainEqual({
      book: 'cratebook/1',
      group: 'wrenfield',
      season: `s${season}`,
    });
  });

  test('empty has no records, demo has the demo’s', async () => {
    const empty = { group: 'wrenfield', season: `empty-${season}`, start: 'empty' };
    expect((await server.post('/api/books', empty)).status).toBe(201);
    const { json } = await server.get(`/api/books/wrenfield/empty-${season}/records`);
    expect(json).toEqual({ records: [], last: 0 });
    expect(await ids()).toEqual(setupIds);
  });

  test.each([
    { group: 'Wrenfield', season: 'a', start: 'empty' },
    { group: '../x', season: 'a', start: 'empty' },
    { group: 'a', season: 'b', start: 'full' },
    { group: 'a', season: 'b', start: 'empty', role: 'manager' },
    { group: 'a', season: 'b' },
  ])('%j is refused', async (body) => {
    expect((await server.post('/api/books', body)).status).toBe(400);
  });
});

describe('appending', () => {
  test('answers arrival numbers, and nothing changes the second time', async () => {
    const first = await append(goodsOut);
    expect(first.status).toBe(200);
    expect(first.json).toMatchObject({ added: [{ id: goodsOut.id }], already: [] });
    const second = await append(goodsOut, payment);
    expect(second.json).toMatchObject({ added: [{ id: payment.id }], already: [goodsOut.id] });
    expect(await ids()).toEqual([...setupIds, goodsOut.id, payment.id]);
  });

  test('the same id with other content is refused by name, with all beside it', async () => {
    await append(goodsOut);
    const other = { ...goodsOut, lines: { honey: 6 } };
    for (const records of [[payment, other], [other]]) {
      const answer = await append(...records);
      expect(answer.status).toBe(409);
      expect(answer.json).toMatchObject({ name: 'same_id_with_other_content' });
      expect((answer.json as { message: string }).message).toContain(goodsOut.id);
    }
    expect(await ids()).toEqual([...setupIds, goodsOut.id]);
    expect((await append(payment)).status).toBe(200);
  });

  test('a record that is not right refuses all of them, with the place in the list', async () => {
    const answer = await append(goodsOut, { ...payment, cents: -1 });
    expect(answer.status).toBe(422);
    expect(answer.json).toMatchObject({
      name: 'findings',
      findings: [{ line: 2, record: payment.id, field: 'cents', severity: 'error' }],
    });
    expect(await ids()).toEqual(setupIds);
  });

  test('many at once arrive in the order they were taken, each once', async () => {
    const payments = Array.from({ length: 30 }, (_, index) =>
      book.movement('payment', { seller: 'ada', tender: 'cash', cents: index + 1 }),
    );
    await Promise.all([...payments, ...payments].map((each) => append(each)));
    const kept = await ids();
    expect(kept).toHaveLength(setupIds.length + 30);
    expect(new Set(kept).size).toBe(kept.length);
  });

  const bad: [string, unknown, number][] = [
    ['nothing', '', 400],
    ['cut-off JSON', '{"records":[', 400],
    ['bytes that are not UTF-8', Buffer.from([0x22, 0xff, 0x22]), 400],
    ['no list', {}, 400],
    ['an empty list', { records: [] }, 400],
    ['more than the list', { records: [goodsOut], role: 'manager' }, 400],
    ['a field twice', '{"records":[{"id":"a","id":"b"}]}', 400],
    ['too many records', { records: Array(APPEND_MAX_RECORDS + 1).fill(0) }, 413],
    ['10,000 records', { records: Array(10_000).fill(0) }, 413],
    ['nesting of 200', `{"records":${'['.repeat(200)}${']'.repeat(200)}}`, 400],
    ['nesting of 100,000', `{"records":${'['.repeat(100_000)}${']'.repeat(100_000)}}`, 400],
    ['a list of numbers', { records: [1, 2] }, 422],
    ['a prototype', '{"records":[{"__proto__":{"polluted":true}}]}', 422],
    ['1 MB and a byte', ' '.repeat(1024 * 1024 + 1), 413],
  ];
  test.each(bad)('%s is refused and changes nothing', async (_name, body, status) => {
    const answer = await server.post(`${path}/records`, body);
    expect(answer.status).toBe(status);
    expect(answer.json).toMatchObject({ name: expect.any(String), message: expect.any(String) });
    expect(answer.text).not.toMatch(/\bat .*\.ts\b|node_modules/);
    expect({}).not.toHaveProperty('polluted');
    expect(await ids()).toEqual(setupIds);
  });

  test.each([
    '-1',
    '0.5',
    '1e309',
    '9007199254740992',
    '0.30000000000000004',
    '"5"',
    '"١٢"',
    'null',
  ])('an amount of %s is refused, never rounded', async (cents) => {
    const text = JSON.stringify({ records: [payment] }).replace('"cents":3000', `"cents":${cents}`);
    expect([400, 422]).toContain((await server.post(`${path}/records`, text)).status);
    expect(await ids()).toEqual(setupIds);
  });
});

describe('reading', () => {
  test('goes on after an arrival number, a page at a time', async () => {
    const seen: string[] = [];
    let after = 0;
    for (;;) {
      const { json } = await server.get(`${path}/records?after=${after}&limit=3`);
      const page = json as { records: { record: BookRecord }[]; last: number };
      if (page.records.length === 0) break;
      expect(page.records.length).toBeLessThanOrEqual(3);
      seen.push(...page.records.map(({ record }) => record.id));
      after = page.last;
    }
    expect(seen).toEqual(setupIds);
  });

  test.each(['after=-1', 'after=x', 'limit=0', 'after=1&after=2', 'limit=1.5', 'more=1'])(
    '?%s is refused',
    async (query) => {
      expect((await server.get(`${path}/records?${query}`)).status).toBe(400);
    },
  );

  test('of a book that is not here is 404, and makes none', async () => {
    for (const part of ['records', 'file', 'papers/season-proof.pdf']) {
      const answer = await server.get(`/api/books/wrenfield/nowhere/${part}`);
      expect(answer.status).toBe(404);
    }
    const { text } = await server.get('/api/books');
    expect(text).not.toContain('nowhere');
  });
});

describe('a book file', () => {
  test('goes out whole and comes back in elsewhere the same', async () => {
    await append(goodsOut, payment);
    const out = await server.get(`${path}/file`);
    expect(out.headers['content-type']).toContain(BOOK_FILE_TYPE);
    expect(out.headers['content-disposition']).toContain(`"wrenfield-s${season}.jsonl"`);
    const [header, ...lines] = out.text
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(header).toMatchObject({ book: 'cratebook/1', exported: '2027-04-19T20:11:05.000Z' });
    expect(lines).toEqual([...setup, goodsOut, payment]);
    const other = await testServer();
    const added = await other.post(`${path}/file`, out.text, BOOK_FILE_TYPE);
    expect(added.status).toBe(200);
    expect((await other.get(`${path}/file`)).text).toBe(out.text);
    const again = await other.post(`${path}/file`, out.text, BOOK_FILE_TYPE);
    expect(again.json).toMatchObject({ added: [], already: expect.any(Array) });
    await other.stop();
  });

  test('with one broken line is refused whole, with the line', async () => {
    const { text } = await server.get(`${path}/file`);
    const broken = `${text}${JSON.stringify(goodsOut)}\n{"id":\n`;
    const answer = await server.post(`${path}/file`, broken, BOOK_FILE_TYPE);
    expect(answer.status).toBe(422);
    expect(answer.json).toMatchObject({ findings: [{ line: setup.length + 3 }] });
    expect(await ids()).toEqual(setupIds);
  });

  test('of another book is refused, and makes none', async () => {
    const { text } = await server.get(`${path}/file`);
    const answer = await server.post('/api/books/wrenfield/other/file', text, BOOK_FILE_TYPE);
    expect(answer.status).toBe(409);
    expect(answer.json).toMatchObject({ name: 'other_book' });
    expect((await server.get('/api/books/wrenfield/other/records')).status).toBe(404);
  });

  test('that names what nobody set up is refused whole, unless the book here has it', async () => {
    const { text } = await server.get(`${path}/file`);
    const header = text.split('\n')[0];
    const alone = `${header}\n${JSON.stringify(goodsOut)}\n`;
    const other = await testServer();
    const refusal = await other.post(`${path}/file`, alone, BOOK_FILE_TYPE);
    expect(refusal.status).toBe(422);
    expect(refusal.json).toMatchObject({
      findings: [
        { line: 2, field: 'seller' },
        { line: 2, field: 'lines.honey' },
      ],
    });
    expect((await other.get('/api/books')).json).toMatchObject({ books: [] });
    await other.post(`${path}/file`, text, BOOK_FILE_TYPE);
    expect((await other.post(`${path}/file`, alone, BOOK_FILE_TYPE)).status).toBe(200);
    await other.stop();
  });

  test('is not taken as JSON, nor JSON as a book file', async () => {
    const { text } = await server.get(`${path}/file`);
    expect((await server.post(`${path}/file`, text)).status).toBe(415);
    expect((await server.post(`${path}/records`, '{}', BOOK_FILE_TYPE)).status).toBe(415);
  });
});

describe('the books with the records of one', () => {
  test('come in one answer where there is one book alone, and never unasked', async () => {
    const one = await testServer({ demo: setup });
    await one.post('/api/books', { group: 'wrenfield', season: 'only', start: 'demo' });
    const { json: page } = await one.get('/api/books/wrenfield/only/records');
    expect(page).toMatchObject({ last: setup.length });
    const { json } = await one.get('/api/books?with=records');
    expect(json).toMatchObject({ books: [{ season: 'only' }], records: page });
    expect((await one.get('/api/books')).json).not.toHaveProperty('records');
    expect((await one.get('/api/books?with=all')).status).toBe(400);
    await one.post('/api/books', { group: 'wrenfield', season: 'second', start: 'empty' });
    expect((await one.get('/api/books?with=records')).json).not.toHaveProperty('records');
    await one.stop();
  });

  test('are left out where there is no book yet', async () => {
    const none = await testServer();
    expect((await none.get('/api/books?with=records')).json).toEqual({ books: [], damage: [] });
    await none.stop();
  });
});

describe('a store that cannot write', () => {
  const refusals: [AppendRefusal, number][] = [
    [{ name: 'store_is_full', detail: 'disk I/O' }, 507],
    [{ name: 'store_is_damaged', detail: 'record 7' }, 503],
  ];
  test.each(refusals)('%j is told, and the book goes on afterwards', async (refusal, status) => {
    let full = true;
    const store = withAppend((append) => (full ? async () => refused(refusal) : append));
    const failing = await testServer({ store });
    const start = { group: 'g', season: 's', start: 'empty' };
    await failing.post('/api/books', start);
    const sent = { records: setup };
    const answer = await failing.post('/api/books/g/s/records', sent);
    expect(answer.status).toBe(status);
    expect(answer.json).toMatchObject({ name: refusal.name });
    full = false;
    const again = await failing.post('/api/books/g/s/records', sent);
    expect(again.json).toMatchObject({ added: setupIds.map((id) => ({ id })) });
    await failing.stop();
  });

  test('a bug gives a number to ask about and no trace, and the book goes on', async () => {
    let broken = true;
    const store = withAppend((append) => (records) => {
      if (broken) throw new Error('child name in somebody/file.ts');
      return append(records);
    });
    const failing = await testServer({ store });
    await failing.post('/api/books', { group: 'g', season: 's', start: 'empty' });
    const answer = await failing.post('/api/books/g/s/records', { records: setup });
    expect(answer.status).toBe(500);
    expect(answer.json).toMatchObject({ name: 'program_error', reference: 'ref-1' });
    expect(answer.text).not.toMatch(/child|somebody|\.ts/);
    expect(answer.headers['x-content-type-options']).toBe('nosniff');
    expect(failing.bugs).toEqual([expect.stringContaining('ref-1 Error: child name')]);
    broken = false;
    expect((await failing.post('/api/books/g/s/records', { records: setup })).status).toBe(200);
    await failing.stop();
  });

  test('damage found at start is listed, and no book is started', async () => {
    const failing = await testServer({ store: { ...memoryStore(), damage: ['record 7'] } });
    expect((await failing.get('/api/books')).json).toMatchObject({ damage: ['record 7'] });
    const answer = await failing.post('/api/books', { group: 'g', season: 's', start: 'empty' });
    expect(answer.status).toBe(503);
    expect((await failing.get('/api/books')).json).toMatchObject({ books: [] });
    await failing.stop();
  });
});

type Append = Journal['append'];

/** A memory store whose appends go through what is given. */
function withAppend(change: (append: Append) => Append): Store {
  const inner = memoryStore();
  return {
    ...inner,
    open: async (name) => {
      const journal = await inner.open(name);
      return { ...journal, append: (records) => change(journal.append)(records) };
    },
  };
}
