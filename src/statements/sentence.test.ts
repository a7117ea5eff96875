import { expect, it } from 'vitest';
import { english } from '../words/english.ts';
import { sentence } from './sentence.ts';

it.each([
  ['Paid back to Jo Reyes', 'Paid back to Jo Reyes.'],
  ['Ask the family of Linnea B.', 'Ask the family of Linnea B.'],
  ['Received $5.00 from \u2068عمر ب.\u2069', 'Received $5.00 from \u2068عمر ب.\u2069'],
  ['Received $5.00 from \u2068عمر\u2069', 'Received $5.00 from \u2068عمر\u2069.'],
  ['Is it so?', 'Is it so?'],
  ['5 units of 3 products', '5 units of 3 products.'],
  ['', '.'],
])('%j ends as %j', (text, ended) => {
  expect(sentence(text, english)).toBe(ended);
});
