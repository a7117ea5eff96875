import { expect, it } from 'vitest';
import { english } from '../words/english.ts';
import { oddsWords } from './odds-words.ts';

it('says the chance in the words of the published scale, with the percentage', () => {
  const said = [1, 0.95, 0.66, 0.5, 0.2, 0.09, 0.001].map((odds) => oddsWords(odds, english));
  expect(said).toEqual([
    'very likely, over 99 %',
    'very likely, 95 %',
    'likely, 66 %',
    'about as likely as not, 50 %',
    'unlikely, 20 %',
    'very unlikely, 9 %',
    'very unlikely, under 1 %',
  ]);
});
