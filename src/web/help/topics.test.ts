import { describe, expect, it } from 'vitest';
import { readBook } from '../../intake/read-book.ts';
import { writeBook } from '../../intake/write-book.ts';
import { Ledger } from '../../ledger/ledger.ts';
import { closingList } from '../../questions/closing-list.ts';
import { movementKinds } from '../../records/record.ts';
import { acceptBook } from '../../rules/accept-book.ts';
import { routeAt } from '../routes.ts';
import { exampleFigures } from './example-figures.ts';
import { MADE_UP_TODAY, madeUpRecords } from './made-up-records.ts';
import { type Task, tasks, topicAt } from './topic-at.ts';
import { topics } from './topics.ts';
import { wordList } from './word-list.ts';

const ledger = Ledger.of(madeUpRecords());

/** Where each main task is done; a task without a page here, or without help, fails. */
const PAGES: Readonly<Record<Task, readonly string[]>> = {
  delivery: ['/add/delivery'],
  handover: ['/add/handover'],
  return: ['/add/return'],
  payment: ['/add/payment', '/families/moor'],
  count: ['/count', '/count/ID'],
  stall: ['/stalls/quay-0313', '/add/stall-close'],
  'share-out': ['/pools/post', '/add/shareout'],
  deposit: ['/add/deposit'],
  online: ['/add/online'],
  gift: ['/add/gift'],
  bank: ['/match/bank'],
  debits: ['/match/debits', '/add/debit'],
  prizes: ['/prizes'],
  why: ['/why'],
  closing: ['/closing'],
};

describe.each(tasks)('help for %s', (task) => {
  const topic = topics[task];

  it('stands beside every page of the task', () => {
    for (const path of PAGES[task]) {
      expect(routeAt(path)).toBeDefined();
      expect([path, topicAt(path)]).toEqual([path, task]);
    }
    expect(routeAt(topic.opens.split('?')[0] ?? '')).toBeDefined();
  });

  it('is exactly three sentences', () => {
    const sentences = new Intl.Segmenter('en', { granularity: 'sentence' });
    expect(topic.says.map((said) => [...sentences.segment(said)].length)).toEqual([1, 1, 1]);
    for (const said of topic.says) expect(said).toMatch(/^[A-Z][^!?]*\.$/);
  });

  it('has an example that moves something, or states a fact', () => {
    const { changed, counted, record } = exampleFigures(topic);
    const moves = movementKinds.some((kind) => kind === record.kind) && counted === undefined;
    expect(changed.length > 0).toBe(moves || record.kind === 'void');
  });
});

/** The worked figures, by hand: account, before, after. Prices: honey 8.00, jam 6.50. */
const WORKED: Readonly<Partial<Record<Task, readonly (readonly [string, number, number])[]>>> = {
  // 12 × 8.00 + 6 × 6.50 = 135.00 more owed; 36 + 18 units.
  delivery: [
    ['money:supplier', -44_400, -57_900],
    ['stock:stockroom', 36, 54],
  ],
  // 6 honey and 2 jam less 30.00 paid left 31.00; 5 × 8.00 more.
  handover: [
    ['money:owed:ada', 3100, 7100],
    ['stock:seller:ada', 8, 13],
    ['stock:stockroom', 36, 31],
    ['credit:seller:ada', 8, 13],
  ],
  return: [
    ['money:owed:ada', 3100, 1800],
    ['stock:seller:ada', 8, 6],
    ['stock:stockroom', 36, 38],
    ['credit:seller:ada', 8, 6],
  ],
  payment: [
    ['money:cashbox', 8050, 11_150],
    ['money:owed:ada', 3100, 0],
  ],
  // Sold 7 honey and 5 jam = 88.50; 65.00 − 20.00 + 40.00 = 85.00, so 3.50 short.
  stall: [
    ['money:cards', 4000, 8000],
    ['money:cashbox', 8050, 12_550],
    ['money:overshort', 0, 350],
    ['stock:stockroom', 36, 24],
    ['credit:pool:stall:quay-0313', 0, 12],
  ],
  'share-out': [
    ['credit:pool:stall:quay-0306', 12, 0],
    ['credit:seller:ada', 8, 14],
    ['credit:seller:ben', 4, 10],
  ],
  deposit: [
    ['money:bank', 6200, 11_050],
    ['money:cashbox', 8050, 3200],
  ],
  online: [
    ['money:owed:ada', 3100, 1800],
    ['money:supplier', -44_400, -43_100],
  ],
  gift: [
    ['money:owed:ada', 3100, 3900],
    ['stock:gifted', 0, 1],
    ['stock:stockroom', 36, 35],
    ['credit:seller:ada', 8, 9],
  ],
  bank: [
    ['money:bank', 6200, 5850],
    ['money:fees', 0, 350],
  ],
  debits: [
    ['money:bank', 6200, 1200],
    ['money:supplier', -44_400, -39_400],
  ],
  why: [
    ['money:cashbox', 8050, 4850],
    ['money:owed:ben', -3200, 0],
  ],
  closing: [
    ['money:supplier', -44_400, -41_200],
    ['stock:neighbour:millbrook', 0, 4],
    ['stock:stockroom', 36, 32],
  ],
};

it.each(tasks)('the figures of the example for %s are the ledger’s and right', (task) => {
  const { changed } = exampleFigures(topics[task]);
  const figures = changed.map(({ ledger: name, account, before, after }) => [
    `${name}:${account}`,
    before,
    after,
  ]);
  expect(figures).toEqual(WORKED[task] ?? []);
});

it('the count of the example is two short', () => {
  expect(exampleFigures(topics.count).counted).toMatchObject({ short: 2, over: 0 });
});

describe('the made-up book', () => {
  it('is a book like any other: read, checked and taken', () => {
    const header = { book: 'cratebook/1', group: 'made-up', season: 'example' } as const;
    const read = readBook([...writeBook(header, madeUpRecords())].join(''));
    expect(acceptBook(read)).toMatchObject({ ok: true, value: { records: madeUpRecords() } });
  });

  it('has things left to close', () => {
    expect(closingList(ledger, MADE_UP_TODAY).ready).toBe(false);
  });
});

it('the word list has each word once, with one sentence', () => {
  const ids = wordList.map(([id]) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const [, word, means] of wordList) {
    expect(word).not.toBe('');
    expect(means).toMatch(/^[A-Z][^.!?]*\.$/);
  }
});
