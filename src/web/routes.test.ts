import { expect, it } from 'vitest';
import { routeAt } from './routes.ts';

it.each<[string, Record<string, string>]>([
  ['/', {}],
  ['/places/stockroom', { place: 'stockroom' }],
  ['/accounts/money/owed%3Aada', { ledger: 'money', account: 'owed:ada' }],
  ['/accounts/stock/seller:ada/', { ledger: 'stock', account: 'seller:ada' }],
  ['/records/01a3/edit', { id: '01a3' }],
])('%s is a page with its parts', (path, params) => {
  expect(routeAt(path)?.params).toEqual(params);
});

it.each(['/nowhere', '/records', '/places/a/b', '/places/%E0%A4%A'])('%s is no page', (path) => {
  expect(routeAt(path)).toBeUndefined();
});
