import { expect, it } from 'vitest';
import { byName } from './name-order.ts';

it('sets marks and capitals aside, then tells equal names apart by their own text', () => {
  const names = ['Rui P.', 'Zoë', 'Réka F.', 'ada', 'Ada', 'Élan', '李明'];
  expect([...names].sort(byName)).toEqual([
    'Ada',
    'ada',
    'Élan',
    'Réka F.',
    'Rui P.',
    'Zoë',
    '李明',
  ]);
});
